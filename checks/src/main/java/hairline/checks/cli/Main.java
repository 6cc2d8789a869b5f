package hairline.checks.cli;

import hairline.checks.report.ComparisonFormat;
import hairline.checks.report.ReportFormat;
import hairline.checks.report.WindowFormat;
import hairline.checks.setup.Nearest;
import java.io.OutputStreamWriter;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Where the program starts. */
@Command(
    name = "hairline",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      CheckCommand.class,
      BriefCommand.class,
      CompareCommand.class,
      WindowCommand.class,
      RulesCommand.class,
      ExplainCommand.class,
      InitCommand.class,
      ViewCommand.class,
      CompletionCommand.class
    },
    description = "Checks G-code part programs of micro-features before they run.",
    footer = {
      "",
      "A clean preflight replaces no prove-out; the machine builder's manual comes first."
    })
public final class Main {
  Main() {}

  /**
   * Starts the program.
   *
   * @param args the command line
   */
  public static void main(String[] args) {
    System.exit(run(Streams.ofProcess(), args));
  }

  /** Runs one command line and returns its exit status. */
  static int run(Streams streams, String... args) {
    Messages messages = new Messages(streams.err());
    ExitStatus status;
    try {
      status = command(streams, messages, args);
    } catch (Failed e) {
      messages.tell(e);
      status = e.status();
    } catch (OutOfMemoryError e) {
      Failed failed = Failed.because(e, Failure.OUT_OF_MEMORY, String.join(" ", args));
      messages.tell(failed);
      status = failed.status();
    } catch (RuntimeException | StackOverflowError | AssertionError e) {
      Failed failed = CheckRun.ownFault(e, "");
      messages.tell(failed);
      status = failed.status();
    }
    streams.out().flush();
    if (streams.out().failure().isPresent()) {
      Failed failed =
          Failed.because(
              streams.out().failure().get(),
              Failure.OUTPUT_FAILED,
              "standard output",
              Reasons.of(streams.out().failure().get()));
      messages.tell(failed);
      status = status.and(failed.status());
    }
    streams.err().flush();
    return status.code();
  }

  private static ExitStatus command(Streams streams, Messages messages, String... args)
      throws Failed {
    Optional<CheckCommand> usual = UsualLine.check(args);
    if (usual.isPresent()) {
      messages.verbose(usual.get().verbose());
      return usual.get().run(streams, messages);
    }
    PrintWriter out =
        new PrintWriter(new OutputStreamWriter(streams.out(), StandardCharsets.UTF_8));
    CommandLine line = line();
    line.setOut(out).setErr(streams.err());
    ParseResult parsed;
    try {
      parsed = line.parseArgs(args);
    } catch (ParameterException e) {
      throw wrongUsage(e);
    }
    if (CommandLine.executeHelpRequest(parsed) != null) {
      out.flush();
      return ExitStatus.CLEAN;
    }
    ParseResult last = parsed;
    while (last.hasSubcommand()) {
      last = last.subcommand();
    }
    if (!(last.commandSpec().userObject() instanceof Action action)) {
      throw Failed.of(Failure.NO_COMMAND);
    }
    messages.verbose(action.verbose());
    return action.run(streams, messages);
  }

