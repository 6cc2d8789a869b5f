package hairline.checks.setup;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** From a file to its text: UTF-8, of bounded size. */
final class SheetFile {
  static final int MOST_BYTES = 1 << 20;

  private SheetFile() {}

  /**
   * The text of the file; nothing if it can't be read, which then is among the problems.
   *
   * @param asked where the file was asked for
   * @param shown the file's name for the user
   * @param ifMissing what to do where there is no such file
   */
  static Optional<String> read(
      Path file, String shown, SourcePosition asked, String ifMissing, Problems problems) {
    if (!Files.exists(file)) {
      problems.add(asked, "the file `" + shown + "` does not exist", ifMissing);
      return Optional.empty();
    }
    if (!Files.isRegularFile(file)) {
      problems.add(asked, "`" + shown + "` is no file", "a file with the sheet's text is due");
      return Optional.empty();
    }
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    } catch (AccessDeniedException e) {
      problems.add(asked, "`" + shown + "` may not be read", "permission to read it is due");
      return Optional.empty();
    } catch (IOException e) {
      problems.add(
          asked,
          "`" + shown + "` can't be read: " + e.getMessage(),
          "the disk or share may be at fault");
      return Optional.empty();
    }
    if (bytes.length > MOST_BYTES) {
      problems.add(
          asked,
          "`" + shown + "` is longer than " + MOST_BYTES + " bytes",
          "a setup sheet is a short text: is it the right file?");
      return Optional.empty();
    }
    return decode(bytes, shown, problems);
  }

  /** Strict UTF-8. */
  static Optional<String> decode(byte[] bytes, String shown, Problems problems) {
    CharsetDecoder decoder = StandardCharsets.UTF_8.newDecoder();
    CharBuffer text = CharBuffer.allocate(bytes.length + 1);
    CoderResult result = decoder.decode(ByteBuffer.wrap(bytes), text, true);
    String read = text.flip().toString();
    if (!result.isError()) {
      return Optional.of(read);
    }
    int lineStart = read.lastIndexOf('\n') + 1;
    int line = 1 + (int) read.chars().filter(c -> c == '\n').count();
    int column = 1 + read.codePointCount(lineStart, read.length());
    problems.add(
        new SourcePosition(shown, line, column),
        "a byte that is not UTF-8",
        "save the sheet as UTF-8");
    return Optional.empty();
  }
}
