package hairline.checks.cli;

import picocli.AutoComplete;
import picocli.CommandLine.Command;

/** {@code hairline completion}. */
@Command(
    name = "completion",
    description = {
      "Prints a script that completes commands and options in bash and zsh:",
      "  source <(hairline completion)"
    })
final class CompletionCommand implements Action {
  @Override
  public ExitStatus run(Streams streams, Messages messages) {
    return Printed.text(streams, AutoComplete.bash("hairline", Main.line()));
  }
}
