package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.compare.FindingsDifference.How;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Which findings of two programs are one, and what has become of those that are not alike. */
class FindingsDifferenceTest {

  /** A finding of one rule in operation 2. */
  private static Finding finding(String message, int count) {
    return finding("cuts-air", Level.WARNING, message, message, "", 2, count, BlockDelete.BOTH);
  }

  private static Finding finding(
      String rule,
      Level level,
      String message,
      String worst,
      String cause,
      int operation,
      int count,
      BlockDelete blockDelete) {
    Place at = new Place(0, 5, new Span(1, 3));
    return new Finding(
        Occurrence.of(rule, level, at, message).cause(cause).operation(operation).build(),
        Occurrence.of(rule, level, at, worst).cause(cause).operation(operation).build(),
        count,
        at,
        blockDelete,
        Optional.empty());
  }

  private static ProgramResult result(Finding... findings) {
    return new ProgramResult(
        "a.nc",
        List.of("a.nc"),
        List.of(findings),
        List.of(),
        List.of(),
        List.of(),
        "setup.yaml",
        false,
        Map.of(),
        false,
        false,
        false);
  }

  private static FindingsDifference of(Finding before, Finding after) {
    return FindingsDifference.of(result(before), result(after), Map.of(), Set.of());
  }

  private static How how(Finding before, Finding after) {
    FindingsDifference difference = of(before, after);
    assertThat(difference.gone()).isEmpty();
    assertThat(difference.added()).isEmpty();
    assertThat(difference.changed()).hasSize(1);
    return difference.changed().get(0).how();
  }

  @Test
  void linesDoNotCount() {
    assertThat(
            of(
                    finding("as at line 7, and lines 12 to 14", 1),
                    finding("as at line 9, and lines 2 to 4", 1))
                .none())
        .isFalse();
    assertThat(of(finding("as at line 7", 1), finding("as at line 19", 1)).none()).isTrue();
    assertThat(of(finding("line 7 of O1.nc, cold", 1), finding("line 9 of O2.nc, cold", 1)).none())
        .isTrue();
    assertThat(of(finding("in 7 mm", 1), finding("in 9 mm", 1)).none()).isFalse();
  }

  @Test
  void whatBecomesOfAFindingIsNamed() {
    Finding base = finding("m", 3);
    assertThat(of(base, base).none()).isTrue();
    assertThat(how(base, finding("m", 4))).isEqualTo(How.OFTENER);
    assertThat(how(base, finding("m", 2))).isEqualTo(How.RARER);
    assertThat(how(base, finding("other", 3))).isEqualTo(How.OTHERWISE);
    assertThat(how(base, finding("cuts-air", Level.ERROR, "m", "m", "", 2, 1, BlockDelete.BOTH)))
        .isEqualTo(How.GRAVER);
    assertThat(how(base, finding("cuts-air", Level.NOTE, "m", "m", "", 2, 9, BlockDelete.BOTH)))
        .isEqualTo(How.MILDER);
    assertThat(
            how(base, finding("cuts-air", Level.WARNING, "m", "worse", "", 2, 3, BlockDelete.BOTH)))
        .isEqualTo(How.OTHERWISE);
    assertThat(
            how(base, finding("cuts-air", Level.WARNING, "m", "m", "", 2, 3, BlockDelete.ONLY_ON)))
        .isEqualTo(How.OTHERWISE);
    assertThat(how(base, finding("cuts-air", Level.WARNING, "m", "m", "c", 2, 3, BlockDelete.BOTH)))
        .isEqualTo(How.OTHERWISE);
    assertThat(of(base, finding("m", 4)).worse()).isTrue();
    assertThat(of(base, finding("m", 2)).worse()).isFalse();
    assertThat(of(base, finding("other", 3)).worse()).isFalse();
    assertThat(of(base, base).worse()).isFalse();
  }

  @Test
  void whereMotionIsTheSameAFindingIsOnlyDivided() {
    ProgramResult once = result(finding("m", 1));
    ProgramResult thrice = result(finding("m", 3));
    assertThat(FindingsDifference.of(once, thrice, Map.of(), Set.of(2)).none()).isTrue();
    assertThat(FindingsDifference.of(once, thrice, Map.of(), Set.of(1)).none()).isFalse();
  }

  @Test
  void anotherRuleOrOperationIsAnotherFinding() {
    Finding base = finding("m", 1);
    Finding rule = finding("syntax", Level.WARNING, "m", "m", "", 2, 1, BlockDelete.BOTH);
    Finding third = finding("cuts-air", Level.WARNING, "m", "m", "", 3, 1, BlockDelete.BOTH);
    for (Finding other : List.of(rule, third)) {
      FindingsDifference difference = of(base, other);
      assertThat(difference.gone()).containsExactly(base);
      assertThat(difference.added()).containsExactly(other);
      assertThat(difference.changed()).isEmpty();
      assertThat(difference.worse()).isTrue();
    }
    // Operation 3 answers operation 2, because one was put in before.
    assertThat(FindingsDifference.of(result(base), result(third), Map.of(2, 3), Set.of()).none())
        .isTrue();
    assertThat(FindingsDifference.of(result(base), result(base), Map.of(2, 3), Set.of()).gone())
        .containsExactly(base);
    assertThat(FindingsDifference.of(result(base), result(), Map.of(), Set.of()).worse()).isFalse();
  }

  @Test
  void alikeOnesArePairedFirstThenThoseOfOneCause() {
    Finding a = finding("cuts-air", Level.WARNING, "a", "a", "tool 1", 2, 1, BlockDelete.BOTH);
    Finding b = finding("cuts-air", Level.WARNING, "b", "b", "tool 2", 2, 1, BlockDelete.BOTH);
    Finding b2 = finding("cuts-air", Level.WARNING, "b2", "b2", "tool 2", 2, 1, BlockDelete.BOTH);
    Finding c = finding("cuts-air", Level.WARNING, "c", "c", "tool 3", 2, 1, BlockDelete.BOTH);
    FindingsDifference difference =
        FindingsDifference.of(result(a, b), result(c, b2, a), Map.of(), Set.of());
    assertThat(difference.changed()).containsExactly(new FindingsDifference.Pair(b, b2));
    assertThat(difference.gone()).isEmpty();
    assertThat(difference.added()).containsExactly(c);
    // Two alike before and one after: one of them is gone.
    assertThat(FindingsDifference.of(result(a, a), result(a), Map.of(), Set.of()).gone())
        .containsExactly(a);
  }
}
