package hairline.checks.motion;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.motion.ControlProfile.PointlessNumber;
import hairline.checks.motion.Event.MachineCode.Meaning;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** The short way through plain blocks tells the very same events as the long one. */
class PlainBlocksProperties {
  @Provide
  Arbitrary<String> words() {
    Arbitrary<String> number =
        Arbitraries.of(
            "0",
            "0.",
            "-0.",
            "1.",
            "-2.5",
            "0.0001",
            "-0.00015",
            ".00005",
            "3",
            "12.3456",
            "1.00",
            "1000000000.",
            "9999999999.",
            "0.123456789",
            "0.1234567891",
            "#1",
            "[1+2]",
            "-4");
    Arbitrary<String> plain =
        Combinators.combine(Arbitraries.of("X", "Y", "Z", "X", "Y", "Z", "F"), number)
            .as((letter, value) -> letter + value);
    Arbitrary<String> other =
        Arbitraries.of(
            "G0",
            "G1",
            "G01",
            "G1.",
            "G0.0",
            "G2",
            "G3",
            "G90",
            "G91",
            "G20",
            "G21",
            "G93",
            "G94",
            "G95",
            "G80",
            "G81 R1. Q1.",
            "G28",
            "G92",
            "G52",
            "G9",
            "G54",
            "G55",
            "G41 D1",
            "G40",
            "G68",
            "G69",
            "N1",
            "N2",
            "O3",
            "I1.",
            "J-1.",
            "R2.",
            "A3.",
            "U1.",
            "E1",
            "S900",
            "M3",
            "M5",
            "T1",
            "M6",
            "G43 H1",
            "G49",
            "G53",
            "G38.2",
            "G4 P1.",
            "M0",
            "G96",
            "G61",
            "(side)",
            "F100",
            "F100.",
            "F0",
            "F-1.",
            "G10 L2 P1");
    return Arbitraries.frequencyOf(Tuple.of(5, plain), Tuple.of(2, other));
  }

  @Provide
  Arbitrary<List<String>> programs() {
    Arbitrary<String> line =
        words().list().ofMinSize(0).ofMaxSize(4).map(words -> String.join(" ", words));
    Arbitrary<String> usual =
        Arbitraries.of(
            "G21 G90 G94 G17 G54",
            "G0 X0. Y0. Z0.",
            "G1 X1. F300.",
            "X2.5",
            "N7 Y-2. (side)",
            "G1 Z-0.004",
            "",
            "#1=2",
            "/X3.",
            "M30",
            "G2 X1. Y1. I0.5",
            "G3 X0. J-1. F200.",
            "G3 X1. Y1. Z2. I0 J0.25",
            "X3. I1. J1.",
            "G3 X3. Y4. I0. J0.",
            "G18",
            "G17",
            "G90.1",
            "G91.1",
            "G91",
            "G90",
            "G81 X1. Y1. Z-1. R1. F100.",
            "G81 X2. Y1.",
            "G92 X0.1234567891",
            "G92.1",
            "G10 L2 P1 X5. Y1.",
            "G55",
            "G28",
            "G43 H1");
    return Arbitraries.frequencyOf(Tuple.of(1, line), Tuple.of(3, usual))
        .list()
        .ofMinSize(2)
        .ofMaxSize(30);
  }

  @Provide
  Arbitrary<ControlProfile> profiles() {
    ControlProfile known = ControlProfile.UNKNOWN;
    return Combinators.combine(
            Arbitraries.of(0L, 1L, 100_000L, 1_000_000L, 3_000_000L),
            Arbitraries.of(PointlessNumber.values()).optional(),
            Arbitraries.of(Map.<String, Meaning>of(), Map.of("G1", Meaning.IGNORE)),
            Arbitraries.of(
                List.of(
                    Optional.<Modes.Units>empty(),
                    Optional.of(Modes.Units.MM),
                    Optional.of(Modes.Units.INCH))))
        .as(
            (pm, point, codes, units) ->
                new ControlProfile(
                    pm == 0 ? OptionalLong.empty() : OptionalLong.of(pm),
                    OptionalLong.empty(),
                    false,
                    point,
                    false,
                    units,
                    known.plane(),
                    known.distance(),
                    known.feedMode(),
                    known.dwellP(),
                    known.dwellX(),
                    known.arcTolerancePm(),
                    known.peckGapPm(),
                    known.callDepth(),
                    known.stepBudget(),
                    known.offsets(),
                    codes));
  }

  @Property(tries = 2000)
  void sameEvents(
      @ForAll("programs") List<String> lines, @ForAll("profiles") ControlProfile profile)
      throws IOException {
    byte[] bytes = String.join("\n", lines).getBytes(UTF_8);
    List<Event> quick = new ArrayList<>();
    List<Event> all = new ArrayList<>();
    new Interpreter(profile, PartPrograms.of("test", bytes)).run(quick::add, true);
    new Interpreter(profile, PartPrograms.of("test", bytes)).longWayOnly().run(all::add, true);
    assertThat(quick).isEqualTo(all);
  }

  @Example
  void aLineEndsTheCycleBeforeIt() throws IOException {
    sameEvents(
        List.of(
            "G21 G90 G94 G17 G54",
            "G0 X0. Y0. Z5.",
            "G81 X1. Y1. Z-1. R1. F100.",
            "G1 X3. Y1. Z5. F100.",
            "G81 X2. Y1.",
            "M30"),
        Runs.TENTH_UM);
  }
}
