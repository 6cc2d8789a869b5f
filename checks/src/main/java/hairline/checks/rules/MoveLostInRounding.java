package hairline.checks.rules;

import com.google.auto.service.AutoService;
import hairline.checks.finding.Level;
import hairline.checks.finding.Quantities;
import hairline.checks.motion.Axis;
import hairline.checks.motion.Event.MoveVanished;
import hairline.checks.motion.Position;
import hairline.checks.rules.RuleInfo.Group;
import hairline.checks.rules.RuleInfo.Need;
import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;

/** A block moves an axis as written, yet no axis as stored. */
@AutoService(Rule.class)
public final class MoveLostInRounding implements Rule {
  private static final RuleInfo INFO =
      RuleInfo.of(
          "move-lost-in-rounding",
          Level.WARNING,
          Group.NUMBERS,
          "a block moves as written, and stands still as stored",
          Need.WORDS);

  @Override
  public RuleInfo info() {
    return INFO;
  }

  @Override
  public void begin(RuleContext context, Subscriptions on) {
    context
        .need(MachineKeys.RESOLUTION)
        .ifPresent(
            resolution -> on.event(MoveVanished.class, move -> speak(context, move, resolution)));
  }

  private static void speak(RuleContext context, MoveVanished move, Length resolution) {
    String written = written(move.writtenFrom(), move.writtenTo());
    context.report(
        context
            .occurrence(
                move.at(),
                "a move of "
                    + written
                    + " is stored as none, resolution "
                    + Quantities.um(resolution.pm()))
            .fact("both ends round to the same increment of machine.resolution")
            .cure("a move of a whole increment or more, or none")
            .figure("moved", movedUm(move.writtenFrom(), move.writtenTo()), "µm")
            .figure("resolution", resolution.um(), "µm")
            .operation(move.modes().operation())
            .cause("vanished"));
  }

  /** The longest of the moves lost, of any axis. */
  private static double movedUm(Position from, Position to) {
    long longestPm = 0;
    for (Axis axis : Axis.values()) {
      if (axis.linear() && from.knows(axis) && to.knows(axis)) {
        longestPm = Math.max(longestPm, Math.abs(to.get(axis) - from.get(axis)));
      }
    }
    return longestPm / 1e6;
  }

  private static String written(Position from, Position to) {
    StringBuilder text = new StringBuilder();
    for (Axis axis : Axis.values()) {
      if (axis.linear() && from.knows(axis) && to.knows(axis) && from.get(axis) != to.get(axis)) {
        text.append(text.isEmpty() ? "" : ", ")
            .append(axis.name())
            .append(' ')
            .append(Quantities.um(to.get(axis) - from.get(axis)));
      }
    }
    return text.toString();
  }
}
