package hairline.checks.stock;

import hairline.checks.motion.Axis;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.setup.CompensationShift;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.stock.PassBook.Contacted;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Between motion and rules: tells what each move does to the part. Every event is passed on; a
 * {@link Move} becomes a {@link Cut}; {@link LevelReached} and {@link PassEnded} are added where
 * they happen, and every {@link StepFound} and {@link PartLeft} just before {@link Event.Ended}.
 *
 * <p>The part is a {@link HeightGrid} for each work offset: a second one mostly stands for a second
 * part, so that where the sheet puts the offsets joins no fields. Without a stock the uncut part
 * has no known top; see {@link SurfaceLeft#assumedStock}. What cannot be followed is told once by
 * {@link Event.BecameUnknown} or {@link Event.CapReached}, and what depends on it stays empty.
 *
 * <p>A move changes the part only below the stock's top, or without a stock below the lowest Z at
 * which its tool was positioned with G0 so far (cycles and machine coordinates don't count); and
 * only where the surface still stands above its floor. Events come in order, but may come late:
 * ramps and plunges wait until it is known whether a level follows.
 */
public final class StockStage implements EventSink {
  private static final long FARTHEST_PM = 100_000_000_000_000L;
  private static final double LONGEST_MOVE_IN_TILES_OF_CAP = 4;
  private static final int NO_TOOL = -1;
  private static final long PM_PER_UM = 1_000_000;

  private final StockModel model;
  private final Outlet out;
  private final NotFollowed notFollowed;
  private final FeatureAreas features;
  private final HeightGrid.TileBudget budget;
  private final Map<String, Surface> surfaces = new LinkedHashMap<>();
  private final Map<Integer, Cutter> cutters = new HashMap<>();
  private final Map<Integer, Shoulder> shoulders = new HashMap<>();
  private final Levels levels;
  private final Heights heights;
  private final PassBook passes;
  private final Removed found;
  private final Entry entry = new Entry();
  private final Walls walls = new Walls();
  private double widestCorner;
  private boolean everythingLost;
  private ApproachDirection approach = ApproachDirection.UNKNOWN;
  private int operation;
  private int sequence;
  private Optional<Move> last = Optional.empty();

  // What the last move was asked for holds for the next as long as nothing changes.
  private @Nullable InForce inForce;
  private @Nullable Surface latest;

  // How far the tool has come in contact at one Z.
  private long runZ;
  private double runLength;

  private Optional<DepthTrack> depths = Optional.empty();

  /**
   * A stage.
   *
   * @param model what the setup sheet says
   * @param next takes the events
   */
  public StockStage(StockModel model, EventSink next) {
    this.model = model;
    this.out = new Outlet(next);
    this.notFollowed = new NotFollowed(out);
    this.features = new FeatureAreas(model.features());
    this.budget = new HeightGrid.TileBudget(model.limits().tiles());
    this.levels = new Levels(model.limits().levels());
    this.heights = new Heights(model.cellPm(), levels);
    this.passes = new PassBook(model, features, out);
    this.found = new Removed(model.cellPm());
    model
        .tools()
        .forEach(
            (number, tool) -> {
              Cutter.of(tool).ifPresent(cutter -> cutters.put(number, cutter));
              Shoulder.of(tool).ifPresent(shoulder -> shoulders.put(number, shoulder));
            });
  }

  /** From here on {@link DepthsTaken} tells the depths that each feed move takes. */
  public void tellDepths() {
    DepthTrack track = new DepthTrack((double) model.cellPm());
    depths = Optional.of(track);
    found.tellTo(track);
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Move move) {
      move(move);
      return;
    }
    if (event instanceof Event.ToolChanged) {
      passes.end(event.at());
      endSequence();
      approach = ApproachDirection.UNKNOWN;
      last = Optional.empty();
    } else if (event instanceof Event.SubprogramMissing missing) {
      loseEverything(event.at(), "subprogram " + missing.name() + " is missing");
    } else if (event instanceof Event.SubprogramEndless) {
      loseEverything(event.at(), "a call is left out");
    } else if (event instanceof Event.ArcImpossible) {
      loseEverything(event.at(), "an arc is left out");
    } else if (event instanceof Event.StepBudgetReached) {
      loseEverything(event.at(), "the rest of the program is not read");
    } else if (event instanceof Event.BecameUnknown) {
      last = Optional.empty();
    } else if (event instanceof Event.Dwelled dwell) {
      out.put(new DwelledAt(dwell, touch(dwell.modes())));
    } else if (event instanceof Event.Ended) {
      end(event.at());
    }
    out.put(event);
  }

  private void end(Place at) {
    passes.end(at);
    for (Surface surface : surfaces.values()) {
      // Nothing contradicts the tool's having been positioned in its depth at rapid.
      surface.neverBelow().ifPresent(first -> notFollowed.contactFor(first, stockKey(surface)));
    }
    out.operationOver();
    walls.tell(out::put);
    StepReport report = new StepReport(model, features, levels);
    report.find(surfaces.values(), widestCorner);
    report.tell(out::put);
    if (report.capReached()) {
      notFollowed.cap(at, "steps", model.limits().steps());
    }
    out.put(
        new PartLeft(
            at,
            surfaces.values().stream()
                .map(surface -> new SurfaceLeft(surface, widestCorner))
                .filter(SurfaceLeft::anything)
                .toList()));
  }

  /** What the tool touches where the last move left it; known only on a declared stock. */
  private Optional<DwelledAt.Touch> touch(Modes now) {
    Optional<Position> stands =
        last.filter(move -> measuresAlike(move.modes(), now) && !shifted(now))
            .map(Move::to)
            .filter(to -> to.knowsXyz() && near(to));
    Optional<Surface> surface =
        now.workOffset().value().map(this::surface).filter(s -> s.box.isPresent() && !s.lost());
    Optional<Cutter> cutter =
        now.tool().value().flatMap(number -> Optional.ofNullable(cutters.get(number)));
    if (stands.isEmpty() || surface.isEmpty() || cutter.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        surface.get().standing.touch(stands.get(), cutter.get(), model.chordErrorPm()));
  }

  private static boolean measuresAlike(Modes then, Modes now) {
    return then.workOffset().value().equals(now.workOffset().value())
        && then.lengthOffset().value().equals(now.lengthOffset().value())
        && then.tool().value().equals(now.tool().value());
  }

  // Moves.

  private void move(Move move) {
    if (move.modes().operation() != operation) {
      passes.end(move.at());
      out.operationOver();
      operation = move.modes().operation();
    }
    noteApproach(move);
    last = Optional.of(move);
    lookBeside(move);
    if (!move.isFeed()) {
      rapid(move);
      return;
    }
    Optional<String> offset = move.modes().workOffset().value();
    if (offset.isEmpty()) {
      loseEverything(move.at(), "the work offset is not known");
      notTold(move, ContactBasis.POSITION_UNKNOWN);
      return;
    }
    feed(move, surface(offset.get()));
  }

  private void noteApproach(Move move) {
    Position from = move.from();
    Position to = move.to();
    if (!from.knows(Axis.Z) || !to.knows(Axis.Z)) {
      approach = ApproachDirection.UNKNOWN;
    } else if (to.zPm() != from.zPm()) {
      approach =
          to.zPm() < from.zPm() ? ApproachDirection.FROM_ABOVE : ApproachDirection.FROM_BELOW;
    }
  }

  /** Tells a move in which the body of the tool comes below stock beside it. */
  private void lookBeside(Move move) {
    Optional<Surface> surface =
        move.modes().workOffset().value().map(this::surface).filter(s -> s.box.isPresent());
    Optional<Shoulder> shoulder = inForce(move.modes()).shoulder();
    if (surface.isEmpty() || shoulder.isEmpty() || !measurable(move) || surface.get().lost()) {
      return;
    }
    Path path = Path.of(move);
    long reaches = path.lowest(model.chordErrorPm()) + shoulder.get().reachPm();
    Optional<Cutter> cutter = cutter(move);
    if (reaches < surface.get().box.get().topPm()
        && cutter.isPresent()
        && (path.movesInPlan() || path.z1 < path.z0)
        && !shifted(move)
        && !tooLong(path)) {
      surface
          .get()
          .clearance
          .beside(path, cutter.get(), shoulder.get())
          .ifPresent(
              found ->
                  out.put(
                      new BodyMeetsStock(
                          move,
                          tool(move).orElseThrow(),
                          found.depthPm(),
                          shoulder.get().reachPm(),
                          found.xPm(),
                          found.yPm())));
    }
  }

  private void rapid(Move move) {
    passes.end(move.at());
    endSequence();
    Optional<String> offset = move.modes().workOffset().value();
    Optional<Integer> number = move.modes().tool().value();
    if (move.source() == Move.Source.BLOCK
        && offset.isPresent()
        && number.isPresent()
        && move.to().knows(Axis.Z)) {
      surface(offset.get()).rapidTo(number.get(), move.to().zPm());
    }
    offset.ifPresent(name -> cutter(move).ifPresent(c -> rapidInto(move, surface(name), c)));
    out.put(idle(move, Contact.NO, ContactBasis.RAPID));
  }

  /**
   * Tells a rapid that enters stock, and cuts it. Where its start is not known, it is looked at
   * where it ends. A tool that a cycle has stopped turns no circle (G87 goes into a bore with it).
   */
  private void rapidInto(Move move, Surface surface, Cutter cutter) {
    boolean stoppedByCycle =
        move.source() == Move.Source.CYCLE && move.modes().spindle().is(Modes.Spindle.STOPPED);
    if (surface.lost()
        || stoppedByCycle
        || shifted(move)
        || !move.to().knowsXyz()
        || !near(move.to())) {
      return;
    }
    boolean fromKnown = move.from().knowsXyz() && near(move.from());
    Path path = fromKnown ? Path.of(move) : Path.at(move.to());
    boolean above = surface.box.isPresent() && path.lowestEnd() >= surface.box.get().topPm();
    if (above || tooLong(path)) {
      return;
    }
    Surface.Piece way =
        new Surface.Piece(path.x0, path.y0, path.z0, path.x1, path.y1, path.z1, 0, false);
    long depthPm = surface.standing.deepest(way, cutter);
    if (depthPm > 0) {
      double first = surface.standing.first(way, cutter);
      out.put(
          new RapidMeetsStock(
              move,
              tool(move),
              depthPm,
              wholeMicrometres(path, Axis.X, first),
              wholeMicrometres(path, Axis.Y, first),
              wholeMicrometres(path, Axis.Z, first)));
      depths.ifPresent(track -> track.begin(path));
      surface.cut(path, cutter, Cut.NO_LEVEL, Cut.NO_LEVEL, found);
      if (budget.reached()) {
        notFollowed.cap(move.at(), "tiles of the height grid", model.limits().tiles());
      }
    }
  }

  /** A coordinate on the way: exact where it does not change, else to a micrometre. */
  private static long wholeMicrometres(Path path, Axis axis, double fraction) {
    double start = path.at(axis, 0);
    return path.at(axis, 1) == start
        ? (long) start
        : Math.round(path.at(axis, fraction) / PM_PER_UM) * PM_PER_UM;
  }

  private void endSequence() {
    sequence++;
    runLength = 0;
    entry.over(found);
    out.entryOver(operation);
  }

  /** What is known of the part under a work offset. */
  Surface surface(String offset) {
    Surface known = latest;
    if (known == null || !known.offset.equals(offset)) {
      known = surfaces.computeIfAbsent(offset, this::newSurface);
      latest = known;
    }
    return known;
  }

  private Surface newSurface(String offset) {
    Surface surface = new Surface(offset, model, budget);
    if (everythingLost) {
      surface.lose();
    }
    return surface;
  }

  private Optional<Tool> tool(Move move) {
    return inForce(move.modes()).tool();
  }

  private Optional<Cutter> cutter(Move move) {
    return inForce(move.modes()).cutter();
  }

  /** What follows from a modal state, which mostly is that of the move before. */
  private record InForce(
      Modes modes,
      Optional<Tool> tool,
      Optional<Cutter> cutter,
      Optional<Shoulder> shoulder,
      boolean shifted) {}

  private InForce inForce(Modes modes) {
    InForce known = inForce;
    if (known == null || !known.modes().isSame(modes)) {
      Optional<Integer> number = modes.tool().value();
      known =
          new InForce(
              modes,
              number.flatMap(n -> Optional.ofNullable(model.tools().get(n))),
              number.flatMap(n -> Optional.ofNullable(cutters.get(n))),
              number.flatMap(n -> Optional.ofNullable(shoulders.get(n))),
              mayShift(modes));
      inForce = known;
    }
    return known;
  }

  /** A feed move: whether it can be measured, and whether it may be in contact at all. */
  private void feed(Move move, Surface surface) {
    ContactBasis basis =
        surface.box.isPresent() ? ContactBasis.STOCK_BOX : ContactBasis.LOWEST_RAPID_Z;
    OptionalLong below = surface.contactBelow(move.modes().tool().value().orElse(NO_TOOL));
    if (!measurable(move)) {
      unmeasurable(move, surface, basis, below);
      return;
    }
    Path path = Path.of(move);
    if (below.isPresent() && path.lowest(model.chordErrorPm()) >= below.getAsLong()) {
      onTop(move, surface, path);
      if (surface.box.isEmpty()) {
        surface.notBelow(move.modes().tool().value().orElse(NO_TOOL), move.at());
      }
      air(move, basis, path);
      return;
    }
    Optional<Cutter> cutter = cutter(move);
    if (cutter.isEmpty()) {
      notFollowed.loseFor(
          surface,
          move.at(),
          shapeKey(move),
          toolWords(move) + " has no diameter and shape on the sheet");
    } else if (tooLong(path)) {
      notFollowed.cap(move.at(), "tiles of the height grid", model.limits().tiles());
      notFollowed.lose(surface, move.at(), "a move is too long to follow");
    }
    if (surface.box.isEmpty()) {
      surface.isBelow(move.modes().tool().value().orElse(NO_TOOL));
    }
    if (below.isEmpty()) {
      cutter.filter(c -> !surface.lost()).ifPresent(c -> surface.lose(path, c.radiusPm()));
      notTold(move, ContactBasis.NEVER_POSITIONED);
    } else if (cutter.isPresent()) {
      below(move, surface, basis, path, cutter.get());
    } else if (surface.box.isPresent()) {
      notTold(move, ContactBasis.TOOL_UNKNOWN);
    } else {
      blind(move, surface, basis, path);
    }
  }

  /** A level move that was written below the top of the stock, and is stored at it. */
  private void onTop(Move move, Surface surface, Path path) {
    Optional<Cutter> cutter = cutter(move);
    if (surface.box.isPresent()
        && cutter.isPresent()
        && path.level()
        && path.movesInPlan()
        && path.z0 == surface.box.get().topPm()
        && !surface.lost()
        && !tooLong(path)
        && move.writtenTo().zPm() < surface.box.get().topPm()
        && surface.reachesBox(path, cutter.get().radiusPm())) {
      passLost(move, surface, surface.box.get().topPm());
    }
  }

  /** A feed move below where contact may begin. */
  private void below(Move move, Surface surface, ContactBasis basis, Path path, Cutter cutter) {
    boolean shifted = shifted(move);
    double reach = shifted ? 2 * cutter.radiusPm() : cutter.radiusPm();
    if (shifted) {
      notFollowed.unknown(
          move.at(),
          "the surface of " + surface.offset + " beside paths under radius compensation");
      if (!surface.lost()) {
        surface.lose(path, reach);
      }
    }
    if (!shifted && !surface.lost()) {
      cut(move, surface, basis, path, cutter);
    } else if (surface.reachesBox(path, reach)) {
      blind(move, surface, basis, path);
    } else {
      air(move, basis, path);
    }
  }

  /**
   * Whether radius compensation may shift the path. Then the tool runs beside it: contact is
   * decided by the path and the tool's reach, and what the tool may have cut on either side is
   * lost.
   */
  private boolean shifted(Move move) {
    return shifted(move.modes());
  }

  private boolean shifted(Modes modes) {
    return inForce(modes).shifted();
  }

  private boolean mayShift(Modes modes) {
    Modal<Modes.Compensation> compensation = modes.compensation();
    boolean on =
        compensation.isUnknown()
            || compensation.is(Modes.Compensation.LEFT)
            || compensation.is(Modes.Compensation.RIGHT);
    return on && !model.compensation().equals(Optional.of(CompensationShift.WEAR));
  }

  /** The key of the sheet that would tell where stock is. */
  private String stockKey(Surface surface) {
    return model.box().isPresent() ? "the stock of " + surface.offset : "stock";
  }

  /** The key of the sheet that would tell how wide the tool of this move cuts. */
  private String shapeKey(Move move) {
    Optional<Integer> number = move.modes().tool().value();
    if (number.isEmpty() || !model.tools().containsKey(number.get())) {
      return number.map(n -> "tools." + n).orElse("tools");
    }
    Tool tool = model.tools().get(number.get());
    return tool.get(ToolKeys.DIAMETER).isEmpty()
        ? tool.resolve(ToolKeys.DIAMETER).path()
        : tool.resolve(ToolKeys.SHAPE).path();
  }

  private static String toolWords(Move move) {
    return move.modes().tool().value().map(number -> "tool " + number).orElse("the tool");
  }

  // What can't be measured.

  private static boolean measurable(Move move) {
    return move.from().knowsXyz()
        && move.to().knowsXyz()
        && near(move.from())
        && near(move.to())
        && (move.arc().isEmpty() || move.modes().plane().value().isPresent());
  }

  private static boolean near(Position position) {
    return Math.abs(position.xPm()) <= FARTHEST_PM
        && Math.abs(position.yPm()) <= FARTHEST_PM
        && Math.abs(position.zPm()) <= FARTHEST_PM;
  }

  private boolean tooLong(Path path) {
    double tile = HeightGrid.SIDE * (double) model.cellPm();
    return path.planLength() > LONGEST_MOVE_IN_TILES_OF_CAP * model.limits().tiles() * tile;
  }

  /** A move with an unknown coordinate. */
  private void unmeasurable(Move move, Surface surface, ContactBasis basis, OptionalLong below) {
    boolean endsTell = move.arc().isEmpty() || move.modes().plane().is(Modes.Plane.XY);
    boolean knowsZ = move.from().knows(Axis.Z) && move.to().knows(Axis.Z) && endsTell;
    if (knowsZ
        && below.isPresent()
        && Math.min(move.from().zPm(), move.to().zPm()) >= below.getAsLong()) {
      passes.end(move.at());
      out.put(idle(move, Contact.NO, basis));
      return;
    }
    boolean knowsXy =
        move.from().knowsXy() && move.to().knowsXy() && near(move.from()) && near(move.to());
    Optional<Cutter> cutter = cutter(move);
    if (knowsXy && endsTell && cutter.isPresent() && !tooLong(Path.of(move))) {
      if (!surface.lost()) {
        surface.lose(Path.of(move), cutter.get().radiusPm());
      }
    } else {
      notFollowed.lose(
          surface, move.at(), "a coordinate of a feed move is not known" + unknownAxes(move));
    }
    notTold(move, ContactBasis.POSITION_UNKNOWN);
  }

  /** The axes of which it is not known where a move begins or ends on them, in brackets. */
  private static String unknownAxes(Move move) {
    String axes =
        Stream.of(Axis.X, Axis.Y, Axis.Z)
            .filter(axis -> !move.from().knows(axis) || !move.to().knows(axis))
            .map(Axis::name)
            .collect(Collectors.joining(", "));
    return axes.isEmpty() ? "" : " (" + axes + ")";
  }

  private void loseEverything(Place at, String why) {
    if (!everythingLost) {
      everythingLost = true;
      surfaces.values().forEach(Surface::lose);
      notFollowed.unknown(at, "the surface of the part: " + why);
      notFollowed.surface(at, "the surface of the part is not known: " + why);
    }
  }

  private Cut idle(Move move, Contact contact, ContactBasis basis) {
    return passes.idle(move, contact, basis, tool(move), false, Optional.empty());
  }

  /** A move whose contact can't be told. */
  private void notTold(Move move, ContactBasis why) {
    switch (why) {
      case NEVER_POSITIONED ->
          notFollowed.contactFor(
              move.at(), stockKey(surface(move.modes().workOffset().value().orElseThrow())));
      case TOOL_UNKNOWN -> notFollowed.contactFor(move.at(), shapeKey(move));
      default -> notFollowed.contact(move.at(), "whether a move cuts is not known: " + why.words());
    }
    passes.end(move.at());
    runLength = 0;
    out.put(idle(move, Contact.UNKNOWN, why));
  }

  /** A feed move that removes nothing. */
  private void air(Move move, ContactBasis basis, Path path) {
    passes.air(move.at(), path);
    boolean runsAtLevel = path.level() && path.movesInPlan();
    out.put(passes.idle(move, Contact.NO, basis, tool(move), runsAtLevel, features.of(path)));
  }

  // Contact.

  /** A move in contact over a surface that is not known: a level and a pass, but no heights. */
  private void blind(Move move, Surface surface, ContactBasis basis, Path path) {
    Optional<Level> level = Optional.empty();
    boolean again = false;
    if (path.level() && path.movesInPlan() && !surface.belowBottom(path.z0)) {
      Optional<Level> known = openLevel(move, path, surface).or(() -> latest(move, path, surface));
      again = known.isPresent();
      level = known.or(() -> makeLevel(move, path, surface));
    }
    take(
        new Contacted(
            move,
            path,
            surface.offset,
            basis,
            tool(move),
            Optional.empty(),
            List.of(),
            true,
            Engagement.UNKNOWN,
            level,
            again,
            approach,
            Removal.NOT_MEASURED));
  }

  private void take(Contacted contacted) {
    Surface surface = surface(contacted.offset());
    if (contacted.partlyUnknown() && surface.box.isEmpty() && !surface.lost()) {
      notFollowed.surfaceFor(contacted.move().at(), stockKey(surface));
    }
    if (!walls.keep(contacted, surface, features)) {
      notFollowed.cap(contacted.move().at(), "moves along walls", Walls.MOST);
    }
    surface.cutAt(contacted.path().lowestEnd());
    passes.take(contacted, sequence);
    if (contacted.level().isPresent()) {
      entry.reachedLevel();
    }
  }

  private void cut(Move move, Surface surface, ContactBasis basis, Path path, Cutter cutter) {
    depths.ifPresent(track -> track.begin(path));
    if (path.level() && path.movesInPlan()) {
      cutLevel(move, surface, basis, path, cutter);
    } else {
      cutSloping(move, surface, basis, path, cutter);
    }
    if (budget.reached()) {
      notFollowed.cap(move.at(), "tiles of the height grid", model.limits().tiles());
    }
    if (found.overflowed()) {
      notFollowed.cap(move.at(), "surfaces under one move", Removed.MOST_SURFACES);
    }
    if (depths.isPresent() && path.movesInPlan()) {
      List<DepthStretch> stretches =
          path.level() && cutter.leavesFloor()
              ? depths.get().stretches(move.lengthMm())
              : depths.get().largest(move.lengthMm());
      if (!stretches.isEmpty()) {
        out.put(new DepthsTaken(move.at(), stretches));
      }
    }
  }

  private void cutLevel(Move move, Surface surface, ContactBasis basis, Path path, Cutter cutter) {
    extendRun(path);
    boolean makesLevel =
        !surface.belowBottom(path.z0) && (cutter.flat() || runLength >= 2 * cutter.radiusPm());
    Optional<Level> open = makesLevel ? openLevel(move, path, surface) : Optional.empty();
    Optional<Level> guess =
        makesLevel ? open.or(() -> latest(move, path, surface)) : Optional.empty();
    boolean terrace = makesLevel && cutter.leavesFloor();
    int id = terrace ? guess.map(level -> level.id).orElse(levels.nextId()) : Cut.NO_LEVEL;
    surface.cut(path, cutter, id, Cut.NO_LEVEL, found);
    Engagement engagement = surface.engagement.atLevel(path, cutter, found, surface.box);
    if ((!engagement.contact() || engagement.spring()) && found.otherLevel() > 0) {
      passLost(move, surface, levels.get(found.otherLevel()).writtenZPm);
    }
    if (!engagement.contact() && !found.sawLost()) {
      air(move, basis, path);
      return;
    }
    Optional<Level> known =
        terrace && open.isEmpty() ? connected(move, path, surface, guess) : guess;
    Optional<Level> level =
        makesLevel ? known.or(() -> makeLevel(move, path, surface)) : Optional.empty();
    if (terrace) {
      settle(surface, path, cutter, id, level.map(l -> l.id).orElse(Cut.NO_LEVEL));
    }
    surface.index.add(path, cutter.radiusPm(), true);
    widestCorner = Math.max(widestCorner, cutter.leavesFloor() ? cutter.cornerPm() : 0);
    boolean spring = engagement.spring();
    take(
        new Contacted(
            move,
            path,
            surface.offset,
            basis,
            tool(move),
            Optional.of(cutter),
            spring ? List.of() : heights.of(move, surface, path, found),
            !spring && heights.partlyUnknown(found),
            engagement,
            level,
            known.isPresent(),
            approach,
            found.removal(path)));
  }

  /** Tells a move on a floor that was written to another height. */
  private void passLost(Move move, Surface surface, long floorWrittenZPm) {
    long written = move.writtenTo().zPm();
    if (!Level.writtenAlike(written, floorWrittenZPm)) {
      out.put(
          new PassLost(
              move.at(), operation, surface.offset, move.to().zPm(), written, floorWrittenZPm));
    }
  }

  /** Gives the floor to the level that the move turned out to make. */
  private void settle(Surface surface, Path path, Cutter cutter, int guessedId, int id) {
    if (id != guessedId) {
      surface.relabel(path, cutter, guessedId, id);
    }
    if (found.sawOther()) {
      surface.relabel(path, cutter, HeightGrid.WHICHEVER, id);
    }
  }

  /** The level that this move goes on with: one of its kind whose floor it touches. */
  private Optional<Level> connected(Move move, Path path, Surface surface, Optional<Level> guess) {
    if (found.sawOwn()) {
      return guess;
    }
    return found.otherLevel() == 0
        ? Optional.empty()
        : Optional.of(levels.get(found.otherLevel()))
            .filter(level -> level.is(key(move, path, surface), move.writtenTo().zPm()));
  }

  private void cutSloping(
      Move move, Surface surface, ContactBasis basis, Path path, Cutter cutter) {
    runLength = 0;
    int id = cutter.leavesFloor() ? entry.id(found) : Cut.NO_LEVEL;
    surface.cut(path, cutter, id, id, found);
    found.settleEntry();
    if (found.nothing() && !found.sawLost()) {
      air(move, basis, path);
      return;
    }
    Engagement engagement = Engagement.UNKNOWN;
    if (path.movesInPlan()) {
      engagement = surface.engagement.contouring(path, cutter, found);
      surface.index.add(path, cutter.radiusPm(), false);
    }
    take(
        new Contacted(
            move,
            path,
            surface.offset,
            basis,
            tool(move),
            Optional.of(cutter),
            heights.of(move, surface, path, found),
            heights.partlyUnknown(found),
            engagement,
            Optional.empty(),
            false,
            approach,
            found.removal(path)));
  }

  private void extendRun(Path path) {
    if (runZ != path.z0) {
      runLength = 0;
      runZ = path.z0;
    }
    runLength += path.planLength();
  }

  // Levels.

  private Level.Key key(Move move, Path path, Surface surface) {
    return new Level.Key(surface.offset, path.z0, move.modes().tool().value().orElse(NO_TOOL));
  }

  private Optional<Level> openLevel(Move move, Path path, Surface surface) {
    return passes
        .level()
        .filter(level -> level.is(key(move, path, surface), move.writtenTo().zPm()));
  }

  private Optional<Level> latest(Move move, Path path, Surface surface) {
    return levels
        .latest(key(move, path, surface))
        .filter(level -> level.is(key(move, path, surface), move.writtenTo().zPm()));
  }

  private Optional<Level> makeLevel(Move move, Path path, Surface surface) {
    Optional<Level> made =
        levels.make(
            key(move, path, surface),
            move.writtenTo().zPm(),
            tool(move),
            approach,
            move.at(),
            operation);
    if (made.isEmpty()) {
      notFollowed.cap(move.at(), "levels", model.limits().levels());
    }
    return made;
  }
}
