package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import hairline.checks.finding.Finding;
import hairline.checks.motion.Interpreter;
import hairline.checks.motion.ProgramFiles;
import hairline.checks.motion.SheetControl;
import hairline.checks.rules.CuttingWindow.Limit;
import hairline.checks.rules.CuttingWindow.Limits;
import hairline.checks.rules.CuttingWindow.MoveClass;
import hairline.checks.rules.CuttingWindow.Remedy;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import hairline.checks.timing.FeedPlanner;
import hairline.checks.timing.MotionLimits;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.ProgramTime;
import hairline.checks.timing.Summarizer;
import hairline.checks.timing.TimeTable;
import hairline.checks.timing.Timeline;
import hairline.parser.PartPrograms;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Each bound of a window is put to the check itself: silent just inside, speaking just outside. */
class WindowSolverTest {
  /** Odd figures, so that no division comes out even. */
  private static final String SHEET =
      """
      machine:
        resolution: 0.001 um
        acceleration: 8 m/s^2
        rapid: 15 m/min
        spindle: {min_speed: 4000 rpm, max_speed: 60000 rpm}
        control: {block_time: 0.4 ms, look_ahead: 20, path_tolerance: 1 um}
      material: {minimum_chip_ratio: [0.2, 0.31, 0.43], specific_force: 2800 MPa, force_exponent: 0.25}
      tools:
        - number: 3
          shape: flat
          diameter: 0.41 mm
          flutes: 2
          edge_radius: [1.1 um, 1.7 um, 2.3 um]
          runout: 0.7 um
          cutting_length: 0.6 mm
          neck: {diameter: 0.37 mm, length: 1.9 mm}
          taper_length: 4 mm
          shank: {diameter: 4 mm, length: 12 mm}
          material: carbide
          max_feed_per_tooth: 11.3 um
          surface_speed: [31 m/min, 67.3 m/min]
      stock: {x: [-3 mm, 3 mm], y: [-2 mm, 2 mm], top: 0 mm, bottom: -3 mm}
      job: {tolerance: ±1 um, wall_tolerance: ±47 um, fine_step: 60 um, fine_tool: 1 mm}
      """;

  /** Two slots, one beside the other: a whole width and a part of one. */
  private static String program(double feed, double depthUm, double rpm) {
    return String.format(
        Locale.ROOT,
        """
        G21 G90 G17 G94 G54
        T3 M6
        S%.6f M3
        G0 G43 H3 X-4. Y0. Z1.
        Z-%.9f
        G1 X4. F%.9f
        G0 Z1.
        X-4. Y0.31
        Z-%.9f
        G1 X4.
        G0 Z1.
        M5
        M30
        """,
        rpm,
        depthUm / 1000,
        feed,
        depthUm / 1000);
  }

  private static final double FEED = 397.3;
  private static final double DEPTH = 11.7;
  private static final double RPM = 43_210;

  private static Setup sheet(String text) throws SheetException {
    return new SheetReader().parse(text, "the sheet of the test");
  }

  private static CuttingWindow window(Setup sheet, String program) throws IOException {
    CutsOfOperations cuts = new CutsOfOperations(sheet);
    ProgramCheck.of(Selection.ALL).check(text(program), sheet, cuts);
    List<CuttingWindow> windows = WindowSolver.solve(cuts, false);
    assertThat(windows).hasSize(1);
    return windows.get(0);
  }

  private static hairline.parser.PartProgram text(String program) {
    return PartPrograms.of("window.nc", program.getBytes(StandardCharsets.UTF_8));
  }

  private static List<Finding> findings(Setup sheet, String rule, String program)
      throws IOException {
    return ProgramCheck.of(new Selection(Set.of(rule), Set.of()))
        .check(text(program), sheet)
        .findings();
  }

  /** A program with another value of what a limit is of. */
  private interface With {
    String value(double value);
  }

