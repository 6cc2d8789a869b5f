package hairline.checks.rules;

import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.WriteLongProgram;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;
import org.openjdk.jmh.annotations.Warmup;

/** The time of the whole check for one block, from the file to the findings. */
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@OperationsPerInvocation(CheckBenchmark.BLOCKS)
@Warmup(iterations = 4, time = 3)
@Measurement(iterations = 5, time = 3)
@Fork(1)
@State(Scope.Thread)
public class CheckBenchmark {
  static final int BLOCKS = 200_000;

  /** Which rules are asked. */
  public enum Asked {
    /** Those that need neither stock nor time. */
    WORDS_AND_STATE,
    /** With those that need the planner and warmth. */
    TIMED,
    /** All. */
    ALL
  }

  /** Which rules are asked. */
  @Param public Asked asked = Asked.ALL;

  /** On how many threads. */
  @Param({"ONE", "TWO"})
  public String threads = "ONE";

  private ProgramCheck check = ProgramCheck.of(Selection.ALL);
  private hairline.checks.setup.Setup setup = hairline.checks.setup.Setup.builder().build();
  private Path folder = Path.of("");
  private Path program = Path.of("");

  /** Writes the program. */
  @Setup
  public void write() throws IOException, SheetException {
    folder = Files.createTempDirectory("benchmark");
    program = folder.resolve("long.nc");
    WriteLongProgram.main(new String[] {program.toString(), Integer.toString(BLOCKS)});
    setup = new SheetReader().read(Path.of("..", "programs", "mixer-insert", "setup.yaml"));
    check =
        ProgramCheck.of(new Selection(names(), Set.of())).on(ProgramCheck.Threads.valueOf(threads));
  }

  private Set<String> names() {
    return Rules.all().stream()
        .map(Rule::info)
        .filter(
            rule ->
                switch (asked) {
                  case ALL -> true;
                  case TIMED -> !rule.needsContact();
                  case WORDS_AND_STATE ->
                      !rule.needsContact() && !rule.needs().contains(Need.TIMING);
                })
        .map(RuleInfo::name)
        .collect(Collectors.toSet());
  }

  /** Removes it. */
  @TearDown
  public void remove() throws IOException {
    Files.delete(program);
    Files.delete(folder);
  }

  /** The whole check. */
  @Benchmark
  public ProgramResult check() throws IOException {
    return check.check(program, setup);
  }
}
