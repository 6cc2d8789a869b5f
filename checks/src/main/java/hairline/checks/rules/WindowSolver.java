package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.finding.Accepts;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Finding;
import hairline.checks.motion.Event;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.rules.CuttingWindow.Curve;
import hairline.checks.rules.CuttingWindow.Limit;
import hairline.checks.rules.CuttingWindow.Limits;
import hairline.checks.rules.CuttingWindow.MoveClass;
import hairline.checks.rules.CuttingWindow.OfClass;
import hairline.checks.rules.CuttingWindow.Point;
import hairline.checks.rules.CuttingWindow.Remedy;
import hairline.checks.rules.CuttingWindow.Span;
import hairline.checks.setup.Key;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SpindleKeys;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import hairline.checks.stock.Removal;
import hairline.checks.stock.StepDown;
import hairline.checks.stock.StepFound;
import hairline.checks.timing.FeedPlanner;
import hairline.checks.timing.MotionLimits;
import hairline.checks.timing.PlannedFeed;
import hairline.checks.timing.TimeTable;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;

/**
 * Finds how far feed, depth and speed of each operation may move, by asking the rules themselves
 * again about changed cuts, and halving the interval between where they speak and where they are
 * silent. No formula stands here a second time.
 */
public final class WindowSolver {
  /** What the machine can't reach is told by its own name: no rule speaks of it alone. */
  public static final String ACCELERATION = "acceleration";

  private static final List<String> FEED_LOWER =
      List.of("chip-below-minimum", "feed-below-edge-radius", "runout-exceeds-feed");
  private static final List<String> FEED_UPPER =
      List.of(
          "chip-above-limit",
          "tool-overstressed",
          "flex-exceeds-wall",
          "flex-exceeds-step",
          "blocks-starve");
  private static final List<String> DEPTH_LOWER =
      List.of("depth-below-minimum", "depth-below-edge-radius", "chip-below-minimum");
  private static final List<String> DEPTH_UPPER =
      List.of(
          "depth-beyond-cutting-length",
          "tool-overstressed",
          "flex-exceeds-wall",
          "flex-exceeds-step");

  /** Rules that look at moves one after the other, with their lengths. */
  private static final Set<String> BY_TIME = Set.of("blocks-starve");

  private static final List<String> TAKEN_LOWER = List.of("chip-below-minimum");
  private static final List<String> TAKEN_UPPER = List.of("tool-overstressed", "flex-exceeds-wall");

  private static final String FEED = "feed";
  private static final String DEPTH = "depth";
  private static final String SPEED = "speed";

  private static final int CLASS_HALVINGS = 28;
  private static final double LEAST_FACTOR = 1e-4;
  private static final double MOST_FACTOR = 1e4;
  private static final int HALVINGS = 36;
  private static final int ROUGH_HALVINGS = 20;
  private static final int DEPTHS_DRAWN = 13;
  private static final double DRAWN_AROUND = 6;
  private static final double PM_PER_UM = 1e6;
  private static final double DEPTH_STEP = 1.15;
  private static final double JUST_BEYOND = 1.001;
  private static final int SPEEDS_TRIED = 100;
  private static final double SPEED_STEP = 1.05;
  private static final double LEAST_DEPTH_UM = 0.001;
  private static final double MOST_DEPTH_UM = 1e6;

  /** How far a rule goes. */
  private enum Speaks {
    NOT,
    /** A level below its own: the typical value of a band fails. */
    LIKELY,
    /** At its own level. */
    CERTAIN
  }

  /**
   * What is otherwise than programmed.
   *
   * @param feed factor of all feeds
   * @param depthUm depth of all passes at a level
   * @param speed factor of the speed
   * @param step factor of the heights of steps
   * @param sheet the sheet
   * @param only the one class of moves that is asked about and changed; empty for all
   * @param taken factor of the depths taken where Z varies
   * @param oneFeed one feed in mm/min for all moves but rapids and those straight down; empty for
   *     theirs
   */
  private record Changed(
      double feed,
      OptionalDouble depthUm,
      double speed,
      double step,
      Setup sheet,
      Optional<MoveClass> only,
      double taken,
      OptionalDouble oneFeed) {

    Changed withFeed(double factor) {
      return new Changed(factor, depthUm, speed, step, sheet, only, taken, oneFeed);
    }

    Changed withDepthUm(double um) {
      return new Changed(feed, OptionalDouble.of(um), speed, step, sheet, only, taken, oneFeed);
    }

    Changed withSpeed(double factor) {
      return new Changed(feed, depthUm, factor, step, sheet, only, taken, oneFeed);
    }

    Changed withStep(double factor) {
      return new Changed(feed, depthUm, speed, factor, sheet, only, taken, oneFeed);
    }

    Changed withSheet(Setup other) {
      return new Changed(feed, depthUm, speed, step, other, only, taken, oneFeed);
    }

    Changed onlyOf(MoveClass moves) {
      return new Changed(feed, depthUm, speed, step, sheet, Optional.of(moves), taken, oneFeed);
    }

    Changed withTaken(double factor) {
      return new Changed(feed, depthUm, speed, step, sheet, only, factor, oneFeed);
    }

    Changed atOneFeed(double mmPerMin) {
      return new Changed(
          feed, depthUm, speed, step, sheet, only, taken, OptionalDouble.of(mmPerMin));
    }

    /** Whether a move is of the class that is changed. */
    boolean concerns(Move move) {
      return only.isEmpty() || only.get() == MoveClass.of(move);
    }
  }

