package hairline.parser;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.OptionalLong;
import java.util.SortedSet;

/** A part program over bytes that can be read from any place. */
final class StoredProgram implements PartProgram {
  /** Opens the bytes for one reader. */
  @FunctionalInterface
  interface Opener {
    ByteSource open() throws IOException;
  }

  private final String name;
  private final Opener opener;
  private OptionalLong leaderEnd = OptionalLong.empty();

  StoredProgram(String name, Opener opener) {
    this.name = name;
    this.opener = opener;
  }

  @Override
  public String name() {
    return name;
  }

  @Override
  public BlockSource blocksFrom(long byteOffset, int line) throws IOException {
    if (byteOffset < 0 || line < 1) {
      throw new IllegalArgumentException("byte " + byteOffset + ", line " + line);
    }
    long leaderEnd = leaderEnd();
    return new StoredBlocks(
        new LineReader(opener.open(), byteOffset, line), leaderEnd, StoredBlocks.EVERY_BLOCK);
  }

  @Override
  public BlockSource blocksOf(long byteOffset, int line, long endByteOffset) throws IOException {
    if (byteOffset < 0 || line < 1) {
      throw new IllegalArgumentException("byte " + byteOffset + ", line " + line);
    }
    long leaderEnd = leaderEnd();
    return new StoredBlocks(
        new LineReader(opener.open(), byteOffset, line), leaderEnd, endByteOffset);
  }

  @Override
  public BlockSource blocksSeenBy(Onlooker onlooker) throws IOException {
    long leaderEnd = leaderEnd();
    return StoredBlocks.seenBy(onlooker, new LineReader(opener.open(), 0, 1), leaderEnd);
  }

  @Override
  public Map<Integer, String> texts(SortedSet<Integer> lines) throws IOException {
    Map<Integer, String> texts = new HashMap<>();
    try (LineReader reader = new LineReader(opener.open(), 0, 1)) {
      Line line = new Line();
      while (texts.size() < lines.size() && reader.read(line)) {
        if (lines.contains(line.number)) {
          texts.put(line.number, line.shortText());
        }
      }
    }
    return texts;
  }

  @Override
  public SkimmedBlocks skim() throws IOException {
    long leaderEnd = leaderEnd();
    return new SkimAhead(opener, leaderEnd);
  }

  /** Looks at the head of the file once; subprograms open many readers. */
  private synchronized long leaderEnd() throws IOException {
    if (leaderEnd.isEmpty()) {
      leaderEnd = OptionalLong.of(Leader.end(opener));
    }
    return leaderEnd.getAsLong();
  }
}
