package hairline.checks.report;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** File names as URI references, RFC 3986. */
final class Uris {
  private static final String PLAIN =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._~/";

  private Uris() {}

  /** A relative reference for a relative path, else one of the file scheme; percent-encoded. */
  static String of(String path) {
    String slashes = path.replace(File.separatorChar, '/');
    StringBuilder uri = new StringBuilder();
    boolean drive = slashes.length() > 1 && File.separatorChar == '\\' && slashes.charAt(1) == ':';
    if (drive) {
      uri.append("file:///");
    } else if (slashes.startsWith("/")) {
      uri.append("file://");
    }
    for (byte b : slashes.getBytes(StandardCharsets.UTF_8)) {
      if (PLAIN.indexOf(b) >= 0) {
        uri.append((char) b);
      } else {
        uri.append(String.format(Locale.ROOT, "%%%02X", b & 0xFF));
      }
    }
    return uri.toString();
  }
}
