package hairline.checks.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.motion.Interpreter;
import hairline.checks.motion.Move;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.setup.SheetReader;
import hairline.parser.PartPrograms;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How far beside a circle or a line a point between may lie to be one that rounding put there, for
 * an increment of 0.1 µm: half of it, 50 nm, in each axis. Positions are written to the nanometre.
 */
class CoursesTest {
  private static final double ROOM_PM = 50_000;

  private static List<Move> moves(String text) throws Exception {
    List<Move> moves = new ArrayList<>();
    new Interpreter(
            SheetControl.of(new SheetReader().parse("machine: {resolution: 0.001 um}", "sheet")),
            ProgramFiles.alone(
                PartPrograms.of(
                    "a.nc",
                    ("G21 G90 G17 G94 G54 G91.1\nG0 X0. Y0. Z0. A0.\n" + text + "\nM30\n")
                        .getBytes(StandardCharsets.UTF_8)),
                e -> {}))
        .run(
            event -> {
              if (event instanceof Move move) {
                moves.add(move);
              }
            },
            false);
    return moves.subList(1, moves.size());
  }

  private static Optional<double[]> shares(String whole, double roomPm, String pieces)
      throws Exception {
    Move one = moves(whole).get(0);
    Course course =
        one.arc().isPresent()
            ? new CircleCourse(one, one.arc().get().sweepRad(), one.from(), one.to())
            : new StraightCourse(one.from(), one.to());
    return course.shares(moves(pieces.replace(" / ", "\n")), roomPm);
  }

