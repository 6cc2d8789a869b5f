package hairline.checks.cli;

import hairline.checks.rules.RulePage;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code hairline explain}. */
@Command(
    name = "explain",
    description =
        "Prints the page of a rule: what it finds and why it matters, a program that triggers it"
            + " and its cure, what it reads and assumes, when to ignore it.")
final class ExplainCommand implements Action {
  @Parameters(
      paramLabel = "RULE",
      completionCandidates = RuleNames.All.class,
      description = "Its name, as reports give it.")
  private String rule = "";

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      description = "Headings in bold: ${COMPLETION-CANDIDATES} (auto).")
  private Colour colour = Colour.AUTO;

  @Override
  public ExitStatus run(Streams streams, Messages messages) throws Failed {
    RuleNames.known(List.of(rule));
    String page =
        RulePage.of(rule)
            .orElseThrow(() -> new IllegalStateException("the rule " + rule + " has no page"))
            .markdown();
    return Printed.text(
        streams,
        colour.on(streams) ? page.lines().map(this::line).collect(Collectors.joining()) : page);
  }

  private String line(String line) {
    return (line.startsWith("#") ? "\u001b[1m" + line + "\u001b[0m" : line) + "\n";
  }
}