  /** The commands with all that they have in common. */
  static CommandLine line() {
    CommandLine line = new CommandLine(new Main());
    line.setExpandAtFiles(false);
    line.setUsageHelpAutoWidth(false);
    line.setUsageHelpWidth(100);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(CommandLine.Help.Ansi.OFF));
    choice(line, FailOn.class);
    choice(line, Colour.class);
    choice(line, ReportFormat.class);
    choice(line, ComparisonFormat.class);
    choice(line, WindowFormat.class);
    choice(line, CompareCommand.FailOnWhat.class);
    choice(line, BriefCommand.Format.class);
    List<CommandLine> all = new ArrayList<>(line.getSubcommands().values());
    all.add(line);
    for (CommandLine command : all) {
      command
          .getCommandSpec()
          .usageMessage()
          .exitCodeListHeading(
              findsThings(command)
                  ? "%nExit status (if several apply: 4, 2, 3, 1, 0):%n"
                  : "%nExit status:%n")
          .exitCodeList(statuses(command))
          .optionListHeading("%nOptions:%n")
          .commandListHeading("%nCommands:%n");
      if (command != line) {
        command.getCommandSpec().mixinStandardHelpOptions(true);
        command.getCommandSpec().versionProvider(new Version());
      }
    }
    return line;
  }

  /** Whether a command may end with a status that tells of findings. */
  private static boolean findsThings(CommandLine command) {
    return command.getCommand() instanceof CheckCommand
        || command.getCommand() instanceof CompareCommand
        || command.getCommand() instanceof Main;
  }

  private static final String INCOMPLETE =
      "the program could not be read, or not all of it was understood (what was is told all the"
          + " same), or the output could not be written";

  /** With what a command may end. */
  private static Map<String, String> statuses(CommandLine command) {
    Map<String, String> statuses = new LinkedHashMap<>();
    Arrays.stream(ExitStatus.values())
        .sorted((a, b) -> Integer.compare(a.code(), b.code()))
        .forEach(status -> statuses.put(Integer.toString(status.code()), status.meaning()));
    if (command.getCommand() instanceof WindowCommand) {
      statuses.put(
          "0", "the windows are told, open or closed, and the whole program was understood");
      statuses.put("3", INCOMPLETE);
      statuses.remove("1");
    } else if (command.getCommand() instanceof BriefCommand) {
      statuses.put(
          "0", "the brief is written, whatever is found, and the whole program was understood");
      statuses.put("3", INCOMPLETE);
      statuses.remove("1");
    } else if (command.getCommand() instanceof CompareCommand) {
      statuses.put("0", "no difference, or with --fail-on finding no new finding");
      statuses.put("1", "a difference, or a new finding");
    } else if (!findsThings(command)) {
      boolean reads = command.getCommand() instanceof InitCommand;
      statuses.put("0", "done");
      statuses.remove("1");
      statuses.put("2", "wrong usage");
      statuses.put(
          "3",
          (reads ? "the program could not be read, or " : "") + "the output could not be written");
    }
    return statuses;
  }

  private static <E extends Enum<E>> void choice(CommandLine line, Class<E> type) {
    List<String> names = Arrays.stream(type.getEnumConstants()).map(Object::toString).toList();
    ITypeConverter<E> converter =
        text -> {
          for (E constant : type.getEnumConstants()) {
            if (constant.toString().equals(text)) {
              return constant;
            }
          }
          throw new TypeConversionException(
              "takes "
                  + String.join(", ", names)
                  + ", not `"
                  + text
                  + "`"
                  + Nearest.of(text, names).map(near -> "; nearest is " + near).orElse(""));
        };
    line.registerConverter(type, converter);
  }

  private static Failed wrongUsage(ParameterException e) {
    String command =
        e.getCommandLine().getParent() == null ? "" : e.getCommandLine().getCommandName() + " ";
    return Failed.because(e, Failure.WRONG_OPTION, sentence(e), command);
  }

  private static String sentence(ParameterException e) {
    if (e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty()) {
      String given = unmatched.getUnmatched().get(0);
      boolean option = given.startsWith("-");
      int equals = given.indexOf('=');
      String argument = option && equals > 0 ? given.substring(0, equals) : given;
      List<String> known = new ArrayList<>();
      if (option) {
        e.getCommandLine().getCommandSpec().optionsMap().keySet().forEach(known::add);
      } else {
        known.addAll(e.getCommandLine().getSubcommands().keySet());
      }
      if (!option && known.isEmpty()) {
        return "`" + argument + "` is one argument too many";
      }
      Optional<String> near = Nearest.of(argument, known);
      return (option ? "unknown option " : "unknown command ")
          + "`"
          + argument
          + "`"
          + near.map(n -> "; nearest is " + n).orElse("");
    }
    if (e instanceof MissingParameterException missing && !missing.getMissing().isEmpty()) {
      ArgSpec due = missing.getMissing().get(0);
      return "`"
          + due.paramLabel()
          + (due instanceof OptionSpec option ? "` behind `" + option.longestName() : "")
          + "` is missing";
    }
    String message = String.valueOf(e.getMessage());
    if (message.startsWith("Invalid value for option '") && message.contains("': takes ")) {
      int quote = message.indexOf('\'');
      return message.substring(quote + 1, message.indexOf('\'', quote + 1))
          + message.substring(message.indexOf("': ") + 2);
    }
    return message.isEmpty()
        ? "the command line can't be read"
        : Character.toLowerCase(message.charAt(0)) + message.substring(1);
  }
}