  private static void holds(Setup sheet, Limits limits, With with, double nearness)
      throws IOException {
    assertThat(limits.all()).isNotEmpty();
    for (Limit limit : limits.all()) {
      // No rule speaks of acceleration; it is put to the planner below.
      if (limit.rule().equals(WindowSolver.ACCELERATION)) {
        continue;
      }
      double in = limit.lower() ? 1 + nearness : 1 - nearness;
      double out = limit.lower() ? 1 - nearness : 1 + nearness;
      assertThat(findings(sheet, limit.rule(), with.value(limit.likely() * in)))
          .as("just inside %s", limit)
          .isEmpty();
      assertThat(findings(sheet, limit.rule(), with.value(limit.likely() * out)))
          .as("just outside %s", limit)
          .isNotEmpty();
      if (limit.certain() == 0 || Double.isInfinite(limit.certain())) {
        continue;
      }
      RuleInfo info = Rules.named(limit.rule()).orElseThrow().info();
      assertThat(findings(sheet, limit.rule(), with.value(limit.certain() * out)))
          .as("where %s is certain", limit)
          .anyMatch(f -> f.level() == info.level());
      if (limit.certain() != limit.likely()) {
        assertThat(findings(sheet, limit.rule(), with.value(limit.certain() * in)))
            .as("where %s is likely only", limit)
            .isNotEmpty()
            .allMatch(f -> f.level() == info.level().lower());
      }
    }
  }

