package hairline.checks.rules;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.MinimumChip;
import hairline.checks.cutting.SurfaceSpeed;
import hairline.checks.finding.Accepts;
import hairline.checks.finding.Collector;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.Extent;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.setup.ControlKeys;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.LengthOffsetUse;
import hairline.checks.setup.MaterialKeys;
import hairline.checks.setup.Offset;
import hairline.checks.setup.Setup;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.Cut;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Watches a check for what each operation does with its tool, by the same figures that the rules
 * look at; for whoever has to set the job up.
 */
public final class OperationBook implements StagesWatcher {
  /** So many operations are told apart. */
  public static final int MOST_OPERATIONS = 500;

  private static final int MOST_LENGTH_OFFSETS = 4;

  /** So many things to happen are listed. */
  public static final int MOST_HAPPENINGS = 500;

  /** So many levels are listed for an operation. */
  public static final int MOST_LEVELS = 200;

  /** Columns in which the heights along an operation are kept, at most. */
  public static final int MOST_COLUMNS = 512;

  /**
   * The thinnest of the largest chips of an operation.
   *
   * @param at where
   * @param chipUm the largest chip of the engagement there, runout counted in
   * @param minimumUm the minimum chip thickness; empty where the sheet lacks it
   */
  public record Chip(Place at, Band chipUm, Optional<Band> minimumUm) {}

  /**
   * What is done with one tool at one commanded speed.
   *
   * @param number its number, from 1
   * @param first its first move
   * @param last its last move
   * @param tool the tool's number; empty where it is not known
   * @param onSheet the tool on the sheet
   * @param rpm the speed at which it cuts; empty where it cuts nothing or the speed is not known
   * @param lowestFeedMmPerMin of the feed moves in contact; NaN where there is none
   * @param highestFeedMmPerMin of the feed moves in contact; NaN where there is none
   * @param surfaceSpeedMPerMin at the full diameter; empty where not known
   * @param contactMm length of the moves in contact
   * @param finestStepPm the smallest height taken by a fine cut, as stored
   * @param finestWrittenPm the same height as written
   * @param deepestPm the largest height taken
   * @param lowestZPm the lowest Z at which it cuts
   * @param chip its thinnest largest chip
   * @param coolants the coolant states in contact
   * @param lengthOffsets the length offsets (H) in force in contact
   * @param levels Z of its levels in contact, from above, with the first place of each
   * @param heights the lowest Z in contact along it, in columns of equally many moves
   * @param cuts whether it removes anything
   */
  public record Operation(
      int number,
      Place first,
      Place last,
      Optional<Integer> tool,
      Optional<Tool> onSheet,
      OptionalDouble rpm,
      double lowestFeedMmPerMin,
      double highestFeedMmPerMin,
      OptionalDouble surfaceSpeedMPerMin,
      double contactMm,
      OptionalLong finestStepPm,
      OptionalLong finestWrittenPm,
      OptionalLong deepestPm,
      OptionalLong lowestZPm,
      Optional<Chip> chip,
      List<String> coolants,
      List<String> lengthOffsets,
      Map<Long, Place> levels,
      List<OptionalLong> heights,
      boolean cuts) {}

  /** What happens beside moves. */
  public enum Happens {
    STOP("stop"),
    WARM_UP("warm-up"),
    MEASURING("measuring"),
    TOOL_CHANGE("tool change"),
    SPINDLE("spindle"),
    COOLANT("coolant");

    private final String words;

    Happens(String words) {
      this.words = words;
    }

    /** It in words. */
    public String words() {
      return words;
    }
  }

  /**
   * Something that happens.
   *
   * @param what what
   * @param at the block
   * @param code the code or the state after it
   * @param modes the state then
   */
  public record Happening(Happens what, Place at, String code, Modes modes) {}

  /**
   * How far moves reach under a work offset on the machine.
   *
   * @param offset the work offset; empty where it is not known
   * @param work reach in work coordinates
   * @param machine reach in machine coordinates, where offset and tool length are known throughout
   */
  public record Reach(
      String offset, boolean rapid, Map<Axis, Extent> work, Map<Axis, Extent> machine) {}

  private final Setup setup;
  private final Subscriptions subscriptions = new Subscriptions(Timings.NONE);
  private final TreeMap<Integer, Pages> operations = new TreeMap<>();
  private final List<Happening> happenings = new ArrayList<>();
  private final Map<String, Reaches> reaches = new LinkedHashMap<>();
  private long left;

