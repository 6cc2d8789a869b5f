package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event.BecameUnknown;
import hairline.checks.motion.Event.BlockProblem;
import hairline.checks.motion.Event.BlockStarted;
import hairline.checks.motion.Event.Ended;
import hairline.checks.motion.Event.StepBudgetReached;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.checks.motion.Position;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.rules.RuleInfo.Scope;
import hairline.parser.Block;
import hairline.parser.Problem;
import java.util.BitSet;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** A statement of a macro language beyond the grammar. */
@AutoService(Rule.class)
public final class MacroUnread implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
              "macro-unread",
              Level.WARNING,
              Group.STATE,
              "a statement of a macro language is not read",
              Need.WORDS)
          .withoutLimit("a statement can be read or it cannot")
          .hiding(Scope.BLOCK, "*");

  /** So many statements are followed; of later ones it is not told what they made unknown. */
  private static final int MOST_FOLLOWED = 10_000;

  private static final Set<String> ORDER =
      Set.of("a condition", "a loop", "a jump", "a subprogram statement");

  @Override
  public RuleInfo info() {
    return INFO;
  }

  /** Where a statement stands. */
  private record Line(int file, int line) {
    static Line of(Place at) {
      return new Line(at.file(), at.line());
    }
  }

  /** One statement, and what came of it. */
  private static final class Statement {
    final BlockProblem event;
    final Set<String> madeUnknown = new LinkedHashSet<>();
    boolean carriedOut;
    long blocks;
    Optional<Place> first = Optional.empty();
    Optional<Place> last = Optional.empty();

    Statement(BlockProblem event) {
      this.event = event;
    }
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    Followed followed = new Followed(context);
    on.event(BlockProblem.class, followed::problem);
    on.event(BlockStarted.class, followed::started);
    on.event(BecameUnknown.class, followed::unknown);
    on.move(followed::moved);
    on.event(StepBudgetReached.class, budget -> followed.end());
    on.event(Ended.class, end -> followed.end());
  }

  /** The statements of one run. */
  private static final class Followed {
    private final RuleContext context;
    private final Map<Line, Statement> statements = new LinkedHashMap<>();
    private Optional<Statement> current = Optional.empty();
    // What was known ahead of a statement, as places in all(modes), and may be lost since.
    private final BitSet modesBefore = new BitSet();
    private final Set<Axis> axesBefore = EnumSet.noneOf(Axis.class);
    private boolean motionInDoubt;
    private @Nullable Move lastMove;
    private Optional<BlockStarted> block = Optional.empty();
    private boolean blockMoves;
    private boolean blockIsUnsure;

    Followed(RuleContext context) {
      this.context = context;
    }

    void problem(BlockProblem event) {
      if (event.problem().kind() != Problem.Kind.MACRO) {
        return;
      }
      context.hideOthers(event.at());
      if (statements.size() < MOST_FOLLOWED) {
        statements.put(Line.of(event.at()), new Statement(event));
      } else {
        context.report(begin(event).fact("what it made unknown was not followed"));
      }
    }

    void started(BlockStarted event) {
      if (statements.isEmpty()) {
        return;
      }
      closeBlock();
      Optional<Statement> statement =
          Optional.ofNullable(statements.get(Line.of(event.at())))
              .filter(s -> !event.block().problems().isEmpty());
      if (statement.isPresent()) {
        current = statement;
        statement.get().carriedOut = true;
        List<Modal<?>> modes = all(event.modes());
        for (int i = 0; i < modes.size(); i++) {
          if (!modes.get(i).isUnknown()) {
            modesBefore.set(i);
          }
        }
        Move before = lastMove;
        for (Axis axis : Axis.values()) {
          if (before != null && before.to().knows(axis)) {
            axesBefore.add(axis);
          }
        }
      } else {
        block = Optional.of(event);
        blockIsUnsure = lost(event.modes());
      }
    }

    /** Something known ahead of the statement is unknown, and was not stated anew. */
    private boolean lost(Modes now) {
      List<Modal<?>> after = all(now);
      return modesBefore.stream().anyMatch(i -> after.get(i).isUnknown());
    }

    private static List<Modal<?>> all(Modes modes) {
      return List.of(
          modes.units(),
          modes.plane(),
          modes.distance(),
          modes.arcDistance(),
          modes.feedMode(),
          modes.pathMode(),
          modes.workOffset(),
          modes.compensation(),
          modes.lengthOffset(),
          modes.cycleReturn(),
          modes.spindle(),
          modes.speedRpm(),
          modes.feed(),
          modes.tool(),
          modes.coolant());
    }

    void moved(Move move) {
      blockMoves = true;
      blockIsUnsure |= !axesBefore.isEmpty() && (lacks(move.from()) || lacks(move.to()));
      lastMove = move;
    }

    private boolean lacks(Position position) {
      for (Axis axis : axesBefore) {
        if (!position.knows(axis)) {
          return true;
        }
      }
      return false;
    }

    void unknown(BecameUnknown event) {
      List<String> what = List.of(event.what().split(", "));
      if (current.filter(s -> Line.of(event.at()).equals(Line.of(s.event.at()))).isPresent()) {
        current.get().madeUnknown.addAll(what);
        motionInDoubt |= what.contains("motion");
      } else if (lastMove != null) {
        // An axis that was known again is unknown for another reason now.
        Position now = lastMove.to();
        axesBefore.removeIf(axis -> now.knows(axis) && what.contains(axis.toString()));
      }
    }

    private void closeBlock() {
      if (block.isPresent() && current.isPresent()) {
        boolean asksForMove = motionInDoubt && !blockMoves && isBareMove(block.get().block());
        if (asksForMove || (blockMoves && blockIsUnsure)) {
          Statement statement = current.get();
          statement.blocks++;
          statement.first = statement.first.or(() -> block.map(BlockStarted::at));
          statement.last = block.map(BlockStarted::at);
        }
      }
      block = Optional.empty();
      blockMoves = false;
      blockIsUnsure = false;
    }

    /** Axis words under a motion in force; where it is not known, no move is told. */
    private static boolean isBareMove(Block block) {
      return block.words().stream().anyMatch(word -> "XYZ".indexOf(word.letter()) >= 0)
          && block.words().stream().noneMatch(word -> word.letter() == 'G');
    }

    void end() {
      closeBlock();
      statements.values().forEach(statement -> context.report(told(statement)));
      statements.clear();
      current = Optional.empty();
    }

    private Occurrence.Builder begin(BlockProblem event) {
      Problem problem = event.problem();
      return context
          .occurrence(event.at(), problem.expected() + " is not read: " + problem.found())
          .cure("the same spelled out in words and calls, or a second look by hand")
          .cause(problem.expected());
    }

    private Occurrence.Builder told(Statement statement) {
      Occurrence.Builder told = begin(statement.event);
      if (!statement.carriedOut) {
        return told.fact("no call reaches it as the program is written");
      }
      told.fact(
          statement.madeUnknown.isEmpty()
              ? "nothing that was known before it became unknown"
              : "unknown from here on: " + String.join(", ", statement.madeUnknown));
      if (ORDER.contains(statement.event.problem().expected())) {
        told.fact("the blocks behind it are taken in the order written, each once");
      }
      told.fact(
          statement.blocks == 0
              ? "no move behind it is left unchecked for it"
              : "not or not wholly checked for it: the moves of "
                  + statement.blocks
                  + (statement.blocks == 1 ? " block, at " : " blocks, from ")
                  + context.line(statement.first.orElseThrow(), statement.event.at())
                  + (statement.blocks == 1
                      ? ""
                      : " to " + context.line(statement.last.orElseThrow(), statement.event.at())));
      return told.figure("blocksUnchecked", (double) statement.blocks, "")
          .severity((double) statement.blocks);
    }
  }
}
