package hairline.viewer.panes;

import hairline.checks.stock.SectionLine;
import hairline.viewer.draw.Palette;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.PartPicture;
import hairline.viewer.model.Program;
import java.util.Optional;
import javafx.beans.property.LongProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.SimpleLongProperty;
import javafx.beans.property.SimpleObjectProperty;

/** What all panes look at: the program, the cursor, the finding selected, the colours. */
public final class Shared {
  private final ObjectProperty<Optional<Program>> program =
      new SimpleObjectProperty<>(Optional.empty());
  private final LongProperty cursor = new SimpleLongProperty(-1);
  private final ObjectProperty<Optional<FindingMark>> finding =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Palette> palette = new SimpleObjectProperty<>(Palette.LIGHT);

  private final ObjectProperty<Optional<PartPicture>> part =
      new SimpleObjectProperty<>(Optional.empty());
  private final ObjectProperty<Optional<SectionLine>> section =
      new SimpleObjectProperty<>(Optional.empty());

  private boolean reloading;

  /** Whether the program that is being set is the one from before, read anew: views stay. */
  boolean reloading() {
    return reloading;
  }

  /**
   * Shows another program.
   *
   * @param again whether it is the one from before, read anew
   */
  public void show(Optional<Program> next, boolean again) {
    reloading = again;
    cursor.set(-1);
    program.set(next);
    reloading = false;
  }

  /** The part as it is shown. */
  public ObjectProperty<Optional<PartPicture>> part() {
    return part;
  }

  /** Where the section runs. */
  public ObjectProperty<Optional<SectionLine>> section() {
    return section;
  }

  /** The program shown. */
  public ObjectProperty<Optional<Program>> program() {
    return program;
  }

  /** The move under the cursor; -1 for none. */
  public LongProperty cursor() {
    return cursor;
  }

  /** The finding selected. */
  public ObjectProperty<Optional<FindingMark>> finding() {
    return finding;
  }

  /** The colours. */
  public ObjectProperty<Palette> palette() {
    return palette;
  }

  /** Moves the cursor to a move, if there is such a move. */
  public void moveTo(long move) {
    long count = program.get().map(p -> p.moves().count()).orElse(0L);
    if (move >= 0 && move < count) {
      cursor.set(move);
    }
  }

  /** Selects a finding and moves the cursor to it. */
  public void select(FindingMark mark) {
    finding.set(Optional.of(mark));
    moveTo(mark.move());
  }
}