  @Test
  void feedsHoldInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    assertThat(window.feed().all())
        .extracting(Limit::rule)
        .contains(
            "chip-below-minimum",
            "feed-below-edge-radius",
            "runout-exceeds-feed",
            "chip-above-limit",
            "tool-overstressed",
            "flex-exceeds-wall");
    holds(sheet, window.feed(), feed -> program(feed, DEPTH, RPM), 1e-5);
    assertThat(window.feed().hold(FEED)).isTrue();
    // By hand: largest feed per tooth 11.3 µm × 43210 rpm × 2 teeth.
    assertThat(window.feed().upper().orElseThrow().likely())
        .isCloseTo(0.0113 * 43_210 * 2, within(1e-3));
  }

  @Test
  void depthsHoldInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    Limits depth = window.depth().orElseThrow();
    assertThat(depth.all())
        .extracting(Limit::rule)
        .contains(
            "depth-below-minimum",
            "depth-below-edge-radius",
            "depth-beyond-cutting-length",
            "tool-overstressed");
    // A depth is whole nanometres here, the increment of the sheet. And in a program of one pass a
    // deeper pass makes a higher step, while the limit holds for the step as programmed: see below.
    Limits others =
        new Limits(
            depth.all().stream().filter(l -> !l.rule().equals("flex-exceeds-step")).toList());
    holds(sheet, others, um -> program(FEED, um, RPM), 1e-2);
    // By hand: 0.31 × 1.7 µm.
    assertThat(depth.all())
        .filteredOn(limit -> limit.rule().equals("depth-below-minimum"))
        .singleElement()
        .satisfies(limit -> assertThat(limit.likely()).isCloseTo(0.527, within(1e-5)));
  }

  private static final double STEP = 23.4;

  /** A step of one height, whatever the depth of its last pass. */
  private static String step(double feed, double depthUm) {
    return String.format(
        Locale.ROOT,
        """
        G21 G90 G17 G94 G54
        T3 M6
        S43210 M3
        G0 G43 H3 X-4. Y0. Z1.
        Z-%.9f
        G1 X4. F%.9f
        G0 Z1.
        X-4.
        Z-%.9f
        G1 X4.
        G0 Z1.
        M5
        M30
        """,
        (STEP - depthUm) / 1000,
        feed,
        STEP / 1000);
  }

  @Test
  void flexAgainstTheStepHoldsInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET + "limits: {flex_share: 0.02}\n");
    CuttingWindow window = window(sheet, step(FEED, DEPTH));
    Limits feed = only(window.feed(), "flex-exceeds-step");
    holds(sheet, feed, f -> step(f, DEPTH), 1e-4);
    Limits depth = only(window.depth().orElseThrow(), "flex-exceeds-step");
    assertThat(depth.all().get(0).certain()).isLessThan(STEP);
    holds(sheet, depth, um -> step(FEED, um), 1e-2);
  }

  private static Limits only(Limits limits, String rule) {
    List<Limit> its = limits.all().stream().filter(l -> l.rule().equals(rule)).toList();
    assertThat(its).as(rule).hasSize(1);
    return new Limits(its);
  }

  /** Straight down, then along at a level, then up a ramp and down again, each at its feed. */
  private static String classes(double down, double along, double ramp, double depthUm) {
    return String.format(
        Locale.ROOT,
        """
        G21 G90 G17 G94 G54
        T3 M6
        S43210 M3
        G0 G43 H3 X-2. Y-1. Z0.1
        G1 Z-%.6f F%.9f
        X2. F%.9f
        G0 Z1.
        X-2. Y1.
        Z-%.6f
        G1 X0. Z-%.6f F%.9f
        X2. Z-%.6f
        G0 Z1.
        M5
        M30
        """,
        DEPTH / 1000,
        down,
        along,
        depthUm / 1000,
        depthUm * 0.9 / 1000,
        ramp,
        depthUm / 1000);
  }

  @Test
  void eachClassOfMovesHasAWindowOfItsOwn() throws Exception {
    Setup sheet = sheet(SHEET);
    CuttingWindow window = window(sheet, classes(97, 211, 303, DEPTH));
    assertThat(window.classes())
        .extracting(CuttingWindow.OfClass::moves)
        .containsExactly(MoveClass.DOWN, MoveClass.LEVEL, MoveClass.CONTOUR);
    assertThat(window.classes())
        .extracting(CuttingWindow.OfClass::feedMmPerMin)
        .containsExactly(97.0, 211.0, 303.0);
    holds(sheet, window.classes().get(0).feed(), f -> classes(f, 211, 303, DEPTH), 1e-4);
    holds(sheet, window.classes().get(1).feed(), f -> classes(97, f, 303, DEPTH), 1e-4);
    holds(sheet, window.classes().get(2).feed(), f -> classes(97, 211, f, DEPTH), 1e-4);
    assertThat(window.classes().get(1).feed().all())
        .extracting(Limit::rule)
        .contains("chip-below-minimum", "feed-below-edge-radius", "flex-exceeds-wall");
    assertThat(window.classes().get(2).feed().all())
        .extracting(Limit::rule)
        .contains("chip-below-minimum", "chip-above-limit", "tool-overstressed");
  }

  /** In a full slot the width of the cut does not hang on its depth. */
  @Test
  void theDepthThatARampTakesHoldsInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET);
    CuttingWindow window = window(sheet, classes(97, 211, 303, DEPTH));
    CuttingWindow.OfClass ramps = window.classes().get(2);
    assertThat(ramps.takenUm().orElseThrow()).isCloseTo(DEPTH, within(0.01));
    assertThat(ramps.taken().orElseThrow().all())
        .extracting(Limit::rule)
        .contains("tool-overstressed");
    holds(sheet, ramps.taken().get(), um -> classes(97, 211, 303, um), 1e-2);
  }

  /** A slot at a level, and a ramp up and down beside it that takes a part of the tool's width. */
  private static String beside(double slotUm, double besideMm, double ramp, double depthUm) {
    return String.format(
        Locale.ROOT,
        """
        G21 G90 G17 G94 G54
        T3 M6
        S43210 M3
        G0 G43 H3 X-4. Y0. Z1.
        Z-%.9f
        G1 X4. F151.
        G0 Z1.
        X-4. Y%.9f
        Z-%.9f
        G1 X0. Z-%.9f F%.9f
        X4. Z-%.9f
        G0 Z1.
        M5
        M30
        """,
        slotUm / 1000,
        besideMm,
        depthUm / 1000,
        depthUm * 0.9 / 1000,
        ramp,
        depthUm / 1000);
  }

  /** The largest depth that moves with Z varying truly take, in µm. */
  private static double takenUm(Setup sheet, String program) throws IOException {
    CutsOfOperations cuts = new CutsOfOperations(sheet);
    ProgramCheck.of(Selection.ALL).check(text(program), sheet, cuts);
    return cuts.operations().get(0).deepestTakenPm / 1e6;
  }

  /**
   * Puts depths taken beside a slot to the check: silent just inside, speaking just outside. The
   * program's depth is corrected until the depth truly taken, in material that is partly gone, is
   * the one asked for.
   */
  private static void takenHolds(Setup sheet, Limits limits, With with, double nearness)
      throws IOException {
    assertThat(limits.all()).hasSize(2);
    for (Limit limit : limits.all()) {
      for (boolean inside : new boolean[] {true, false}) {
        double um = limit.likely() * (limit.lower() == inside ? 1 + nearness : 1 - nearness);
        double written = um;
        for (int k = 0; k < 3; k++) {
          written *= um / takenUm(sheet, with.value(written));
        }
        String program = with.value(written);
        assertThat(takenUm(sheet, program)).isCloseTo(um, within(um * nearness / 4));
        assertThat(findings(sheet, limit.rule(), program).stream().filter(f -> f.at().line() > 6))
            .as("%s %s", inside ? "just inside" : "just outside", limit)
            .hasSize(inside ? 0 : 1);
      }
    }
  }

  /** Beside a slot too the width that a flat tool cuts does not hang on the depth. */
  @Test
  void theDepthThatARampBesideASlotTakesHoldsInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET.replace("resolution: 0.001 um", "resolution: 0.000001 um"));
    With program = um -> beside(300, 0.13, 303, um);
    CuttingWindow.OfClass ramps = window(sheet, program.value(DEPTH)).classes().get(1);
    assertThat(ramps.moves()).isEqualTo(MoveClass.CONTOUR);
    takenHolds(sheet, ramps.taken().orElseThrow(), program, 1e-2);
  }

  private static final String BALL =
      SHEET
          .replace("shape: flat", "shape: ball")
          .replace("diameter: 0.41 mm", "diameter: 0.6 mm")
          .replace("{diameter: 0.37 mm, length: 1.9 mm}", "{diameter: 0.5 mm, length: 6 mm}");

  /** A ball's contact grows with the depth; in a full slot it stays half a turn. */
  @Test
  void theDepthThatABallTakesInASlotHoldsInTheCheck() throws Exception {
    Setup sheet = sheet(BALL);
    CuttingWindow window = window(sheet, classes(97, 211, 303, DEPTH));
    CuttingWindow.OfClass ramps = window.classes().get(2);
    holds(sheet, ramps.taken().orElseThrow(), um -> classes(97, 211, 303, um), 1e-2);
  }

  /** Beside a slot its arc changes with the depth: the bound is true to a few hundredths. */
  @Test
  void theDepthThatABallTakesBesideASlotHoldsNearlyInTheCheck() throws Exception {
    Setup sheet = sheet(BALL);
    With program = um -> beside(DEPTH, 0.12, 303, um);
    CuttingWindow.OfClass ramps = window(sheet, program.value(DEPTH)).classes().get(1);
    takenHolds(sheet, ramps.taken().orElseThrow(), program, 4e-2);
  }

  @Test
  void speedsHoldInTheCheck() throws Exception {
    Setup sheet = sheet(SHEET);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    holds(sheet, window.speed(), rpm -> program(FEED * rpm / RPM, DEPTH, rpm), 1e-5);
    // By hand: 31 m/min over π × 0.41 mm.
    assertThat(window.speed().lower().orElseThrow().likely())
        .isCloseTo(31_000 / (Math.PI * 0.41), within(0.01));
  }

  @Test
  void theCureOfAFindingIsTheBoundOfTheWindow() throws Exception {
    Setup sheet = sheet(SHEET);
    String slow = program(11, DEPTH, RPM);
    CuttingWindow window = window(sheet, slow);
    for (String rule : List.of("chip-below-minimum", "feed-below-edge-radius")) {
      double enough =
          findings(sheet, rule, slow).get(0).worst().figures().stream()
              .filter(figure -> figure.name().equals("feedThatWouldDo"))
              .findFirst()
              .orElseThrow()
              .value();
      Limit limit =
          window.feed().all().stream().filter(l -> l.rule().equals(rule)).findFirst().orElseThrow();
      assertThat(enough).isEqualTo(Math.ceil(limit.likely() - 1e-6));
    }
  }

  /**
   * Every figure of feed, depth or speed that a cure names is a bound of the window: what is
   * rounded is so to the safe side, by less than its last digit.
   */
  @Test
  void everyFigureOfFeedDepthAndSpeedIsABoundOfTheWindow() throws Exception {
    Setup sheet = sheet(SHEET);
    double perTooth = RPM * 2 / 1000;
    cures(sheet, "chip-above-limit", "F([0-9.]+) or less", program(5000, DEPTH, RPM), 1, 1);
    cures(sheet, "chip-below-minimum", "F([0-9.]+) or more", program(11, DEPTH, RPM), 1, 1);
    cures(sheet, "feed-below-edge-radius", "F([0-9.]+) or more", program(11, DEPTH, RPM), 1, 1);
    cures(
        sheet,
        "runout-exceeds-feed",
        "per tooth above ([0-9.]+) µm",
        program(11, DEPTH, RPM),
        perTooth,
        1e-3 * perTooth);
    cures(sheet, "depth-below-minimum", "above ([0-9.]+) µm", program(FEED, 0.3, RPM), 1, 1e-3);
    cures(
        sheet,
        "depth-beyond-cutting-length",
        "passes of ([0-9.]+) mm",
        program(FEED, 700, RPM),
        1000,
        1e-2);
    cures(sheet, "surface-speed-off", "S([0-9.]+) or more", program(FEED, DEPTH, 9_000), 1, 1);
    cures(sheet, "surface-speed-off", "S([0-9.]+) or less", program(FEED, DEPTH, 59_000), 1, 1);
    cures(sheet, "speed-out-of-range", "S([0-9.]+)", program(FEED, DEPTH, 70_000), 1, 1e-9);
  }

  private static void cures(
      Setup sheet, String rule, String pattern, String program, double unit, double nearness)
      throws IOException {
    String cure = findings(sheet, rule, program).get(0).worst().cure().orElseThrow();
    Matcher figure = Pattern.compile(pattern).matcher(cure);
    assertThat(figure.find()).as(cure).isTrue();
    double value = Double.parseDouble(figure.group(1)) * unit;
    CuttingWindow window = window(sheet, program);
    assertThat(
            Stream.of(window.feed(), window.depth().orElseThrow(), window.speed())
                .flatMap(limits -> limits.all().stream())
                .filter(limit -> limit.rule().equals(rule)))
        .as("%s: %s", rule, cure)
        .anySatisfy(limit -> assertThat(value).isCloseTo(limit.likely(), within(nearness)));
  }

  @Test
  void aClosedWindowOpensByEachChangeItNames() throws Exception {
    // A blunt tool and a low limit: what makes a chip is more than the tool bears.
    String text =
        SHEET
            .replace("[1.1 um, 1.7 um, 2.3 um]", "5.3 um")
            .replace("max_feed_per_tooth: 11.3 um", "max_feed_per_tooth: 3.1 um");
    Setup sheet = sheet(text);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    assertThat(window.feed().closed()).isTrue();
    assertThat(window.feed().lower().orElseThrow().rule()).isEqualTo("feed-below-edge-radius");
    assertThat(window.feed().upper().orElseThrow().rule()).isEqualTo("chip-above-limit");
    assertThat(window.remedies()).extracting(Remedy::what).contains("tools.3.edge_radius");
    for (Remedy remedy : window.remedies()) {
      Setup changed = sheet.withOverride(remedy.what(), plain(remedy.to(), remedy));
      CuttingWindow opened = window(changed, program(FEED, DEPTH, RPM));
      assertThat(opened.feed().closed()).as("%s", remedy).isFalse();
      Setup less =
          sheet.withOverride(
              remedy.what(), plain(remedy.to() + (remedy.from() - remedy.to()) * 0.01, remedy));
      assertThat(window(less, program(FEED, DEPTH, RPM)).feed().closed()).as("%s", remedy).isTrue();
    }
    // By hand: the edge radius must come down to the largest feed per tooth.
    assertThat(
            window.remedies().stream()
                .filter(r -> r.what().equals("tools.3.edge_radius"))
                .findFirst()
                .orElseThrow()
                .to())
        .isCloseTo(3.1, within(0.001));
  }

  @Test
  void aShorterNeckOpensWhatFlexCloses() throws Exception {
    String text = SHEET.replace("wall_tolerance: ±47 um", "wall_tolerance: ±9 um");
    Setup sheet = sheet(text);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    assertThat(window.feed().closed()).isTrue();
    assertThat(window.feed().upper().orElseThrow().rule()).isEqualTo("flex-exceeds-wall");
    Optional<Remedy> neck =
        window.remedies().stream().filter(r -> r.what().equals("tools.3.neck.length")).findFirst();
    assertThat(neck).isPresent();
    Setup shorter = sheet.withOverride(neck.get().what(), plain(neck.get().to(), neck.get()));
    assertThat(window(shorter, program(FEED, DEPTH, RPM)).feed().closed()).isFalse();
  }

  @Test
  void blocksThatAreTooShortLimitTheFeed() throws Exception {
    Setup sheet = sheet(SHEET);
    With shortBlocks =
        feed -> {
          StringBuilder text = new StringBuilder("G21 G90 G17 G94 G54\nT3 M6\nS43210 M3\n");
          text.append("G0 G43 H3 X-2. Y0. Z1.\nZ-0.0117\n");
          text.append(String.format(Locale.ROOT, "G1 X-1.99 F%.9f%n", feed));
          for (int k = 1; k < 200; k++) {
            text.append(String.format(Locale.ROOT, "X%.4f\n", -1.99 + k * 0.0037));
          }
          return text.append("G0 Z1.\nM5\nM30\n").toString();
        };
    CuttingWindow window = window(sheet, shortBlocks.value(FEED));
    List<Limit> starve =
        window.feed().all().stream().filter(l -> l.rule().equals("blocks-starve")).toList();
    assertThat(starve).hasSize(1);
    holds(sheet, new Limits(starve), shortBlocks, 1e-4);
    // By hand: 199 blocks of 3.7 µm, 20 of them ready ahead, 0.4 ms for each of the others.
    double held = 199 * 0.0037 / (179 * 0.4) * 60_000;
    assertThat(starve.get(0).likely()).isCloseTo(held, within(0.001));
    assertThat(findings(sheet, "blocks-starve", shortBlocks.value(2000)).get(0).worst().cure())
        .contains("longer blocks, or a feed of " + (int) held + " mm/min");
    // The planner says so too, of all feed moves of the program, which are all in contact.
    double limit = only(window.feed(), WindowSolver.ACCELERATION).all().get(0).likely();
    assertThat(shareBelowFeed(sheet, shortBlocks.value(limit * 0.999))).isLessThanOrEqualTo(0.5);
    assertThat(shareBelowFeed(sheet, shortBlocks.value(limit * 1.001))).isGreaterThan(0.5);
  }

  /** The part of the feed moves' length on which the machine stays below the commanded feed. */
  private static double shareBelowFeed(Setup sheet, String program) throws IOException {
    ProgramTime time = new ProgramTime();
    PlannedFeed feed = new PlannedFeed();
    Summarizer summary = new Summarizer(time, feed);
    TimeTable table = TimeTable.of(sheet);
    new Interpreter(SheetControl.of(sheet), ProgramFiles.alone(text(program), event -> {}))
        .run(
            new FeedPlanner(
                MotionLimits.of(sheet),
                table.waitsForSpindle(),
                feed,
                new Timeline(table, feed, time, summary)),
            false);
    return summary.summary().plan().orElseThrow().shareBelowFeed();
  }

  @Test
  void twoFeedsThatCloseAWindowTogetherOpenItAsOne() throws Exception {
    Setup sheet = sheet(SHEET);
    String two = program(FEED, DEPTH, RPM).replaceFirst("G1 X4.\\n", "G1 X4. F9.\n");
    CuttingWindow window = window(sheet, two);
    assertThat(window.feed().closed()).isTrue();
    Remedy one =
        window.remedies().stream().filter(r -> r.what().startsWith("one feed")).findFirst().get();
    String cured = two.replaceAll("F[0-9.]+", String.format(Locale.ROOT, "F%.6f", one.to()));
    CuttingWindow opened = window(sheet, cured);
    assertThat(opened.feed().closed()).isFalse();
    assertThat(opened.feed().hold(one.to())).isTrue();
  }

  @Test
  void aClosedDepthOpensByEachChangeItNames() throws Exception {
    // A blunt edge wants more depth than the wall bears.
    String text =
        SHEET
            .replace("[1.1 um, 1.7 um, 2.3 um]", "9.3 um")
            .replace("wall_tolerance: ±47 um", "wall_tolerance: ±6 um");
    Setup sheet = sheet(text);
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    assertThat(window.depth().orElseThrow().closed()).isTrue();
    List<Remedy> remedies =
        window.remedies().stream().filter(r -> r.opens().equals("depth")).toList();
    assertThat(remedies)
        .extracting(Remedy::what)
        .contains("tools.3.edge_radius", "tools.3.neck.length");
    for (Remedy remedy : remedies) {
      CuttingWindow opened =
          remedy.unit().equals("times")
              ? window(sheet, program(FEED * remedy.to(), DEPTH, RPM))
              : window(
                  sheet.withOverride(remedy.what(), plain(remedy.to(), remedy)),
                  program(FEED, DEPTH, RPM));
      assertThat(opened.depth().orElseThrow().closed()).as("%s", remedy).isFalse();
    }
  }

  /** A value as the sheet takes it: no digit below a picometre. */
  @Test
  void aClosedSpeedOpensByEachChangeItNames() throws Exception {
    // v = π d n: 81 m/min on 0.41 mm is more than 60000 rpm, 1.3 m/min less than 4000 rpm.
    assertSpeedRemedies(
        "surface_speed: [81 m/min, 99 m/min]",
        Map.of(
            "machine.spindle.max_speed", 81_000 / (Math.PI * 0.41),
            "tools.3.diameter", 81_000 / (Math.PI * 60_000),
            "tools.3.surface_speed", Math.PI * 0.41 * 60));
    assertSpeedRemedies(
        "surface_speed: [1.1 m/min, 5.1 m/min]",
        Map.of(
            "machine.spindle.min_speed",
            5_100 / (Math.PI * 0.41),
            "tools.3.surface_speed",
            Math.PI * 0.41 * 4));
  }

  private static void assertSpeedRemedies(String range, Map<String, Double> byHand)
      throws Exception {
    Setup sheet = sheet(SHEET.replace("surface_speed: [31 m/min, 67.3 m/min]", range));
    CuttingWindow window = window(sheet, program(FEED, DEPTH, RPM));
    assertThat(window.speed().closed()).isTrue();
    List<Remedy> remedies =
        window.remedies().stream().filter(r -> r.opens().equals("speed")).toList();
    assertThat(remedies).extracting(Remedy::what).containsAll(byHand.keySet());
    assertThat(remedies).isSortedAccordingTo(Comparator.comparingDouble(Remedy::ratio));
    for (Remedy remedy : remedies) {
      if (byHand.containsKey(remedy.what())) {
        double wanted = byHand.get(remedy.what());
        assertThat(remedy.to()).as("%s", remedy).isCloseTo(wanted, within(1e-4 * wanted));
      }
    }
  }

  private static String plain(double value, Remedy remedy) {
    return new BigDecimal(value)
            .setScale(remedy.unit().equals("mm") ? 9 : 6, RoundingMode.FLOOR)
            .toPlainString()
        + " "
        + remedy.unit();
  }
}
