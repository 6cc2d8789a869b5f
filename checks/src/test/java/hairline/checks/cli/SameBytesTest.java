package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.report.ReportFormat;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TimeZone;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Same input, same bytes, whatever the place, the order and the number of workers. */
class SameBytesTest {
  private static final String ONLY = "--only=digits-below-resolution";
  private static final int PROGRAMS = 12;

  private static final Map<ReportFormat, String> ALL_SCANNED = new EnumMap<>(ReportFormat.class);
  private static final Map<ReportFormat, String> ALL_BY_GRAMMAR = new EnumMap<>(ReportFormat.class);

  @TempDir private Path folder;

  private final List<String> paths = new ArrayList<>();

  @BeforeAll
  static void checkAllPrograms(@TempDir Path reports) throws IOException {
    ALL_SCANNED.putAll(all(reports, false));
    ALL_BY_GRAMMAR.putAll(all(reports, true));
  }

  @BeforeEach
  void writePrograms() throws IOException {
    for (int i = 0; i < PROGRAMS; i++) {
      StringBuilder text = new StringBuilder("G21 G90 G17 G94\nG54\nG0 X0. Y0. Z1.\n");
      for (int line = 0; line < 50 * (PROGRAMS - i); line++) {
        text.append("G1 X").append(line).append(".00005 F100.\n");
      }
      Path program = folder.resolve("I" + i + ".nc");
      Files.writeString(program, text.append("M30\n"));
      paths.add(program.toString());
    }
    paths.add(folder.resolve("gone.nc").toString());
  }

  private static String out(ReportFormat format, List<String> paths, int jobs) {
    List<String> args =
        new ArrayList<>(List.of("check", ONLY, "--summary", "--terraces", "--jobs=" + jobs));
    args.add("--format=" + format);
    args.addAll(paths);
    return Ran.of(args.toArray(String[]::new)).out();
  }

  @ParameterizedTest
  @EnumSource(names = {"TEXT", "JSON", "SARIF", "JUNIT", "HTML"})
  void placeOrderAndWorkersChangeNothing(ReportFormat format) {
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    String expected = out(format, paths, 1);
    if (format != ReportFormat.CSV) {
      // It carries surfaces, and these programs leave none.
      assertThat(expected).contains("I11.nc");
    }
    try {
      for (String tag : List.of("", "tr-TR", "de-DE")) {
        Locale.setDefault(Locale.forLanguageTag(tag));
        for (String id : List.of("Pacific/Apia", "America/St_Johns")) {
          TimeZone.setDefault(TimeZone.getTimeZone(id));
          List<String> shuffled = new ArrayList<>(paths);
          Collections.shuffle(shuffled, new Random(tag.length() + id.length()));
          shuffled.add(paths.get(3));
          assertThat(out(format, shuffled, 2)).as(tag + " " + id).isEqualTo(expected);
        }
      }
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void aFolderIsTheSameAsItsFiles() {
    List<String> files = paths.subList(0, PROGRAMS);
    assertThat(out(ReportFormat.JSON, List.of(folder.toString()), 2))
        .isEqualTo(out(ReportFormat.JSON, files, 1));
  }

  /** The scanner reads plain lines in place of the grammar, and nobody can tell. */
  @ParameterizedTest
  @EnumSource(names = {"TEXT", "JSON", "SARIF"})
  void readingEveryLineWithTheGrammarChangesNothing(ReportFormat format) {
    assertThat(ALL_BY_GRAMMAR.get(format)).isEqualTo(ALL_SCANNED.get(format)).isNotEmpty();
  }

  /** What a check of all annotated programs writes in each format, all in one run. */
  private static Map<ReportFormat, String> all(Path folder, boolean grammarOnly)
      throws IOException {
    Path json = folder.resolve("all.json");
    Path sarif = folder.resolve("all.sarif");
    if (grammarOnly) {
      System.setProperty("hairline.grammarOnly", "true");
    }
    try {
      String text =
          Ran.of(
                  "check",
                  "--summary",
                  "--report=json=" + json,
                  "--report=sarif=" + sarif,
                  "../programs/rules")
              .out();
      return Map.of(
          ReportFormat.TEXT, text,
          ReportFormat.JSON, Files.readString(json),
          ReportFormat.SARIF, Files.readString(sarif));
    } finally {
      System.clearProperty("hairline.grammarOnly");
    }
  }
}