  /** A book for a program with this sheet. */
  public OperationBook(Setup setup) {
    this.setup = setup;
  }

  @Override
  public void begin(Stages stages) {
    RuleInfo nobody =
        RuleInfo.of(
            "operation-book",
            hairline.checks.finding.Level.NOTE,
            RuleInfo.Group.CHIPS,
            "",
            RuleInfo.Need.OVERLAP);
    RuleContext context =
        new RuleContext(
            nobody, Map.of(), setup, stages, new Collector(new Accepts(), Map.of()), file -> "");
    ToothCuts.eachByStretch(context, subscriptions, this::chip);
    subscriptions.event(Cut.class, this::cut);
    subscriptions.move(this::move);
    subscriptions.event(
        Event.Stopped.class, e -> happens(Happens.STOP, e.at(), e.code(), e.modes()));
    subscriptions.event(
        Event.ToolChanged.class,
        e -> happens(Happens.TOOL_CHANGE, e.at(), number("T", e.after()), e.modes()));
    subscriptions.event(
        Event.SpindleChanged.class,
        e ->
            happens(
                Happens.SPINDLE,
                e.at(),
                e.after().turningRpm().map(r -> r == 0 ? "stops" : "").orElse(""),
                e.after()));
    subscriptions.event(Event.MachineCode.class, this::code);
    subscriptions.event(
        Event.ModesChanged.class,
        e -> {
          if (!e.before().coolant().value().equals(e.after().coolant().value())) {
            happens(Happens.COOLANT, e.at(), coolant(e.after()), e.after());
          }
        });
  }

  @Override
  public void accept(Event event) {
    subscriptions.accept(event);
  }

  private static String number(String letter, Modal<Integer> number) {
    return number.value().map(n -> letter + n).orElse("not known");
  }

  private void code(Event.MachineCode code) {
    if (code.meaning() == Event.MachineCode.Meaning.WARM_UP) {
      happens(Happens.WARM_UP, code.at(), code.code(), code.modes());
    } else if (code.meaning() == Event.MachineCode.Meaning.MEASURE_TOOL) {
      happens(Happens.MEASURING, code.at(), code.code(), code.modes());
    }
  }

  private void happens(Happens what, Place at, String code, Modes modes) {
    if (happenings.size() < MOST_HAPPENINGS) {
      happenings.add(new Happening(what, at, code, modes));
    } else {
      left++;
    }
  }

  /** Coolant in words. */
  private static String coolant(Modes modes) {
    return modes
        .coolant()
        .value()
        .map(
            c ->
                !c.on()
                    ? "off"
                    : c.mist() && c.flood() ? "mist, flood" : c.mist() ? "mist" : "flood")
        .orElse("not known");
  }

  private static String lengthOffset(Modes modes) {
    return modes
        .lengthOffset()
        .value()
        .map(h -> h == 0 ? "none" : "H" + h)
        .orElse(modes.lengthOffset().isUnknown() ? "not known" : "none");
  }

  // Operations.

  /** One operation while it runs. */
  private static final class Pages {
    final int number;
    final Modes modes;
    final Place first;
    Place last;
    double lowestFeed = Double.NaN;
    double highestFeed = Double.NaN;
    double contactMm;
    OptionalDouble rpm = OptionalDouble.empty();
    OptionalLong finest = OptionalLong.empty();
    OptionalLong finestWritten = OptionalLong.empty();
    OptionalLong deepest = OptionalLong.empty();
    OptionalLong lowestZ = OptionalLong.empty();
    Optional<Chip> chip = Optional.empty();
    boolean cuts;
    final TreeSet<String> coolants = new TreeSet<>();
    final TreeSet<String> lengthOffsets = new TreeSet<>();
    final TreeMap<Long, Place> levels = new TreeMap<>(java.util.Comparator.reverseOrder());
    final List<OptionalLong> heights = new ArrayList<>();
    long perColumn = 1;
    long inColumn;

    Pages(Move move) {
      number = move.modes().operation();
      modes = move.modes();
      first = move.at();
      last = move.at();
    }

