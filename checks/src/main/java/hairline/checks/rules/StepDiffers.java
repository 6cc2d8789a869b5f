package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Place;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Feature;
import hairline.checks.setup.JobKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.Tolerance;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import hairline.checks.stock.FeatureFloors;
import hairline.checks.stock.LevelReached;
import hairline.checks.stock.PartLeft;
import hairline.checks.stock.StepFound;
import hairline.checks.stock.SurfaceLeft;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** The terraces left in a declared feature are not those that the sheet declares. */
@AutoService(Rule.class)
public final class StepDiffers implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "step-differs",
          Level.ERROR,
          Group.STEPS,
          "a terrace of a declared feature is missing, extra, or off by more than the tolerance",
          Need.SURFACE);

  /** Where the tool only came down leaves an area that is not longer, in diameters. */
  private static final double LONGEST_ENTRY = 1.5;

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    List<Feature> declared =
        context.setup().features().stream().filter(StepDiffers::declaresHeights).toList();
    if (context.setup().features().isEmpty()) {
      context.notChecked("job.features is not on the sheet");
      return;
    }
    if (declared.isEmpty()) {
      context.notChecked("no feature of job.features declares levels or a step");
      return;
    }
    if (!StockGiven.need(context)) {
      return;
    }
    Map<Integer, LevelReached> levels = new HashMap<>();
    Outside outside = new Outside();
    on.event(
        LevelReached.class,
        level -> {
          levels.putIfAbsent(level.levelId(), level);
          level.feature().ifPresent(feature -> outside.featured.add(level.levelId()));
        });
    on.event(StepFound.class, outside::take);
    on.event(
        PartLeft.class,
        part -> {
          outside.tell(context);
          if (part.surfaces().isEmpty()) {
            context.notChecked("nothing of the part is cut", part.at());
          }
          for (SurfaceLeft surface : part.surfaces()) {
            StripsLeft strips = new StripsLeft(context, surface, levels);
            // All features: a smaller one within another has its cells for itself.
            for (FeatureFloors floors : surface.floors(context.setup().features())) {
              if (declaresHeights(floors.feature())) {
                new Judge(context, floors, levels, strips, part.at()).judge();
              }
            }
          }
        });
  }

  /** Fine steps to terraces that lie in no declared feature. */
  private static final class Outside {
    private static final int MOST_STEPS = 10_000;

    private final Set<Integer> featured = new HashSet<>();
    private final List<StepFound> steps = new ArrayList<>();

    void take(StepFound step) {
      if (step.feature().isPresent()) {
        featured.add(step.later().levelId());
      } else if (steps.size() < MOST_STEPS) {
        steps.add(step);
      }
    }

    void tell(RuleContext context) {
      long finePm = context.setup().get(JobKeys.FINE_STEP).orElseThrow().pm();
      for (StepFound step : steps) {
        if (step.heightPm() <= finePm && !featured.contains(step.later().levelId())) {
          context.notChecked(
              "a step of "
                  + Quantities.um(step.heightPm())
                  + " belongs to no feature of job.features, so that no declared height is held"
                  + " against it",
              step.at());
        }
      }
    }
  }

  private static boolean declaresHeights(Feature feature) {
    return feature.step().isPresent() || !feature.levels().isEmpty();
  }

  /**
   * All that stands at one height in the feature.
   *
   * @param counts whether it is more than a place where the tool came down
   * @param uncut whether it is the uncut top
   */
  private record Standing(
      long heightPm, boolean counts, boolean uncut, Optional<LevelReached> level) {
    Standing and(Standing other) {
      Standing first = level.isPresent() && (counts || !other.counts) ? this : other;
      return new Standing(
          heightPm, counts || other.counts, uncut || other.uncut, first.level.or(() -> level));
    }
  }

  /** One feature. */
  private static final class Judge {
    private final RuleContext context;
    private final FeatureFloors floors;
    private final Feature feature;
    private final Map<Integer, LevelReached> levels;
    private final StripsLeft strips;
    private final Place end;

    Judge(
        RuleContext context,
        FeatureFloors floors,
        Map<Integer, LevelReached> levels,
        StripsLeft strips,
        Place end) {
      this.strips = strips;
      this.context = context;
      this.floors = floors;
      this.feature = floors.feature();
      this.levels = levels;
      this.end = end;
    }

    void judge() {
      Optional<Tolerance> tolerance =
          feature.tolerance().or(() -> context.need(JobKeys.TOLERANCE, end));
      if (tolerance.isEmpty()) {
        return;
      }
      if (!floors.known()) {
        context.notChecked("the surface in " + feature.name() + " is not known", end);
        return;
      }
      if (!floors.left().isEmpty()) {
        context.notChecked(String.join("; ", floors.left()), end);
        return;
      }
      List<Standing> standing = standing();
      if (standing.stream().allMatch(Standing::uncut)) {
        context.notChecked("no terrace of " + feature.name() + " is cut", end);
      } else if (feature.levels().isEmpty()) {
        bySteps(standing, feature.step().orElseThrow().pm(), tolerance.get());
        strips.tell(feature, heightPm -> heightPm == standing.get(0).heightPm(), end);
      } else {
        List<Long> declared = feature.levels().stream().map(Length::pm).toList();
        byLevels(standing, declared, tolerance.get());
        strips.tell(
            feature,
            heightPm ->
                declared.stream()
                    .allMatch(d -> heightPm > d && !within(d - heightPm, tolerance.get())),
            end);
      }
    }

    /** What stands in the feature, from above. */
    private List<Standing> standing() {
      Map<Long, Standing> byHeight = new TreeMap<>(Comparator.reverseOrder());
      for (FeatureFloors.Floor floor : floors.floors()) {
        int id = floor.terrace().levelId();
        Optional<LevelReached> level = Optional.ofNullable(levels.get(id));
        byHeight.merge(
            floor.terrace().heightPm(),
            new Standing(
                floor.terrace().heightPm(),
                id == Cut.UNCUT || level.filter(l -> longerThanEntry(floor, l)).isPresent(),
                id == Cut.UNCUT,
                level),
            Standing::and);
      }
      return List.copyOf(byHeight.values());
    }

    private static boolean longerThanEntry(FeatureFloors.Floor floor, LevelReached level) {
      return level
          .tool()
          .flatMap(tool -> tool.resolve(ToolKeys.DIAMETER).value())
          .filter(diameter -> floor.lengthPm() > LONGEST_ENTRY * diameter.pm())
          .isPresent();
    }

    // Declared by levels.

    private void byLevels(List<Standing> standing, List<Long> declared, Tolerance tolerance) {
      List<Long> lacking = new ArrayList<>();
      for (long level : declared) {
        if (standing.stream().noneMatch(s -> within(level - s.heightPm(), tolerance))) {
          lacking.add(level);
        }
      }
      Optional<Standing> ground = ground(standing, declared);
      List<Long> off = new ArrayList<>();
      for (Standing one : standing) {
        if (!one.counts()
            || one.uncut()
            || ground.equals(Optional.of(one))
            || declared.stream().anyMatch(d -> within(d - one.heightPm(), tolerance))) {
          continue;
        }
        long nearest = nearest(declared, one.heightPm());
        boolean instead = lacking.contains(nearest);
        if (instead) {
          off.add(nearest);
        }
        speakOfLevel(one, nearest, instead, tolerance);
      }
      for (long level : lacking) {
        if (!off.contains(level)) {
          speakOfMissing(standing, level, tolerance);
        }
      }
    }

    /** Where the uncut top is milled off: what the feature is cut into, its uppermost terrace. */
    private static Optional<Standing> ground(List<Standing> standing, List<Long> declared) {
      long highest = declared.stream().mapToLong(Long::longValue).max().orElseThrow();
      return standing.stream().anyMatch(Standing::uncut)
          ? Optional.empty()
          : standing.stream()
              .filter(Standing::counts)
              .findFirst()
              .filter(s -> s.heightPm() > highest);
    }

    private static long nearest(List<Long> heights, long to) {
      return heights.stream()
          .min(Comparator.comparingLong(height -> Math.abs(height - to)))
          .orElseThrow();
    }

    private void speakOfLevel(Standing one, long declared, boolean instead, Tolerance tolerance) {
      long offPm = Math.abs(one.heightPm() - declared);
      String message =
          instead
              ? "a terrace of "
                  + feature.name()
                  + " lies at "
                  + Quantities.um(one.heightPm())
                  + ", declared "
                  + Quantities.um(declared)
                  + ": off by "
                  + Quantities.um(offPm)
                  + ", tolerance "
                  + words(tolerance)
              : "a terrace of "
                  + feature.name()
                  + " at "
                  + Quantities.um(one.heightPm())
                  + " is not declared; the nearest declared is "
                  + Quantities.um(declared);
      report(
          one.level(),
          message,
          instead ? "off" : "extra",
          offPm,
          "found",
          one.heightPm(),
          declared);
    }

    private void speakOfMissing(List<Standing> standing, long declared, Tolerance tolerance) {
      List<Standing> cut = standing.stream().filter(s -> s.level().isPresent()).toList();
      Standing nearest =
          (cut.isEmpty() ? standing : cut)
              .stream()
                  .min(Comparator.comparingLong(s -> Math.abs(s.heightPm() - declared)))
                  .orElseThrow();
      report(
          nearest.level(),
          "no terrace of "
              + feature.name()
              + " lies at the declared "
              + Quantities.um(declared)
              + ", tolerance "
              + words(tolerance)
              + "; the nearest lies at "
              + Quantities.um(nearest.heightPm()),
          "missing",
          Math.abs(nearest.heightPm() - declared),
          "found",
          nearest.heightPm(),
          declared);
    }

    // Declared by a step.

    private void bySteps(List<Standing> standing, long stepPm, Tolerance tolerance) {
      List<Standing> ladder = ladder(standing, stepPm, tolerance);
      if (ladder.size() < 2) {
        context.notChecked("no two terraces of " + feature.name() + " are found", end);
        return;
      }
      Standing upper = ladder.get(0);
      for (int k = 1; k < ladder.size(); k++) {
        Standing one = ladder.get(k);
        long heightPm = upper.heightPm() - one.heightPm();
        boolean sunken = upper.uncut() && 2 * heightPm >= 3 * stepPm;
        if (sunken || within(heightPm - stepPm, tolerance)) {
          upper = one;
          continue;
        }
        boolean extra =
            heightPm < stepPm && follows(ladder, k + 1, upper.heightPm() - stepPm, tolerance);
        long steps = Math.round((double) heightPm / stepPm);
        boolean missing = steps >= 2 && within(heightPm - steps * stepPm, tolerance);
        speakOfStep(
            upper, one, heightPm, stepPm, extra ? "extra" : missing ? "missing" : "off", tolerance);
        upper = extra ? upper : one;
      }
    }

    /** Without places where the tool came down, unless they stand where a terrace should. */
    private static List<Standing> ladder(
        List<Standing> standing, long stepPm, Tolerance tolerance) {
      List<Standing> ladder = new ArrayList<>();
      for (Standing one : standing) {
        boolean fits =
            !ladder.isEmpty()
                && within(
                    ladder.get(ladder.size() - 1).heightPm() - one.heightPm() - stepPm, tolerance);
        if (one.counts() || fits) {
          ladder.add(one);
        }
      }
      return ladder;
    }

    /** Whether a terrace further down stands where the next one should. */
    private static boolean follows(
        List<Standing> ladder, int from, long heightPm, Tolerance tolerance) {
      return ladder.subList(from, ladder.size()).stream()
          .anyMatch(s -> within(heightPm - s.heightPm(), tolerance));
    }

    private void speakOfStep(
        Standing upper,
        Standing one,
        long heightPm,
        long stepPm,
        String what,
        Tolerance tolerance) {
      String meaning =
          switch (what) {
            case "extra" -> "; the terrace at " + Quantities.um(one.heightPm()) + " is extra";
            case "missing" ->
                "; " + (Math.round((double) heightPm / stepPm) - 1) + " missing between";
            default -> ": off by " + Quantities.um(Math.abs(heightPm - stepPm));
          };
      report(
          one.level().or(upper::level),
          "step of "
              + feature.name()
              + " from "
              + Quantities.um(upper.heightPm())
              + " to "
              + Quantities.um(one.heightPm())
              + " is "
              + Quantities.um(heightPm)
              + ", declared "
              + Quantities.um(stepPm)
              + " "
              + words(tolerance)
              + meaning,
          what,
          Math.abs(heightPm - stepPm),
          "step",
          heightPm,
          stepPm);
    }

    private void report(
        Optional<LevelReached> at,
        String message,
        String what,
        long offPm,
        String foundName,
        long foundPm,
        long declaredPm) {
      Occurrence.Builder occurrence =
          context
              .occurrence(at.map(LevelReached::at).orElse(end), message)
              .fact(
                  "as left at the end of the program; job.features "
                      + feature.name()
                      + (feature.levels().isEmpty() ? ", step" : ", levels")
                      + (feature.tolerance().isPresent() ? " and tolerance" : "; job.tolerance"))
              .cure("the declared heights, or a sheet that declares what is wanted")
              .figure(foundName, foundPm / 1e6, "µm")
              .figure("declared", declaredPm / 1e6, "µm")
              .cause(feature.name() + " " + what)
              .severity((double) offPm);
      if (what.equals("off")) {
        occurrence.figure("off", offPm / 1e6, "µm");
      }
      at.ifPresent(level -> occurrence.operation(level.operation()));
      context.report(occurrence);
    }
  }

  private static String words(Tolerance tolerance) {
    long low = tolerance.lo().pm();
    long high = tolerance.hi().pm();
    return low == -high
        ? "±" + Quantities.um(high)
        : Quantities.um(low) + " to " + Quantities.um(high);
  }

  /** Whether a depth or step may be so much larger than declared. */
  private static boolean within(long morePm, Tolerance tolerance) {
    return morePm >= tolerance.lo().pm() && morePm <= tolerance.hi().pm();
  }
}
