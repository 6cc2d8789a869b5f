package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.EventSink;
import hairline.checks.setup.SheetException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** A rule declares every stage it reads: asked alone, it says the same as with all of them. */
class StageNeedsTest {
  private static final EventSink WATCHES_ALL = event -> {};

  @TestFactory
  Stream<DynamicTest> rules() throws IOException {
    Path folder = Programs.ROOT.resolve("rules");
    return AnnotatedProgramsTest.programs().stream()
        .filter(program -> program.startsWith(folder))
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.relativize(program).toString(),
                    () -> assertSame(program, folder.relativize(program).getName(0).toString())));
  }

  private static void assertSame(Path program, String rule) throws IOException, SheetException {
    ProgramCheck check = ProgramCheck.of(new Selection(Set.of(rule), Set.of()));
    ProgramResult alone = check.check(program, Programs.sheetFor(program));
    ProgramResult staged = check.check(program, Programs.sheetFor(program), WATCHES_ALL);
    assertThat(alone.findings()).isEqualTo(staged.findings());
    assertThat(alone.accepted()).isEqualTo(staged.accepted());
    assertThat(alone.notChecked().stream().filter(n -> n.rule().equals(rule)))
        .containsExactlyElementsOf(
            staged.notChecked().stream().filter(n -> n.rule().equals(rule)).toList());
  }
}