    void height(long z) {
      if (inColumn == 0) {
        if (heights.size() == MOST_COLUMNS) {
          for (int k = 0; k < MOST_COLUMNS / 2; k++) {
            heights.set(k, lower(heights.get(2 * k), heights.get(2 * k + 1)));
          }
          heights.subList(MOST_COLUMNS / 2, MOST_COLUMNS).clear();
          perColumn *= 2;
        }
        heights.add(OptionalLong.of(z));
      } else {
        int last = heights.size() - 1;
        heights.set(last, lower(heights.get(last), OptionalLong.of(z)));
      }
      inColumn = (inColumn + 1) % perColumn;
    }

    private static OptionalLong lower(OptionalLong a, OptionalLong b) {
      return OptionalLong.of(Math.min(a.orElse(Long.MAX_VALUE), b.orElse(Long.MAX_VALUE)));
    }
  }

  private Optional<Pages> pages(Move move) {
    Pages pages = operations.get(move.modes().operation());
    if (pages == null) {
      if (operations.size() == MOST_OPERATIONS) {
        left++;
        return Optional.empty();
      }
      pages = new Pages(move);
      operations.put(pages.number, pages);
    }
    return Optional.of(pages);
  }

  private void cut(Cut cut) {
    if (cut.inContact()) {
      pages(cut.move()).ifPresent(pages -> cut(pages, cut));
    }
  }

  private static void cut(Pages pages, Cut cut) {
    Move move = cut.move();
    pages.cuts = true;
    pages.contactMm += move.lengthMm();
    move.modes().turningRpm().filter(r -> r > 0).ifPresent(r -> pages.rpm = OptionalDouble.of(r));
    if (move.feedMmPerMin().isPresent()) {
      double feed = move.feedMmPerMin().getAsDouble();
      pages.lowestFeed = Double.isNaN(pages.lowestFeed) ? feed : Math.min(feed, pages.lowestFeed);
      pages.highestFeed =
          Double.isNaN(pages.highestFeed) ? feed : Math.max(feed, pages.highestFeed);
    }
    pages.coolants.add(coolant(move.modes()));
    if (pages.lengthOffsets.size() < MOST_LENGTH_OFFSETS) {
      pages.lengthOffsets.add(lengthOffset(move.modes()));
    }
    if (cut.stepDownPm().isPresent() && !cut.spring()) {
      long step = cut.stepDownPm().getAsLong();
      pages.deepest = OptionalLong.of(Math.max(step, pages.deepest.orElse(0)));
      if (cut.fine() && cut.runsAtLevel() && step > 0) {
        if (step < pages.finest.orElse(Long.MAX_VALUE)) {
          pages.finest = OptionalLong.of(step);
          pages.finestWritten = cut.writtenStepDownPm();
        }
      }
    }
    if (move.to().knows(Axis.Z)) {
      long z = move.to().zPm();
      pages.height(z);
      pages.lowestZ = OptionalLong.of(Math.min(z, pages.lowestZ.orElse(Long.MAX_VALUE)));
      if (cut.runsAtLevel() && pages.levels.size() < MOST_LEVELS) {
        pages.levels.putIfAbsent(z, move.at());
      }
    }
  }

  private void chip(ToothCuts.ToothCut tooth) {
    Pages pages = operations.get(tooth.cut().move().modes().operation());
    if (pages == null) {
      return;
    }
    Band chip = ChipBelowMinimum.largestChip(tooth).chipUm();
    if (pages.chip.isEmpty() || chip.typical() < pages.chip.get().chipUm().typical()) {
      Optional<Band> edge = tooth.tool().get(ToolKeys.EDGE_RADIUS).map(LengthBand::um);
      Optional<Band> ratio = setup.get(MaterialKeys.MINIMUM_CHIP_RATIO);
      Optional<Band> minimum = edge.flatMap(e -> ratio.map(k -> MinimumChip.um(k, e)));
      pages.chip = Optional.of(new Chip(tooth.cut().at(), chip, minimum));
    }
  }

  private void move(Move move) {
    pages(move).ifPresent(pages -> pages.last = move.at());
    reach(move);
  }

  // Reach.

  private static final class Reaches {
    final Map<Axis, Extent> work = new EnumMap<>(Axis.class);
    final Map<Axis, Extent> machine = new EnumMap<>(Axis.class);
    final EnumMap<Axis, Boolean> unknown = new EnumMap<>(Axis.class);
  }

