package hairline.parser;

import java.io.IOException;
import java.util.List;

/**
 * The text before the first tape mark of a file, which is no part of the program: a title, a note
 * of the post-processor, the name of a file.
 *
 * <p>The tape mark must stand within the first {@link Limits#LEADER_LINES} lines and {@link
 * Limits#LEADER_BYTES} bytes. Text that reads like a program is no leader, lest a program whose
 * first tape mark got lost be passed over in silence: where a block before the tape mark holds a G
 * word or an end of program (M2, M30, M99), or where nothing but blank lines stands behind the
 * mark, all of the file is read.
 */
final class Leader {
  private Leader() {}

  /** Where the leader ends: the offset of the first tape mark, or 0 where there is no leader. */
  static long end(StoredProgram.Opener opener) throws IOException {
    try (LineReader lines = new LineReader(opener.open(), 0, 1)) {
      Line line = new Line();
      while (isNear(lines) && lines.read(line)) {
        if (line.isBareTapeMark()) {
          long end = line.byteOffset;
          return textFollows(lines, line) && !readsLikeProgram(end, opener) ? end : 0;
        }
      }
      return 0;
    }
  }

  private static boolean isNear(LineReader lines) {
    return lines.number() <= Limits.LEADER_LINES && lines.offset() < Limits.LEADER_BYTES;
  }

  private static boolean textFollows(LineReader lines, Line line) throws IOException {
    while (lines.read(line)) {
      if (!line.isBlank()) {
        return true;
      }
    }
    return false;
  }

  private static boolean readsLikeProgram(long end, StoredProgram.Opener opener)
      throws IOException {
    try (LineReader lines = new LineReader(opener.open(), 0, 1)) {
      BlockParser parser = new BlockParser();
      Line line = new Line();
      while (lines.offset() < end && lines.read(line)) {
        if (parser.parse(line).words().stream().anyMatch(Leader::belongsToProgram)) {
          return true;
        }
      }
      return false;
    }
  }

  private static boolean belongsToProgram(Word word) {
    return word.letter() == 'G' || (word.letter() == 'M' && endsProgram(word.value()));
  }

  private static boolean endsProgram(Value code) {
    return code instanceof Value.Literal literal
        && literal.scale() == 0
        && (literal.unscaled() == 2 || literal.unscaled() == 30 || literal.unscaled() == 99);
  }

  /** A line of the leader, unread. */
  static Block block(Line line) {
    return new Block(
        line.number,
        line.byteOffset,
        line.byteLength,
        line.shortText(),
        Block.Kind.LEADER,
        false,
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }
}
