package hairline.checks.cli;

import hairline.checks.rules.Rule;
import hairline.checks.rules.RuleInfo;
import hairline.checks.rules.Rules;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Command;

/** {@code hairline rules}. */
@Command(
    name = "rules",
    description = "Lists the rules by the question they belong to, with the level of each.")
final class RulesCommand implements Action {
  @Override
  public ExitStatus run(Streams streams, Messages messages) {
    StringBuilder text = new StringBuilder();
    int width = Rules.all().stream().mapToInt(r -> r.info().name().length()).max().orElse(0);
    Optional<RuleInfo.Group> group = Optional.empty();
    for (Rule rule : Rules.all()) {
      RuleInfo info = rule.info();
      if (!group.equals(Optional.of(info.group()))) {
        group = Optional.of(info.group());
        text.append(text.isEmpty() ? "" : "\n");
        text.append(info.group().name().toLowerCase(Locale.ROOT)).append('\n');
      }
      text.append(
          String.format(
              Locale.ROOT,
              "  %-7s  %-" + width + "s  %s\n",
              info.level().word(),
              info.name(),
              info.summary()));
    }
    text.append("\nhairline explain RULE prints the page of one.\n");
    return Printed.text(streams, text.toString());
  }
}
