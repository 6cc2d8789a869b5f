package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.motion.EventSink;
import hairline.checks.stock.Cut;
import java.util.Optional;

/** Watches a run that tells the largest chip of each move sideways in contact as well. */
public interface ChipWatcher extends EventSink {
  /**
   * A move cuts chips; told just before its {@link Cut} comes by.
   *
   * @param cut the move
   * @param chipUm the largest chip of its engagement; that of a full slot where the width of cut is
   *     not known
   * @param minimumUm the smallest chip that forms; empty where the sheet lacks a figure for it
   */
  void chip(Cut cut, Band chipUm, Optional<Band> minimumUm);
}
