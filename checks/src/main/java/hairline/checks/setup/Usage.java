package hairline.checks.setup;

import java.util.List;
import java.util.OptionalInt;

/**
 * What a program uses, as far as a setup sheet must speak of it.
 *
 * @param program the program's name for the reader of the sheet
 * @param tools the tools, in the order of their first use
 * @param codes the M and G words and calls whose meaning depends on the machine, coolant included,
 *     in the order of their first use
 * @param workOffsets the work offsets in which it moves, in the order of their first use
 */
public record Usage(
    String program, List<ToolUse> tools, List<CodeWord> codes, List<String> workOffsets) {
  public Usage {
    workOffsets = List.copyOf(workOffsets);
    tools = List.copyOf(tools);
    codes = List.copyOf(codes);
  }

  /**
   * How a tool is used.
   *
   * @param number T number
   * @param speedsRpm the spindle speeds commanded with it
   * @param lengthOffset the H number first used with it
   */
  public record ToolUse(int number, List<Double> speedsRpm, OptionalInt lengthOffset) {
    public ToolUse {
      speedsRpm = List.copyOf(speedsRpm);
    }
  }
}
