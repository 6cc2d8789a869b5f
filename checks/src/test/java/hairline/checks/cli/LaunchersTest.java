package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * The launcher for Windows held against the other one, which is run by tests: no Windows is at
 * hand.
 */
class LaunchersTest {
  private static final Path FOLDER = Path.of("src/launcher");

  /** Options of Java, up to a space, a quote or a place that is filled in. */
  private static final Pattern OPTION =
      Pattern.compile("(?<![\\w-])(-X[^\\s\"'$%]+|--[a-z-]+=[A-Za-z-]+)");

  private static String text(String name) throws IOException {
    return Files.readString(FOLDER.resolve(name), StandardCharsets.UTF_8);
  }

  private static Set<String> options(String text) {
    return OPTION
        .matcher(text)
        .results()
        .map(MatchResult::group)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void bothGiveJavaTheSameOptions() throws IOException {
    Set<String> options = options(text("hairline"));
    assertThat(options)
        .contains("-XX:+UseSerialGC", "-XX:+UseG1GC", "--enable-native-access=ALL-UNNAMED")
        .hasSizeGreaterThan(8);
    assertThat(options(text("hairline.bat"))).isEqualTo(options);
  }

  @Test
  void bothRefuseForTheSameReasons() throws IOException {
    for (String name : List.of("hairline", "hairline.bat")) {
      assertThat(text(name))
          .as(name)
          .contains(
              "is missing; build it with: mvn package",
              "JAVA_HOME is ",
              "no Java found; install Java 17 or newer, or let JAVA_HOME name it",
              "needs Java 17 or newer, but ",
              "let JAVA_HOME name a newer one",
              "hairline-viewer.jar",
              "hairline.checks.cli.Main");
    }
    // Each place that is jumped to is there, and what refuses ends with status 2.
    String batch = text("hairline.bat");
    List<String> jumps =
        Pattern.compile("goto (\\w+)").matcher(batch).results().map(m -> m.group(1)).toList();
    assertThat(jumps).hasSize(5).allMatch(label -> batch.contains("\n:" + label + "\n"));
    assertThat(Pattern.compile("exit /b 2").matcher(batch).results().count()).isEqualTo(4);
  }
}
