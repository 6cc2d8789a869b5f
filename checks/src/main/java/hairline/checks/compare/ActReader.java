package hairline.checks.compare;

import hairline.checks.finding.Quantities;
import hairline.checks.motion.Event;
import hairline.checks.motion.EventSink;
import hairline.checks.motion.Modes;
import hairline.checks.motion.Move;
import hairline.checks.motion.Place;
import hairline.parser.Block;
import hairline.parser.Problem;
import hairline.parser.Value;
import hairline.parser.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Reads acts out of the interpreter's events. */
final class ActReader implements EventSink {
  /** Addresses that the interpreter has read into moves and modes. */
  private static final String INTERPRETED = "NOGMFSTXYZIJKHD";

  /** ISO 6983. */
  private static final Set<String> COOLANT_CODES = Set.of("M7", "M8", "M9");

  private final Consumer<Act> sink;
  private @Nullable Block block;

  ActReader(Consumer<Act> sink) {
    this.sink = sink;
  }

  @Override
  public void accept(Event event) {
    if (event instanceof Move move) {
      boolean circleUnknown = isArc(move) && move.arc().isEmpty();
      act(
          Act.Kind.MOVE,
          move.at(),
          move.modes(),
          Optional.of(move),
          circleUnknown ? words("NOGMFSTXYZABCHD") : "");
    } else if (event instanceof Event.BlockStarted started) {
      block = started.block();
      if (isUnread(started.block())) {
        act(Act.Kind.NOT_UNDERSTOOD, started.at(), started.modes(), plain(started.block().text()));
      }
    } else if (event instanceof Event.ModesChanged changed) {
      if (!State.coolant(changed.before()).equals(State.coolant(changed.after()))) {
        act(Act.Kind.COOLANT, changed.at(), changed.after(), State.coolant(changed.after()));
      }
    } else if (event instanceof Event.SpindleChanged changed) {
      act(Act.Kind.SPINDLE, changed.at(), changed.after(), State.spindle(changed.after()));
    } else if (event instanceof Event.ToolChanged changed) {
      act(Act.Kind.TOOL_CHANGE, changed.at(), changed.modes(), State.tool(changed.after()));
    } else if (event instanceof Event.Dwelled dwelled) {
      act(
          Act.Kind.DWELL,
          dwelled.at(),
          dwelled.modes(),
          dwelled.seconds().isPresent()
              ? Quantities.significant(dwelled.seconds().getAsDouble(), 9) + " s"
              : words("NOGMFST"));
    } else if (event instanceof Event.Stopped stopped) {
      act(Act.Kind.STOP, stopped.at(), stopped.modes(), stopped.code());
    } else if (event instanceof Event.MachineCode code) {
      if (!isOnlyCoolant(code)) {
        act(kind(code.meaning()), code.at(), code.modes(), code.code() + words(INTERPRETED));
      }
    } else if (event instanceof Event.ShiftSet shift) {
      act(Act.Kind.SHIFT, shift.at(), shift.modes(), shift.code() + words("NOGMFSTHD"));
    } else if (event instanceof Event.Ended ended) {
      act(Act.Kind.END, ended.at(), ended.modes(), ended.code().orElse("end of the text"));
    } else {
      notUnderstood(event);
    }
  }

  /** What the state of the coolant says already; own codes of a machine may do more. */
  private static boolean isOnlyCoolant(Event.MachineCode code) {
    return (code.meaning() == Event.MachineCode.Meaning.COOLANT_ON
            || code.meaning() == Event.MachineCode.Meaning.COOLANT_OFF)
        && COOLANT_CODES.contains(code.code());
  }

  /** What the interpreter did not follow: its words are all that can be held against others. */
  private void notUnderstood(Event event) {
    Optional<String> what = Optional.empty();
    if (event instanceof Event.CodeUnknown unknown) {
      what = Optional.of(unknown.code() + words(INTERPRETED));
    } else if (event instanceof Event.WordRefused refused) {
      what = Optional.of(refused.word());
    } else if (event instanceof Event.ArcImpossible || event instanceof Event.CoordinateTooLarge) {
      what = Optional.of(words("NO").strip());
    } else if (event instanceof Event.SubprogramMissing missing) {
      what = Optional.of("call of " + missing.name() + words("NOGMFST"));
    } else if (event instanceof Event.SubprogramEndless) {
      what = Optional.of("endless call" + words("NO"));
    } else if (event instanceof Event.CodesConflict conflict) {
      what = Optional.of(conflict.first() + " with " + conflict.second());
    } else if (event instanceof Event.StepBudgetReached) {
      what = Optional.of("the step budget is used up");
    }
    if (what.isPresent() && last != null) {
      act(Act.Kind.NOT_UNDERSTOOD, event.at(), last, what.get());
    }
  }

  private @Nullable Modes last;

  private void act(Act.Kind kind, Place at, Modes modes, String what) {
    act(kind, at, modes, Optional.empty(), what);
  }

  private void act(Act.Kind kind, Place at, Modes modes, Optional<Move> move, String what) {
    last = modes;
    if (block != null) {
      sink.accept(new Act(kind, at, block, modes, move, what));
    }
  }

  private static boolean isArc(Move move) {
    return move.kind() == Move.Kind.ARC_CW || move.kind() == Move.Kind.ARC_CCW;
  }

  private static Act.Kind kind(Event.MachineCode.Meaning meaning) {
    return switch (meaning) {
      case WARM_UP -> Act.Kind.WARM_UP;
      case MEASURE_TOOL -> Act.Kind.MEASURING;
      default -> Act.Kind.OTHER_CODE;
    };
  }

  private static boolean isUnread(Block block) {
    return block.words().isEmpty()
        && block.settings().isEmpty()
        && block.problems().stream()
            .anyMatch(p -> p.kind() == Problem.Kind.SYNTAX || p.kind() == Problem.Kind.MACRO);
  }

  /** A line without its comments, blanks and sequence number. */
  private static String plain(String text) {
    return text.replaceAll("\\([^)]*\\)|;.*", "")
        .replaceAll("\\s+", "")
        .toUpperCase(Locale.ROOT)
        .replaceFirst("^(/?)N\\d+", "$1");
  }

  /** The block's words but for these addresses, each after a blank, in the order of addresses. */
  private String words(String without) {
    if (block == null) {
      return "";
    }
    List<String> words = new ArrayList<>();
    for (Word word : block.words()) {
      if (without.indexOf(word.letter()) < 0) {
        words.add(" " + word.letter() + value(word.value()));
      }
    }
    return words.stream().sorted().collect(Collectors.joining());
  }

  private static String value(Value value) {
    return value instanceof Value.Literal literal
        ? literal.toBigDecimal().signum() == 0
            ? "0"
            : literal.toBigDecimal().stripTrailingZeros().toPlainString()
        : value.toString();
  }
}
