package hairline.checks.report;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Map;

/**
 * Names findings by what they are about, not by where it stands: rule, cause and the words of the
 * block, without blanks and sequence number. Inserted lines and renumbering leave them as they are;
 * equal ones within a program are told apart by counting.
 */
final class Fingerprints {
  private static final int BYTES = 16;

  private final ProgramResult result;
  private final Map<String, Integer> seen = new HashMap<>();

  Fingerprints(ProgramResult result) {
    this.result = result;
  }

  /** The fingerprint of the program's next finding, in hexadecimal digits. */
  String of(Finding finding) {
    String text =
        String.join(
            "\n",
            finding.rule(),
            finding.first().cause(),
            finding.blockDelete().name(),
            words(
                result
                    .excerpts()
                    .getOrDefault(new SourceLine(finding.at().file(), finding.at().line()), "")));
    int count = seen.merge(text, 1, Integer::sum);
    return hash(text + "\n" + count);
  }

  private static String words(String line) {
    return line.replaceAll("\\s+", "").toUpperCase(Locale.ROOT).replaceFirst("^(/?)N\\d+", "$1");
  }

  private static String hash(String text) {
    try {
      byte[] all =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(all, 0, BYTES);
    } catch (NoSuchAlgorithmException e) {
      // Every Java has it.
      throw new IllegalStateException(e);
    }
  }
}
