package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Finding;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Statements in number. */
class MacroUnreadTest {

  /** The last statement, a loop, is told apart from the conditions ahead of it. */
  @ParameterizedTest
  @CsvSource({
    "9999, the blocks behind it are taken in the order written",
    "10000, what it made unknown was not followed"
  })
  void tenThousandStatementsAreFollowed(int conditions, String fact) throws Exception {
    String program =
        "G21 G90 G17 G94 G54\n"
            + "IF [#1 GT 2] GOTO 100\n".repeat(conditions)
            + "WHILE [#1 LT 3] DO1\nM30\n";
    List<Finding> findings =
        ProgramCheck.of(new Selection(Set.of("macro-unread"), Set.of()))
            .check(
                PartPrograms.of("many.nc", program.getBytes(StandardCharsets.UTF_8)),
                new SheetReader().embedded())
            .findings();
    assertThat(findings).hasSize(2);
    assertThat(findings.get(0).count()).isEqualTo(conditions);
    assertThat(findings.get(1).at().line()).isEqualTo(conditions + 2);
    assertThat(String.join("; ", findings.get(1).first().facts())).contains(fact);
  }
}
