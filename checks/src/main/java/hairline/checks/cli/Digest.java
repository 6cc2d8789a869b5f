package hairline.checks.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The bytes of a file, so that it can be known again.
 *
 * @param sha256 their SHA-256 in hexadecimal digits
 * @param bytes how many
 */
record Digest(String sha256, long bytes) {
  private static final int BUFFER = 1 << 16;

  /**
   * Reads a file.
   *
   * @throws IOException if it can't be read
   */
  static Digest of(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      byte[] buffer = new byte[BUFFER];
      long bytes = 0;
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        digest.update(buffer, 0, read);
        bytes += read;
      }
      return new Digest(HexFormat.of().formatHex(digest.digest()), bytes);
    } catch (NoSuchAlgorithmException e) {
      // Every Java has it.
      throw new IllegalStateException(e);
    }
  }
}
