package hairline.checks.motion;

import hairline.checks.setup.CodeWord;
import hairline.checks.setup.Usage;
import hairline.parser.Value;
import hairline.parser.Word;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * Collects what a setup sheet must speak of: the tools with their speeds, and the codes and calls
 * whose meaning depends on the machine, the coolant codes among them. Keeps {@value #CODES_CAP}
 * codes.
 */
public final class UsageCollector implements EventSink {
  /** How many codes are kept. */
  static final int CODES_CAP = 1_000;

  private static final Set<BigDecimal> COOLANT =
      Set.of(BigDecimal.valueOf(7), BigDecimal.valueOf(8), BigDecimal.valueOf(9));

  private final ToolUses tools = new ToolUses();
  private final Set<CodeWord> codes = new LinkedHashSet<>();

  private final Set<String> workOffsets = new LinkedHashSet<>();
  private final Map<Integer, Integer> lengthOffsets = new HashMap<>();

  @Override
  public void accept(Event event) {
    tools.accept(event);
    if (event instanceof Move move) {
      move.modes().workOffset().value().ifPresent(workOffsets::add);
    } else if (event instanceof Event.LengthOffsetSet set && set.number() > 0) {
      set.modes().tool().value().ifPresent(t -> lengthOffsets.putIfAbsent(t, set.number()));
    } else if (event instanceof Event.BlockStarted started) {
      started.block().words().forEach(this::coolant);
    } else if (event instanceof Event.CodeUnknown unknown) {
      code(unknown.code());
    } else if (event instanceof Event.MachineCode machine) {
      code(machine.code());
    } else if (event instanceof Event.SubprogramMissing missing) {
      code("P" + missing.name().substring(1));
    }
  }

  private void coolant(Word word) {
    if (word.letter() == 'M' && word.value() instanceof Value.Literal literal) {
      CodeWord code = new CodeWord('M', literal.toBigDecimal());
      if (COOLANT.contains(code.number())) {
        add(code);
      }
    }
  }

  /** A letter and its number; what else an event may say is no code of a sheet. */
  private void code(String text) {
    try {
      add(new CodeWord(text.charAt(0), new BigDecimal(text.substring(1))));
    } catch (NumberFormatException e) {
      // An expression stands behind the letter.
    }
  }

  private void add(CodeWord code) {
    if (codes.size() < CODES_CAP) {
      codes.add(code);
    }
  }

  /**
   * What the program used.
   *
   * @param program its name for the reader of the sheet
   */
  public Usage usage(String program) {
    List<Usage.ToolUse> used = new ArrayList<>();
    for (ToolUse tool : tools.list()) {
      if (tool.number().isPresent() && tool.number().getAsInt() > 0) {
        int number = tool.number().getAsInt();
        Optional<Integer> offset = Optional.ofNullable(lengthOffsets.get(number));
        used.add(
            new Usage.ToolUse(
                number, tool.speedsRpm(), offset.map(OptionalInt::of).orElse(OptionalInt.empty())));
      }
    }
    return new Usage(program, used, List.copyOf(codes), List.copyOf(workOffsets));
  }
}