  /** A half circle of radius 5 around X5 Y0, and a point near its top. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "5.0    | 50000 | true",
        "5.0    |     0 | true",
        // The ends may lie 50 nm from the circle that was meant, and so may the point.
        "5.0001   | 50000 | true",
        "4.9999   | 50000 | true",
        "5.000101 | 50000 | false",
        "4.999899 | 50000 | false",
        // Without room only what rounding of doubles makes is one point.
        "5.000001 |     0 | false",
        "4.999999 |     0 | false",
      })
  void aPointNearTheTopOfACircle(String y, double roomPm, boolean kept) throws Exception {
    Optional<double[]> shares =
        shares(
            "G2 X10. Y0. I5. J0. F9.",
            roomPm,
            "G2 X5. Y" + y + " I5. J0. F9. / G2 X10. Y0. I0. J-" + y);
    assertThat(shares.isPresent()).isEqualTo(kept);
    if (kept) {
      assertThat(shares.get()).hasSize(2).contains(1.0);
      assertThat(shares.get()[0]).as("half of the way").isCloseTo(0.5, within(1e-12));
    }
  }

  /**
   * At 45° a square of half an increment reaches √2 times as far: 50 + 70.7 nm along the radius.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"0.000120 | true", "0.000122 | false", "-0.000120 | true", "-0.000122 | false"})
  void aPointAtFortyFiveDegrees(double offMm, boolean kept) throws Exception {
    double along = (5 + offMm) * Math.sqrt(0.5);
    String x = digits(5 - along);
    String y = digits(along);
    assertThat(
            shares(
                    "G2 X10. Y0. I5. J0. F9.",
                    ROOM_PM,
                    "G2 X" + x + " Y" + y + " I5. J0. F9. / G2 X10. Y0. I" + y + " J-" + y)
                .isPresent())
        .isEqualTo(kept);
  }

  private static String digits(double mm) {
    return java.math.BigDecimal.valueOf(mm)
        .setScale(6, java.math.RoundingMode.HALF_EVEN)
        .toPlainString();
  }

  /**
   * A helix that falls 1 mm over half a turn: its middle may be off by 50 nm for its own rounding,
   * and by 4 × 50 nm / (5 π) for that along the circle: 62.8 nm.
   */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "-0.5      | 50000 | true",
        "-0.500062 | 50000 | true",
        "-0.499938 | 50000 | true",
        "-0.500063 | 50000 | false",
        "-0.499937 | 50000 | false",
        "-0.500001 |     0 | false",
        "-0.5      |     0 | true",
      })
  void theMiddleOfAHelix(String z, double roomPm, boolean kept) throws Exception {
    assertThat(
            shares(
                    "G2 X10. Y0. Z-1. I5. J0. F9.",
                    roomPm,
                    "G2 X5. Y5. Z" + z + " I5. J0. F9. / G2 X10. Y0. Z-1. I0. J-5.")
                .isPresent())
        .isEqualTo(kept);
  }

  @Test
  void arcsByRadiusKeepToACircleByFourTimesTheRoom() throws Exception {
    String whole = "G2 X10. Y0. R5. F9.";
    for (String y : List.of("5.", "5.0001", "4.9999")) {
      assertThat(shares(whole, ROOM_PM, "G2 X5. Y" + y + " R5. F9. / G2 X10. Y0. R5."))
          .as(y)
          .isPresent();
    }
    for (String y : List.of("5.0005", "4.9995")) {
      assertThat(shares(whole, ROOM_PM, "G2 X5. Y" + y + " R5. F9. / G2 X10. Y0. R5."))
          .as(y)
          .isEmpty();
    }
    // Through the same points, but each piece flatter than the circle.
    assertThat(shares(whole, ROOM_PM, "G2 X5. Y5. R5.01 F9. / G2 X10. Y0. R5.01")).isEmpty();
    // A bow of r (1 - cos 45°) = 1.464 mm: with 0.2 µm more radius it is 0.1 µm lower.
    assertThat(shares(whole, ROOM_PM, "G2 X5. Y5. R5.0001 F9. / G2 X10. Y0. R5.0001")).isPresent();
  }

  @Test
  void piecesGoOnInTheDirectionOfTheCircle() throws Exception {
    String whole = "G2 X10. Y0. I5. J0. F9.";
    assertThat(shares(whole, ROOM_PM, "G2 X5. Y5. I5. J0. F9. / G3 X10. Y0. I0. J-5.")).isEmpty();
    // Beyond the end and back is no division.
    assertThat(shares(whole, ROOM_PM, "G2 X5. Y-5. I5. J0. F9. / G2 X10. Y0. I0. J5.")).isEmpty();
    // Around another centre.
    assertThat(shares(whole, ROOM_PM, "G2 X5. Y5. I5. J0. F9. / G2 X10. Y0. I0.001 J-4.999"))
        .isEmpty();
    double[] thirds =
        shares(
                "G3 X0. Y0. I5. J0. F9.",
                ROOM_PM,
                "G3 X5. Y-5. I5. J0. F9. / G3 X10. Y0. I0. J5. / G3 X0. Y0. I-5. J0.")
            .orElseThrow();
    assertThat(thirds).as("of a whole turn").hasSize(3);
    assertThat(thirds[0]).isCloseTo(0.25, within(1e-12));
    assertThat(thirds[1]).isCloseTo(0.5, within(1e-12));
    assertThat(thirds[2]).isEqualTo(1);
  }

  /** From X0 Y0 to X10 Y5: half way is X5 Y2.5. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "X5. Y2.5 | 0 | true",
        "X2. Y1. | 0 | true",
        "X5. Y2.500001 | 0 | false",
        // 50 nm up and 50 nm aside: 75 nm in Y, for the line rises by half.
        "X5. Y2.500075 | 50000 | true",
        "X5. Y2.500076 | 50000 | false",
        "X5. Y2.499925 | 50000 | true",
        "X5. Y2.499924 | 50000 | false",
        "X-1. Y-0.5 | 50000 | false",
        "X11. Y5.5 | 50000 | false",
        "X5. Y2.5 Z0.00001 | 50000 | false",
      })
  void aPointNearALine(String point, double roomPm, boolean kept) throws Exception {
    Optional<double[]> shares =
        shares("G1 X10. Y5. F9.", roomPm, "G1 " + point + " F9. / G1 X10. Y5. Z0.");
    assertThat(shares.isPresent()).isEqualTo(kept);
  }

  @Test
  void pointsOfALineComeInTheirOrder() throws Exception {
    double[] shares =
        shares("G1 X10. Y5. F9.", 0, "G1 X2. Y1. F9. / X4. Y2. / X10. Y5.").orElseThrow();
    assertThat(shares[0]).isCloseTo(0.2, within(1e-12));
    assertThat(shares[1]).isCloseTo(0.4, within(1e-12));
    assertThat(shares[2]).isEqualTo(1);
    assertThat(shares("G1 X10. Y5. F9.", 0, "G1 X4. Y2. F9. / X2. Y1. / X10. Y5.")).isEmpty();
    // A rotary axis is not rounded to increments of length.
    assertThat(shares("G1 X10. A10. F9.", ROOM_PM, "G1 X5. A5. F9. / X10. A10.")).isPresent();
    assertThat(shares("G1 X10. A10. F9.", ROOM_PM, "G1 X5. A5.001 F9. / X10. A10.")).isEmpty();
  }
}
