package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Every annotated program in every format, with all that can be asked for: nothing fails. */
class EveryReportTest {
  private static final Path RULES = Path.of("../programs/rules");

  @Test
  void noProgramIsTooOddForAnyReport(@TempDir Path folder) throws Exception {
    List<String> args =
        new ArrayList<>(
            List.of("check", "-q", "--terraces", "--depths", "--timeline", "--feeds", "--budget"));
    List<String> formats = List.of("html", "svg", "csv", "json", "sarif", "junit", "text");
    for (String format : formats) {
      args.add("--report=" + format + "=" + folder.resolve("all." + format));
    }
    args.add("--summary");
    args.add(RULES.toString());
    Ran ran = Ran.of(args.toArray(String[]::new));
    // Some of the programs are wrong on purpose: not all is understood.
    assertThat(ran.err()).doesNotContain("fault of hairline's own");
    assertThat(ran.status()).isEqualTo(3);
    for (String format : formats) {
      assertThat(folder.resolve("all." + format)).isNotEmptyFile();
    }
    long programs;
    try (Stream<Path> files = Files.walk(RULES)) {
      programs = files.filter(file -> file.toString().endsWith(".nc")).count();
    }
    assertThat(Files.readString(folder.resolve("all.junit")).split("<testsuite ", -1))
        .hasSizeGreaterThan((int) (programs * 9 / 10));
    assertThat(Files.readString(folder.resolve("all.html"))).doesNotContain("NaN", "Infinity");
    assertThat(Files.readString(folder.resolve("all.svg"))).doesNotContain("NaN", "Infinity");
    assertThat(Files.readString(folder.resolve("all.json"))).doesNotContain("NaN", "Infinity");
    assertThat(Files.readString(folder.resolve("all.csv"))).doesNotContain("NaN", "Infinity");
  }
}
