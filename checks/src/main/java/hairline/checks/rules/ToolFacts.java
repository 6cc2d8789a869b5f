package hairline.checks.rules;

import hairline.checks.cutting.EndMill;
import hairline.checks.motion.Place;
import hairline.checks.setup.Length;
import hairline.checks.setup.LengthBand;
import hairline.checks.setup.Tool;
import hairline.checks.setup.ToolKeys;
import hairline.checks.setup.ToolShape;
import java.util.Optional;

/** A tool of the sheet as the cutting functions take it; what lacks is listed as not checked. */
final class ToolFacts {
  private ToolFacts() {}

  /** The cutting end; edge radius and runout only where the sheet has them. */
  static Optional<EndMill> endMill(RuleContext context, Tool tool, Place at) {
    Optional<ToolShape> shape = context.need(tool, ToolKeys.SHAPE, at);
    Optional<Length> diameter = context.need(tool, ToolKeys.DIAMETER, at);
    Optional<Integer> flutes = context.need(tool, ToolKeys.FLUTES, at);
    if (shape.isEmpty() || diameter.isEmpty() || flutes.isEmpty()) {
      return Optional.empty();
    }
    Optional<Length> corner =
        shape.get() == ToolShape.BULL
            ? context.need(tool, ToolKeys.CORNER_RADIUS, at)
            : tool.get(ToolKeys.CORNER_RADIUS);
    return corner.map(
        radius ->
            new EndMill(
                EndMill.Shape.valueOf(shape.get().name()),
                diameter.get().mm(),
                radius.mm(),
                flutes.get(),
                tool.get(ToolKeys.EDGE_RADIUS).map(LengthBand::um),
                tool.get(ToolKeys.RUNOUT).map(LengthBand::um)));
  }
}