  private void reach(Move move) {
    if (move.source() == Move.Source.MACHINE) {
      return;
    }
    String offset = move.modes().workOffset().value().orElse("");
    String key = offset + (move.isFeed() ? " feed" : " rapid");
    Reaches all = reaches.computeIfAbsent(key, k -> new Reaches());
    for (Axis axis : List.of(Axis.X, Axis.Y, Axis.Z)) {
      // Where a move begins, another ended, perhaps of the other sort; it starts there all the
      // same.
      Optional<Extent> extent = Extent.of(move, axis);
      if (extent.isEmpty()) {
        continue;
      }
      all.work.merge(axis, extent.get(), Extent::cover);
      OptionalLong shift = shiftPm(move, axis, offset);
      if (shift.isEmpty()) {
        all.unknown.put(axis, true);
      } else {
        long by = shift.getAsLong();
        all.machine.merge(
            axis,
            new Extent(extent.get().lowest() + by, extent.get().highest() + by),
            Extent::cover);
      }
    }
  }

  /** From work to machine coordinates: the offset, and in Z the tool's length. */
  private OptionalLong shiftPm(Move move, Axis axis, String offset) {
    Optional<Offset> zero = setup.offset(offset);
    Optional<Length> at =
        zero.flatMap(z -> axis == Axis.X ? z.x() : axis == Axis.Y ? z.y() : z.z());
    if (at.isEmpty()) {
      return OptionalLong.empty();
    }
    if (axis != Axis.Z) {
      return OptionalLong.of(at.get().pm());
    }
    boolean automatic =
        setup.get(ControlKeys.LENGTH_OFFSET).equals(Optional.of(LengthOffsetUse.AUTOMATIC));
    boolean applied =
        automatic || move.modes().lengthOffset().value().map(n -> n != 0).orElse(false);
    if (!applied) {
      return OptionalLong.of(at.get().pm());
    }
    return move.modes()
        .tool()
        .value()
        .flatMap(setup::tool)
        .flatMap(tool -> tool.get(ToolKeys.LENGTH))
        .map(length -> OptionalLong.of(at.get().pm() + length.pm()))
        .orElse(OptionalLong.empty());
  }

  // What came together.

  /** The sheet that the figures come from. */
  public Setup setup() {
    return setup;
  }

  /** The operations in their order. */
  public List<Operation> operations() {
    List<Operation> all = new ArrayList<>();
    for (Pages pages : operations.values()) {
      Optional<Integer> number = pages.modes.tool().value();
      Optional<Tool> tool = number.flatMap(setup::tool);
      Optional<Length> diameter = tool.flatMap(t -> t.get(ToolKeys.DIAMETER));
      all.add(
          new Operation(
              pages.number,
              pages.first,
              pages.last,
              number,
              tool,
              pages.rpm,
              pages.lowestFeed,
              pages.highestFeed,
              pages.rpm.isPresent() && diameter.isPresent()
                  ? OptionalDouble.of(
                      SurfaceSpeed.mPerMin(diameter.get().mm(), pages.rpm.getAsDouble()))
                  : OptionalDouble.empty(),
              pages.contactMm,
              pages.finest,
              pages.finestWritten,
              pages.deepest,
              pages.lowestZ,
              pages.chip,
              List.copyOf(pages.coolants),
              List.copyOf(pages.lengthOffsets),
              java.util.Collections.unmodifiableMap(pages.levels),
              List.copyOf(pages.heights),
              pages.cuts));
    }
    return all;
  }

  /** Stops, warm-up, measuring, changes of tool, spindle and coolant, in their order. */
  public List<Happening> happenings() {
    return List.copyOf(happenings);
  }

  /** How far moves reach, by offset, rapid ones and feed ones apart. */
  public List<Reach> reaches() {
    List<Reach> all = new ArrayList<>();
    reaches.forEach(
        (key, reach) -> {
          Map<Axis, Extent> machine = new EnumMap<>(Axis.class);
          reach.machine.forEach(
              (axis, extent) -> {
                if (!reach.unknown.containsKey(axis)) {
                  machine.put(axis, extent);
                }
              });
          int blank = key.lastIndexOf(' ');
          all.add(new Reach(key.substring(0, blank), key.endsWith("rapid"), reach.work, machine));
        });
    return all;
  }

  /** How many operations' moves and happenings there was no room for. */
  public long left() {
    return left;
  }
}
