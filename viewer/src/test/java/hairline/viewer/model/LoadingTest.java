package hairline.viewer.model;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.rules.PartAt;
import hairline.checks.stock.PartLeft;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LoadingTest {
  @TempDir private Path folder;

  @Test
  void theDemoIsReadToItsEnd() throws Exception {
    try (Program program = Programs.read(Programs.DEMO)) {
      assertThat(program.trouble()).isEmpty();
      assertThat(program.finished()).isTrue();
      assertThat(program.lines().count()).isEqualTo(Files.readAllLines(Programs.DEMO).size());
      assertThat(program.result()).isPresent();
      assertThat(program.part()).hasSize(1);
      Moves moves = program.moves();
      // The first cut of the frame: 16 mm along X at Z-0.2.
      long move = moves.firstOf(0, 18);
      assertThat(program.lines().read(18)).isEqualTo("G1 X8. F240.");
      assertThat(moves.kind(move)).isEqualTo(Moves.Kind.LINE);
      assertThat(moves.z(move)).isEqualTo(-200_000_000L);
      assertThat(moves.x(move)).isEqualTo(8_000_000_000L);
      assertThat(moves.pathMm(move) - moves.pathMm(move - 1)).isEqualTo(16.0);
    }
  }

  @Test
  void pathAndTimeNeverRunBack() throws Exception {
    try (Program program = Programs.read(Programs.FAULTY)) {
      Moves moves = program.moves();
      for (long i = 1; i < moves.count(); i++) {
        assertThat(moves.pathMm(i)).isGreaterThanOrEqualTo(moves.pathMm(i - 1));
        assertThat(moves.seconds(i)).isGreaterThanOrEqualTo(moves.seconds(i - 1));
      }
    }
  }

  /** The part behind the last move is the part left; before the first it is the stock. */
  @Test
  void thePartOnTheWayEndsAsThePartLeft() throws Exception {
    try (Program program = Programs.read(Programs.DEMO)) {
      long last = program.moves().count();
      PartLeft end = part(program, last);
      // Groove and terraces stand around here.
      for (long y = -1_000_000_000L; y <= 1_000_000_000L; y += 10_000_000L) {
        for (long x = -2_000_000_000L; x <= 2_000_000_000L; x += 100_000_000L) {
          assertThat(end.surfaces().get(0).heightPm((double) x, (double) y))
              .isEqualTo(program.part().get(0).heightPm((double) x, (double) y));
        }
      }
      assertThat(part(program, 0).surfaces()).isEmpty();
    }
  }

  /** Each cut seen is one move run: what a place shows changes at its move and not before. */
  @Test
  void thePartOnTheWayStandsBehindTheMoveAskedFor() throws Exception {
    Path file =
        Programs.write(
            folder,
            "steps.nc",
            "G21 G90 G17 G94 G54",
            "T1 M6",
            "S20000 M3",
            "G43 H1 G0 Z1.",
            "X0 Y0",
            "G1 Z-0.01 F60.",
            "X1. F200.",
            "Z-0.02",
            "X0",
            "G0 Z5.",
            "M30");
    Programs.write(
        folder,
        "steps.setup.yaml",
        "tools: [{number: 1, shape: flat, diameter: 0.5 mm, flutes: 2}]",
        "stock: {x: [-1 mm, 2 mm], y: [-1 mm, 1 mm], top: 0 mm, bottom: -1 mm}");
    try (Program program = Programs.read(file)) {
      assertThat(program.trouble()).isEmpty();
      Moves moves = program.moves();
      long first = moves.firstOf(0, 7);
      long second = moves.firstOf(0, 9);
      assertThat(height(program, first)).isEqualTo(0);
      assertThat(height(program, first + 1)).isEqualTo(-10_000_000L);
      assertThat(height(program, second)).isEqualTo(-10_000_000L);
      assertThat(height(program, second + 1)).isEqualTo(-20_000_000L);
      assertThat(program.levels().stream().map(LevelMark::zPm).toList())
          .isEqualTo(List.of(-10_000_000L, -20_000_000L));
      assertThat(program.levels().get(1).at().line()).isEqualTo(9);
      assertThat(moves.value(Trace.DEPTH, first)).isEqualTo(10_000_000L);
      assertThat(moves.value(Trace.DEPTH, second)).isEqualTo(10_000_000L);
    }
  }

  private static long height(Program program, long moves) throws IOException {
    return part(program, moves).surfaces().get(0).heightPm(5e8, 0).getAsLong();
  }

  private static PartLeft part(Program program, long moves) throws IOException {
    Optional<PartLeft> part =
        PartAt.after(
            program.file(),
            program.setup().orElseThrow(),
            OptionalLong.empty(),
            moves,
            () -> false);
    return part.orElseThrow();
  }

  @Test
  void aFileThatIsNotThereIsTold() throws Exception {
    try (Program program = Programs.read(folder.resolve("missing.nc"))) {
      assertThat(program.finished()).isTrue();
      assertThat(program.trouble().orElseThrow().sentence()).contains("missing.nc` does not exist");
    }
  }

  @Test
  void aBrokenProgramShowsWhatCouldBeRead() throws Exception {
    Path file =
        Programs.write(folder, "broken.nc", "G21 G90", "G0 Z1.", "X1..2 (((", "G1 Z-0.1 F10.");
    try (Program program = Programs.read(file)) {
      assertThat(program.lines().count()).isEqualTo(4);
      assertThat(program.moves().count()).isGreaterThanOrEqualTo(1);
      assertThat(program.findings().stream().map(mark -> mark.finding().rule())).contains("syntax");
    }
  }

  /** What is told on the way is what the check says at its end, as far as it got. */
  @Test
  void findingsAreKnownBeforeTheEnd() throws Exception {
    List<String> lines = new ArrayList<>(List.of("G21 G90 G54 S20000 M3", "X1..2", "G1 X0 Y0 Z0"));
    for (int line = 0; line < 60_000; line++) {
      lines.add("X" + line % 100 + ". Y" + line % 77 + ".");
    }
    Path file = Programs.write(folder, "long.nc", lines.toArray(new String[0]));
    Loading loading = Loading.start(file, Optional.empty());
    Program program = loading.program();
    List<FindingMark> early = List.of();
    while (early.isEmpty() && !program.finished()) {
      early = program.findings();
    }
    assertThat(program.result()).isEmpty();
    loading.await();
    assertThat(program.result()).isPresent();
    List<FindingMark> all = program.findings();
    assertThat(early).isNotEmpty().allMatch(mark -> all.stream().anyMatch(mark::isSame));
    assertThat(all.stream().map(FindingMark::finding).toList())
        .containsExactlyInAnyOrderElementsOf(program.result().orElseThrow().findings());
    program.close();
  }

  @Test
  void readingCanBeCancelled() throws Exception {
    Loading loading = Loading.start(Programs.DEMO, Optional.empty());
    loading.cancel();
    loading.await();
    assertThat(loading.program().finished()).isTrue();
    assertThat(loading.program().result().isPresent()).isNotEqualTo(loading.program().cancelled());
  }
}