  private final CutsOfOperations kept;
  private final boolean withCurves;

  private WindowSolver(CutsOfOperations kept, boolean withCurves) {
    this.kept = kept;
    this.withCurves = withCurves;
  }

  /**
   * The windows of a program's operations.
   *
   * @param kept what it cuts
   * @param withCurves whether feed limits at other depths are found too
   */
  public static List<CuttingWindow> solve(CutsOfOperations kept, boolean withCurves) {
    WindowSolver solver = new WindowSolver(kept, withCurves);
    List<CuttingWindow> windows = new ArrayList<>();
    for (CutsOfOperations.Kept operation : kept.operations()) {
      solver.window(operation).ifPresent(windows::add);
    }
    return windows;
  }

  private Optional<CuttingWindow> window(CutsOfOperations.Kept operation) {
    Cut first = operation.first.orElseThrow();
    Optional<Double> rpm = first.move().modes().turningRpm().filter(r -> r > 0);
    if (first.tool().isEmpty() || rpm.isEmpty()) {
      return Optional.empty();
    }
    Tool tool = first.tool().get();
    double feed = mostOf(operation.mmByFeed);
    Set<String> notKnown = new LinkedHashSet<>();
    if (operation.cutsFull || operation.movesFull) {
      notKnown.add(
          "what comes behind the first "
              + CutsOfOperations.MOST_CUTS
              + " cuts of different kinds, or "
              + CutsOfOperations.MOST_MOVES
              + " moves, of this operation");
    }
    Changed asIs =
        new Changed(
            1,
            OptionalDouble.empty(),
            1,
            1,
            kept.setup(),
            Optional.empty(),
            1,
            OptionalDouble.empty());
    for (String rule : Stream.concat(FEED_LOWER.stream(), FEED_UPPER.stream()).toList()) {
      why(operation, rule, asIs).ifPresent(notKnown::add);
    }
    Limits feeds = feeds(operation, asIs, feed, HALVINGS);
    Optional<Span> depths = depths(operation);
    boolean levels = depths.isPresent() && atLevels(operation);
    Optional<Limits> depth = levels ? Optional.of(depth(operation, asIs)) : Optional.empty();
    Limits speeds = speed(operation, asIs, rpm.get());
    List<Remedy> remedies =
        new ArrayList<>(remedies(operation, asIs, tool, feeds, depth, rpm.get()));
    remedies.addAll(speedRemedies(operation, asIs, tool, speeds, rpm.get()));
    return Optional.of(
        new CuttingWindow(
            operation.number,
            first.at(),
            tool.number(),
            rpm.get(),
            tool.get(ToolKeys.FLUTES).orElse(1),
            feed,
            depths,
            feeds,
            classes(operation, asIs, feeds),
            depth,
            speeds,
            remedies,
            withCurves && levels ? curves(operation, asIs, feed, depths.get()) : List.of(),
            List.copyOf(notKnown)));
  }

  /** Whether most of what is cut is cut at levels; else a depth for all passes means nothing. */
  private static boolean atLevels(CutsOfOperations.Kept operation) {
    return operation.mmAtLevels > operation.mmCut / 2;
  }

