package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What is not known never silences a rule without a word: in each program that makes a rule speak,
 * one word after the other becomes a parameter that nobody set; then the rule still speaks, or it
 * is listed as not checked. In any case the word is told as unknown. Rules of numbers and of state
 * look at the very word: a parameter in its place takes their fault away.
 */
class UnknownWordsTest {
  private static final Pattern WORD =
      Pattern.compile("([FSTHDXYZIJKRQP])([+-]?\\d+\\.?\\d*|\\.\\d+)");
  private static final Pattern COMMENT = Pattern.compile("[(;]");

  @TestFactory
  Stream<DynamicTest> programs() throws IOException {
    Path folder = Programs.ROOT.resolve("rules");
    return AnnotatedProgramsTest.programs().stream()
        .filter(program -> program.startsWith(folder))
        .filter(program -> program.getFileName().toString().startsWith("speaks"))
        .map(
            program ->
                DynamicTest.dynamicTest(
                    folder.relativize(program).toString(),
                    () ->
                        assertNeverMute(
                            program, folder.relativize(program).getName(0).toString())));
  }

  private static void assertNeverMute(Path program, String rule)
      throws IOException, SheetException {
    RuleInfo.Group group = Rules.named(rule).orElseThrow().info().group();
    boolean ofWords = group == RuleInfo.Group.NUMBERS || group == RuleInfo.Group.STATE;
    String text = Files.readString(program, StandardCharsets.ISO_8859_1);
    Setup setup = Programs.sheetFor(program);
    List<String> mute = new ArrayList<>();
    int from = 0;
    for (String line : text.split("(?<=\\n)", -1)) {
      Matcher comment = COMMENT.matcher(line);
      int end = comment.find() ? comment.start() : line.length();
      Matcher word = WORD.matcher(line).region(0, end);
      while (word.find()) {
        String changed =
            text.substring(0, from + word.start(2)) + "#499" + text.substring(from + word.end(2));
        ProgramResult result = check(program, changed, rule, setup);
        boolean told =
            result.notChecked().stream().anyMatch(n -> n.reason().contains("#499"))
                || result.findings().stream().anyMatch(f -> f.first().message().contains("#499"));
        if (!ofWords && (!told || (!fits(word.group(), rule) && isMute(result, rule)))) {
          mute.add((told ? "" : "untold: ") + word.group() + " in: " + line.strip());
        }
      }
      from += line.length();
    }
    assertThat(mute).isEmpty();
  }

  /** Words that mean nothing for the rule, or without which there is no fault to look for. */
  private static boolean fits(String word, String rule) {
    return switch (rule) {
      case "approach-mixed" -> word.startsWith("Z1.");
      case "dwell-in-cut" -> word.startsWith("P");
      case "spindle-idle" -> word.startsWith("T");
      case "warm-up-deletable", "warm-up-short" -> word.startsWith("P") || word.startsWith("S");
      default -> false;
    };
  }

  private static boolean isMute(ProgramResult result, String rule) {
    return result.findings().stream().noneMatch(f -> f.rule().equals(rule))
        && result.notChecked().stream().noneMatch(n -> n.rule().equals(rule));
  }

  private static ProgramResult check(Path program, String text, String rule, Setup setup)
      throws IOException {
    return ProgramCheck.of(new Selection(Set.of(rule), Set.of()))
        .check(
            PartPrograms.of(program.toString(), text.getBytes(StandardCharsets.ISO_8859_1)), setup);
  }
}