  private static Optional<Span> depths(CutsOfOperations.Kept operation) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = 0;
    for (Event event : operation.cuts) {
      if (event instanceof Cut cut
          && cut.inContact()
          && cut.runsAtLevel()
          && !cut.spring()
          && cut.stepDownPm().isPresent()
          && cut.stepDownPm().getAsLong() > 0) {
        double um = cut.stepDownPm().getAsLong() / PM_PER_UM;
        lowest = Math.min(lowest, um);
        highest = Math.max(highest, um);
      }
    }
    return highest > 0 ? Optional.of(new Span(lowest, highest)) : Optional.empty();
  }

  // Limits.

  private Limits feeds(
      CutsOfOperations.Kept operation, Changed changed, double feed, int halvings) {
    List<Limit> limits =
        limits(operation, FEED_LOWER, FEED_UPPER, changed::withFeed, feed, halvings);
    acceleration(operation, changed, feed).ifPresent(limits::add);
    return new Limits(limits);
  }

  /** The windows of the classes of moves; the only one there is has that of the operation. */
  private List<OfClass> classes(CutsOfOperations.Kept operation, Changed asIs, Limits all) {
    List<OfClass> classes = new ArrayList<>();
    operation.mmByClass.forEach(
        (moves, mmByFeed) -> {
          double feed = mostOf(mmByFeed);
          TreeSet<Double> feeds = new TreeSet<>(mmByFeed.keySet());
          Changed only = asIs.onlyOf(moves);
          boolean alone = operation.mmByClass.size() == 1;
          double deepestUm = operation.deepestTakenPm / PM_PER_UM;
          boolean taken = moves == MoveClass.CONTOUR && deepestUm > 0;
          classes.add(
              new OfClass(
                  moves,
                  feed,
                  new Span(feeds.first(), feeds.last()),
                  alone ? all : feeds(operation, only, feed, CLASS_HALVINGS),
                  taken ? OptionalDouble.of(deepestUm) : OptionalDouble.empty(),
                  taken ? Optional.of(taken(operation, only, deepestUm)) : Optional.empty()));
        });
    return classes;
  }

  /** The limits of the depth taken where Z varies, in µm of the deepest. */
  private Limits taken(CutsOfOperations.Kept operation, Changed only, double deepestUm) {
    return new Limits(
        limits(operation, TAKEN_LOWER, TAKEN_UPPER, only::withTaken, deepestUm, CLASS_HALVINGS));
  }

  /** The limits that some rules set to a factor, the lower ones first. */
  private List<Limit> limits(
      CutsOfOperations.Kept operation,
      List<String> lower,
      List<String> upper,
      DoubleFunction<Changed> at,
      double unit,
      int halvings) {
    List<Limit> limits = new ArrayList<>();
    for (String rule : lower) {
      limit(operation, rule, true, at, LEAST_FACTOR, MOST_FACTOR, unit, halvings)
          .ifPresent(limits::add);
    }
    for (String rule : upper) {
      limit(operation, rule, false, at, LEAST_FACTOR, MOST_FACTOR, unit, halvings)
          .ifPresent(limits::add);
    }
    return limits;
  }

  private Limits depth(CutsOfOperations.Kept operation, Changed changed) {
    DoubleFunction<Changed> at = changed::withDepthUm;
    List<Limit> limits = new ArrayList<>();
    for (String rule : DEPTH_LOWER) {
      depthLimit(operation, rule, true, at).ifPresent(limits::add);
    }
    for (String rule : DEPTH_UPPER) {
      depthLimit(operation, rule, false, at).ifPresent(limits::add);
    }
    return new Limits(limits);
  }

  private Optional<Limit> depthLimit(
      CutsOfOperations.Kept operation, String rule, boolean lower, DoubleFunction<Changed> at) {
    Optional<Double> likely = depthEdge(operation, rule, lower, at, Speaks.LIKELY);
    return likely.map(
        um ->
            new Limit(
                rule,
                lower,
                um,
                depthEdge(operation, rule, lower, at, Speaks.CERTAIN)
                    .orElse(lower ? 0 : Double.POSITIVE_INFINITY)));
  }

  /**
   * The depth from which on a rule speaks that loudly, walking from where it does not: a pass that
   * is deeper than a fine cut may be is asked less, so that a rule can fall silent again farther
   * out.
   */
  private Optional<Double> depthEdge(
      CutsOfOperations.Kept operation,
      String rule,
      boolean lower,
      DoubleFunction<Changed> at,
      Speaks loudness) {
    double step = lower ? 1 / DEPTH_STEP : DEPTH_STEP;
    double quiet = Double.NaN;
    for (double um = lower ? MOST_DEPTH_UM : LEAST_DEPTH_UM;
        um >= LEAST_DEPTH_UM && um <= MOST_DEPTH_UM;
        um *= step) {
      if (speaks(operation, rule, at.apply(um)).compareTo(loudness) < 0) {
        quiet = um;
      } else if (!Double.isNaN(quiet)) {
        double loud = um;
        for (int k = 0; k < HALVINGS; k++) {
          double middle = Math.sqrt(quiet * loud);
          if (speaks(operation, rule, at.apply(middle)).compareTo(loudness) >= 0) {
            loud = middle;
          } else {
            quiet = middle;
          }
        }
        return Optional.of(quiet);
      }
    }
    return Optional.empty();
  }

  private Limits speed(CutsOfOperations.Kept operation, Changed changed, double rpm) {
    DoubleFunction<Changed> at = factor -> changed.withFeed(factor).withSpeed(factor);
    List<Limit> limits = new ArrayList<>();
    // The rule speaks below and above: the edges lie around a speed at which it is silent.
    Optional<Double> silent = silent(operation, "surface-speed-off", at);
    if (silent.isPresent()) {
      limit(operation, "surface-speed-off", true, at, LEAST_FACTOR, silent.get(), rpm, HALVINGS)
          .ifPresent(limits::add);
      limit(operation, "surface-speed-off", false, at, silent.get(), MOST_FACTOR, rpm, HALVINGS)
          .ifPresent(limits::add);
    }
    changed
        .sheet()
        .get(SpindleKeys.MIN_SPEED_RPM)
        .ifPresent(least -> limits.add(new Limit("speed-out-of-range", true, least, least)));
    changed
        .sheet()
        .get(SpindleKeys.MAX_SPEED_RPM)
        .ifPresent(most -> limits.add(new Limit("speed-out-of-range", false, most, most)));
    return new Limits(limits);
  }

  /** A factor at which a rule is silent, the nearest to one of those tried. */
  private Optional<Double> silent(
      CutsOfOperations.Kept operation, String rule, DoubleFunction<Changed> at) {
    for (int k = 0; k <= SPEEDS_TRIED; k++) {
      for (double factor :
          new double[] {StrictMath.pow(SPEED_STEP, k), StrictMath.pow(SPEED_STEP, -k)}) {
        if (speaks(operation, rule, at.apply(factor)) == Speaks.NOT) {
          return Optional.of(factor);
        }
      }
    }
    return Optional.empty();
  }

  /**
   * A limit by a rule; empty where it never speaks on that side.
   *
   * @param at the change at a value
   * @param unit what a value of 1 is
   */
  private Optional<Limit> limit(
      CutsOfOperations.Kept operation,
      String rule,
      boolean lower,
      DoubleFunction<Changed> at,
      double least,
      double most,
      double unit,
      int halvings) {
    if (speaks(operation, rule, at.apply(lower ? least : most)) == Speaks.NOT) {
      return Optional.empty();
    }
    // Blocks of another class that are too short by themselves set this one no limit.
    if (BY_TIME.contains(rule)
        && at.apply(1).only().isPresent()
        && speaks(operation, rule, at.apply(lower ? most : least)) != Speaks.NOT) {
      return Optional.empty();
    }
    double likely = edge(operation, rule, lower, at, least, most, Speaks.LIKELY, halvings);
    // Exact figures have no band: just beyond, the rule is sure at once.
    double beyond = lower ? likely / JUST_BEYOND : likely * JUST_BEYOND;
    double certain =
        speaks(operation, rule, at.apply(beyond)) == Speaks.CERTAIN
            ? likely
            : edge(operation, rule, lower, at, least, most, Speaks.CERTAIN, halvings);
    return Optional.of(new Limit(rule, lower, likely * unit, certain * unit));
  }

  /** Where a rule begins to speak that loudly, on the side where it does not. */
  private double edge(
      CutsOfOperations.Kept operation,
      String rule,
      boolean lower,
      DoubleFunction<Changed> at,
      double least,
      double most,
      Speaks loudness,
      int halvings) {
    double quiet = lower ? most : least;
    double loud = lower ? least : most;
    if (speaks(operation, rule, at.apply(loud)).compareTo(loudness) < 0) {
      return loud;
    }
    if (speaks(operation, rule, at.apply(quiet)).compareTo(loudness) >= 0) {
      return quiet;
    }
    // Halved by ratios: limits lie orders of magnitude apart.
    for (int k = 0; k < halvings; k++) {
      double middle = Math.sqrt(quiet * loud);
      if (speaks(operation, rule, at.apply(middle)).compareTo(loudness) >= 0) {
        loud = middle;
      } else {
        quiet = middle;
      }
    }
    return quiet;
  }

  /**
   * The feed from which on the machine stays below it on more than half of the length that is cut,
   * as planned.
   */
  private Optional<Limit> acceleration(
      CutsOfOperations.Kept operation, Changed changed, double feed) {
    if (!MotionLimits.of(changed.sheet()).enoughToPlan()) {
      return Optional.empty();
    }
    double quiet = LEAST_FACTOR;
    double loud = MOST_FACTOR;
    if (shareBelow(operation, changed, quiet) > 0.5
        || shareBelow(operation, changed, loud) <= 0.5) {
      return Optional.empty();
    }
    for (int k = 0; k < ROUGH_HALVINGS; k++) {
      double middle = Math.sqrt(quiet * loud);
      if (shareBelow(operation, changed, middle) > 0.5) {
        loud = middle;
      } else {
        quiet = middle;
      }
    }
    return Optional.of(new Limit(ACCELERATION, false, quiet * feed, quiet * feed));
  }

  private static double shareBelow(
      CutsOfOperations.Kept operation, Changed changed, double factor) {
    double[] mm = new double[2];
    PlannedFeed planned = new PlannedFeed();
    FeedPlanner planner =
        new FeedPlanner(
            MotionLimits.of(changed.sheet()),
            TimeTable.of(changed.sheet()).waitsForSpindle(),
            planned,
            event -> {
              Optional<Move> move =
                  event instanceof Cut cut && cut.inContact()
                      ? Optional.of(cut.move())
                      : Optional.empty();
              if (move.isPresent()
                  && move.get().isFeed()
                  && changed.concerns(move.get())
                  && planned.ofThisMove().isPresent()) {
                double commanded = move.get().feedMmPerMin().orElse(0);
                mm[0] += move.get().lengthMm();
                mm[1] +=
                    move.get().lengthMm()
                        * planned.ofThisMove().get().shareBelow(commanded * (1 - 1e-6));
              }
            });
    Changed other = changed.withFeed(factor);
    for (Event event : operation.moves) {
      planner.accept(changed(event, other));
    }
    Cut first = operation.first.orElseThrow();
    planner.accept(new Event.Ended(first.at(), Optional.empty(), first.move().modes()));
    return mm[0] > 0 ? mm[1] / mm[0] : 0;
  }

  // Remedies.

  /** Tells whether a change opens what is closed. */
  private interface Opens {
    boolean test(Changed changed);
  }

  private List<Remedy> remedies(
      CutsOfOperations.Kept operation,
      Changed asIs,
      Tool tool,
      Limits feeds,
      Optional<Limits> depths,
      double rpm) {
    List<Remedy> remedies = new ArrayList<>();
    if (feeds.closed()) {
      Opens opens = changed -> !feeds(operation, changed, 1, ROUGH_HALVINGS).closed();
      remedies.addAll(remedies(FEED, asIs, tool, feeds, rpm, opens));
      oneFeed(operation, asIs).ifPresent(remedies::add);
    }
    if (depths.filter(Limits::closed).isPresent()) {
      Opens opens = changed -> !depth(operation, changed).closed();
      remedies.addAll(remedies(DEPTH, asIs, tool, depths.get(), rpm, opens));
      opened(factor -> Optional.of(asIs.withFeed(factor)), 1, 0.01, opens)
          .ifPresent(factor -> remedies.add(new Remedy(DEPTH, "all feeds", 1, factor, "times")));
    }
    return remedies;
  }

  private List<Remedy> remedies(
      String what, Changed asIs, Tool tool, Limits closed, double rpm, Opens opens) {
    List<Remedy> remedies = new ArrayList<>();
    shrink(what, asIs, tool, ToolKeys.EDGE_RADIUS, LengthBand::um, "µm", opens)
        .ifPresent(remedies::add);
    shrink(what, asIs, tool, ToolKeys.RUNOUT, LengthBand::um, "µm", opens).ifPresent(remedies::add);
    shrink(what, asIs, tool, ToolKeys.NECK_LENGTH, length -> Band.ofExact(length.mm()), "mm", opens)
        .ifPresent(remedies::add);
    String upper = closed.upper().orElseThrow().rule();
    if (upper.equals("flex-exceeds-step")) {
      opened(factor -> Optional.of(asIs.withStep(factor)), 1, 100, opens)
          .ifPresent(
              factor -> remedies.add(new Remedy(what, "height of the steps", 1, factor, "times")));
    }
    if (upper.equals("blocks-starve") || upper.equals(ACCELERATION)) {
      // At the same feed per tooth a slower spindle asks for a slower feed.
      opened(factor -> Optional.of(asIs.withSpeed(factor)), 1, 0.01, opens)
          .ifPresent(factor -> remedies.add(new Remedy(what, "speed", rpm, rpm * factor, "rpm")));
    }
    remedies.sort(Comparator.comparingDouble(Remedy::ratio));
    return remedies;
  }

  /** What brings the speeds of the spindle and those that suit the tool together. */
  private List<Remedy> speedRemedies(
      CutsOfOperations.Kept operation, Changed asIs, Tool tool, Limits closed, double rpm) {
    if (!closed.closed()) {
      return List.of();
    }
    Opens opens = changed -> !speed(operation, changed, rpm).closed();
    boolean tooSlow = closed.upper().orElseThrow().rule().equals("speed-out-of-range");
    List<Remedy> remedies = new ArrayList<>();
    Key<Double> end = tooSlow ? SpindleKeys.MAX_SPEED_RPM : SpindleKeys.MIN_SPEED_RPM;
    asIs.sheet()
        .get(end)
        .flatMap(
            value ->
                moved(
                    asIs, end.path(), value, "rpm", v -> number(v, "rpm") + " rpm", tooSlow, opens))
        .ifPresent(remedies::add);
    tool.get(ToolKeys.DIAMETER)
        .flatMap(
            value ->
                moved(
                    asIs,
                    tool.path(ToolKeys.DIAMETER),
                    value.mm(),
                    "mm",
                    v -> number(v, "mm") + " mm",
                    tooSlow,
                    opens))
        .ifPresent(remedies::add);
    tool.get(ToolKeys.SURFACE_SPEED_M_PER_MIN)
        .flatMap(
            range ->
                moved(
                    asIs,
                    tool.path(ToolKeys.SURFACE_SPEED_M_PER_MIN),
                    tooSlow ? range.lo() : range.hi(),
                    "m/min",
                    v ->
                        "["
                            + number(tooSlow ? v : range.lo(), "m/min")
                            + " m/min, "
                            + number(tooSlow ? range.hi() : v, "m/min")
                            + " m/min]",
                    !tooSlow,
                    opens))
        .ifPresent(remedies::add);
    remedies.sort(Comparator.comparingDouble(Remedy::ratio));
    return remedies;
  }

  /** A value of the sheet made larger, or smaller, until the speeds meet. */
  private static Optional<Remedy> moved(
      Changed asIs,
      String path,
      double value,
      String unit,
      DoubleFunction<String> text,
      boolean larger,
      Opens opens) {
    DoubleFunction<Optional<Changed>> at =
        factor -> {
          try {
            return Optional.of(
                asIs.withSheet(asIs.sheet().withOverride(path, text.apply(value * factor))));
          } catch (SheetException e) {
            // The sheet takes no such value.
            return Optional.empty();
          }
        };
    return opened(at, 1, larger ? 100 : 0.01, opens)
        .map(factor -> new Remedy(SPEED, path, value, value * factor, unit));
  }

  /** Where several feeds close the window together: the one feed nearest to most of the cuts'. */
  private Optional<Remedy> oneFeed(CutsOfOperations.Kept operation, Changed asIs) {
    double feed = mostOf(operation.mmByFeed);
    if (operation.mmByFeed.size() < 2) {
      return Optional.empty();
    }
    Limits one = feeds(operation, asIs.atOneFeed(feed), feed, ROUGH_HALVINGS);
    if (one.closed()) {
      return Optional.empty();
    }
    double least = one.lower().map(Limit::likely).orElse(0.0);
    double most = one.upper().map(Limit::likely).orElse(Double.POSITIVE_INFINITY);
    return Optional.of(
        new Remedy(
            FEED,
            "one feed for all moves but straight down",
            feed,
            Math.min(most, Math.max(least, feed)),
            "mm/min"));
  }

  private static double mostOf(Map<Double, Double> mmByFeed) {
    return mmByFeed.entrySet().stream().max(Map.Entry.comparingByValue()).orElseThrow().getKey();
  }

  private static <T> Optional<Remedy> shrink(
      String what,
      Changed asIs,
      Tool tool,
      Key<T> key,
      java.util.function.Function<T, Band> read,
      String unit,
      Opens opens) {
    Optional<Band> value = tool.get(key).map(read);
    if (value.isEmpty() || value.get().typical() <= 0) {
      return Optional.empty();
    }
    DoubleFunction<Optional<Changed>> at =
        factor -> {
          try {
            return Optional.of(
                asIs.withSheet(
                    asIs.sheet()
                        .withOverride(tool.path(key), text(value.get().scale(factor), unit))));
          } catch (SheetException e) {
            // The sheet knows of no such tool, such as a neck shorter than its flutes.
            return Optional.empty();
          }
        };
    return opened(at, 1, 0.01, opens)
        .map(
            factor ->
                new Remedy(
                    what,
                    tool.path(key),
                    value.get().typical(),
                    value.get().typical() * factor,
                    unit));
  }

  private static String text(Band band, String unit) {
    return band.isExact()
        ? number(band.typical(), unit) + " " + unit
        : "["
            + number(band.low(), unit)
            + " "
            + unit
            + ", "
            + number(band.typical(), unit)
            + " "
            + unit
            + ", "
            + number(band.high(), unit)
            + " "
            + unit
            + "]";
  }

  /** A length to the picometre, as a sheet takes it. */
  private static String number(double value, String unit) {
    return new BigDecimal(value)
        .setScale(unit.equals("mm") ? 9 : 6, RoundingMode.FLOOR)
        .toPlainString();
  }

  /** The factor, from one towards another, from which on the feed has room. */
  private static Optional<Double> opened(
      DoubleFunction<Optional<Changed>> at, double from, double towards, Opens opens) {
    double shut = from;
    double open = towards;
    // What the sheet does not allow is not tried: the way is walked in steps first.
    boolean found = false;
    for (int k = 1; k <= ROUGH_HALVINGS && !found; k++) {
      double next = from * StrictMath.pow(towards / from, (double) k / ROUGH_HALVINGS);
      Optional<Changed> changed = at.apply(next);
      if (changed.isEmpty()) {
        break;
      }
      if (opens.test(changed.get())) {
        open = next;
        found = true;
      } else {
        shut = next;
      }
    }
    if (!found) {
      return Optional.empty();
    }
    for (int k = 0; k < ROUGH_HALVINGS; k++) {
      double middle = Math.sqrt(shut * open);
      Optional<Changed> changed = at.apply(middle);
      if (changed.isPresent() && opens.test(changed.get())) {
        open = middle;
      } else {
        shut = middle;
      }
    }
    return Optional.of(open);
  }

  // Curves.

  private List<Curve> curves(
      CutsOfOperations.Kept operation, Changed asIs, double feed, Span depths) {
    double from = depths.lowest() / DRAWN_AROUND;
    double to = depths.highest() * DRAWN_AROUND;
    List<String> rules = new ArrayList<>(FEED_LOWER);
    rules.addAll(FEED_UPPER);
    List<Curve> curves = new ArrayList<>();
    for (String rule : rules) {
      boolean lower = FEED_LOWER.contains(rule);
      List<Point> points = new ArrayList<>();
      for (int k = 0; k < DEPTHS_DRAWN; k++) {
        double um = from * StrictMath.pow(to / from, (double) k / (DEPTHS_DRAWN - 1));
        DoubleFunction<Changed> at = factor -> asIs.withDepthUm(um).withFeed(factor);
        Optional<Limit> limit =
            limit(operation, rule, lower, at, LEAST_FACTOR, MOST_FACTOR, feed, ROUGH_HALVINGS);
        points.add(
            new Point(
                um,
                limit.map(l -> OptionalDouble.of(l.likely())).orElse(OptionalDouble.empty()),
                limit.map(l -> OptionalDouble.of(l.certain())).orElse(OptionalDouble.empty())));
      }
      if (points.stream().anyMatch(Point::isLimit)) {
        curves.add(new Curve(rule, lower, points));
      }
    }
    return curves;
  }

  // Asking the rules.

  private Speaks speaks(CutsOfOperations.Kept operation, String rule, Changed changed) {
    Collector collector = ask(operation, rule, changed);
    RuleInfo info = Rules.named(rule).orElseThrow().info();
    Speaks loudest = Speaks.NOT;
    for (Finding finding : collector.findings().values()) {
      Speaks speaks = finding.level().compareTo(info.level()) >= 0 ? Speaks.CERTAIN : Speaks.LIKELY;
      loudest = loudest.compareTo(speaks) >= 0 ? loudest : speaks;
    }
    return loudest;
  }

  /** Why a rule can't tell, where it can't. */
  private Optional<String> why(CutsOfOperations.Kept operation, String rule, Changed changed) {
    return ask(operation, rule, changed).notChecked().stream()
        .findFirst()
        .map(n -> rule + ": " + n.reason());
  }

  private Collector ask(CutsOfOperations.Kept operation, String name, Changed changed) {
    Rule rule = Rules.named(name).orElseThrow();
    Collector collector = new Collector(new Accepts(), Map.of());
    Subscriptions subscriptions = new Subscriptions(Timings.NONE);
    rule.begin(
        new RuleContext(
            rule.info(), Map.of(), changed.sheet(), kept.stages(), collector, file -> ""),
        subscriptions);
    boolean byTime = BY_TIME.contains(name);
    for (Event event : byTime ? operation.moves : operation.cuts) {
      // What is cut by moves of other classes is not asked about; what parts stretches stays.
      boolean others = event instanceof Cut cut && cut.inContact() && !changed.concerns(cut.move());
      if (byTime || !others) {
        subscriptions.accept(changed(event, changed));
      }
    }
    boolean levels = changed.only().isEmpty() || changed.only().get() == MoveClass.LEVEL;
    if (name.equals("flex-exceeds-step") && levels) {
      for (StepFound step : kept.steps()) {
        if (concerns(step, operation.number)) {
          subscriptions.accept(higher(step, changed.step()));
        }
      }
    }
    Cut first = operation.first.orElseThrow();
    subscriptions.accept(new Event.Ended(first.at(), Optional.empty(), first.move().modes()));
    return collector;
  }

  /** Steps of which both levels were cut in this operation, or one beside the uncut top. */
  private static boolean concerns(StepFound step, int operation) {
    return step.lower().lastOperation() == operation
        && (step.upper().uncut() || step.upper().lastOperation() == operation);
  }

  private static StepFound higher(StepFound step, double factor) {
    return factor == 1
        ? step
        : new StepFound(
            step.at(),
            step.upper(),
            step.lower(),
            Math.round(step.heightPm() * factor),
            Math.round(step.writtenHeightPm() * factor),
            step.feature(),
            step.offset(),
            step.borderMm());
  }

  private static Event changed(Event event, Changed changed) {
    if (event instanceof Cut cut) {
      return changed(cut, changed);
    }
    return event instanceof Move move ? changed(move, changed) : event;
  }

  private static Cut changed(Cut cut, Changed changed) {
    List<StepDown> stepDowns = cut.stepDowns();
    boolean fine = cut.fine();
    if (changed.depthUm().isPresent() && cut.runsAtLevel() && cut.stepDownPm().isPresent()) {
      long pm = Math.round(changed.depthUm().getAsDouble() * PM_PER_UM);
      StepDown largest = stepDowns.get(0);
      stepDowns =
          List.of(
              new StepDown(
                  largest.overLevelId(),
                  pm,
                  java.util.OptionalLong.of(pm),
                  largest.lengthMm(),
                  true));
      fine = pm <= Cut.deepestFinePm(changed.sheet(), cut.feature());
    }
    return new Cut(
        changed(cut.move(), changed),
        cut.contact(),
        cut.contactBy(),
        cut.tool().flatMap(tool -> changed.sheet().tool(tool.number())),
        stepDowns,
        cut.surfacePartlyUnknown(),
        cut.radialMm(),
        cut.slot(),
        cut.materialSide(),
        fine,
        cut.fineUndecided(),
        cut.spring(),
        cut.levelId(),
        cut.runsAtLevel(),
        cut.passId(),
        cut.feature(),
        taken(cut, changed));
  }

  private static Removal taken(Cut cut, Changed changed) {
    Removal removal = cut.removal();
    return changed.taken() == 1
            || MoveClass.of(cut.move()) != MoveClass.CONTOUR
            || removal.deepestPm() == 0
        ? removal
        : new Removal(
            removal.areaMm2(),
            removal.volumeMm3(),
            Math.max(1, Math.round(removal.deepestPm() * changed.taken())),
            removal.contactShare(),
            removal.widest());
  }

  private static Move changed(Move move, Changed changed) {
    boolean sameFeed =
        (changed.feed() == 1 && changed.oneFeed().isEmpty())
            || move.feedMmPerMin().isEmpty()
            || !changed.concerns(move);
    if (sameFeed && changed.speed() == 1) {
      return move;
    }
    return new Move(
        move.at(),
        move.kind(),
        move.source(),
        changed.speed() == 1 ? move.modes() : faster(move.modes(), changed.speed()),
        move.from(),
        move.to(),
        move.writtenFrom(),
        move.writtenTo(),
        move.arc(),
        move.lengthMm(),
        sameFeed
            ? move.feedMmPerMin()
            : OptionalDouble.of(
                (MoveClass.of(move) == MoveClass.DOWN
                            ? move.feedMmPerMin()
                            : changed.oneFeed().isPresent()
                                ? changed.oneFeed()
                                : move.feedMmPerMin())
                        .getAsDouble()
                    * changed.feed()),
        move.exactStop());
  }

  private static Modes faster(Modes modes, double factor) {
    Modal<Double> speed = modes.speedRpm();
    return new Modes(
        modes.units(),
        modes.plane(),
        modes.distance(),
        modes.arcDistance(),
        modes.feedMode(),
        modes.pathMode(),
        modes.workOffset(),
        modes.compensation(),
        modes.compensationNumber(),
        modes.lengthOffset(),
        modes.cycleReturn(),
        modes.spindle(),
        new Modal<>(speed.value().map(s -> s * factor), speed.origin(), speed.file(), speed.line()),
        modes.surfaceSpeed(),
        modes.feed(),
        modes.tool(),
        modes.coolant(),
        modes.operation());
  }
}
