package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A rule speaking once, before grouping.
 *
 * @param rule name of the rule
 * @param level error, warning or note, as the rule decided it
 * @param at what it points at
 * @param message the figure found and the figure allowed, with units; lower case, no final stop
 * @param facts the arithmetic and where the allowed figure comes from, a sentence each
 * @param cure what would cure it; empty where the message already says it
 * @param figures the numbers
 * @param operation the operation it belongs to, 0 for the whole program
 * @param cause what is the same for occurrences that are one fault, e.g. "tool 3 at 30000 rpm"
 * @param severity larger is worse; the worst occurrence of a group is named
 */
public record Occurrence(
    String rule,
    Level level,
    Place at,
    String message,
    List<String> facts,
    Optional<String> cure,
    List<Figure> figures,
    int operation,
    String cause,
    double severity) {

  public Occurrence {
    facts = List.copyOf(facts);
    figures = List.copyOf(figures);
  }

  /** Starts one. */
  public static Builder of(String rule, Level level, Place at, String message) {
    return new Builder(rule, level, at, () -> message);
  }

  /** Starts one whose message is asked for only where somebody will read it. */
  public static Builder of(String rule, Level level, Place at, Supplier<String> message) {
    return new Builder(rule, level, at, message);
  }

  /** Collects the parts that not every rule has. */
  public static final class Builder {
    private final String rule;
    private final Level level;
    private final Place at;
    private final Supplier<String> message;
    private final List<Supplier<String>> facts = new ArrayList<>();
    private final List<Figure> figures = new ArrayList<>();
    private Optional<Supplier<String>> cure = Optional.empty();
    private int operation;
    private String cause = "";
    private double severity;

    private Builder(String rule, Level level, Place at, Supplier<String> message) {
      this.rule = rule;
      this.level = level;
      this.at = at;
      this.message = message;
    }

    /** A sentence of arithmetic, or where the allowed figure comes from. */
    public Builder fact(String fact) {
      facts.add(() -> fact);
      return this;
    }

    /** The same, asked for only where somebody will read it. */
    public Builder fact(Supplier<String> fact) {
      facts.add(fact);
      return this;
    }

    /** What would cure it. */
    public Builder cure(String what) {
      cure = Optional.of(() -> what);
      return this;
    }

    /** The same, asked for only where somebody will read it. */
    public Builder cure(Supplier<String> what) {
      cure = Optional.of(what);
      return this;
    }

    /** A number the finding rests on. */
    public Builder figure(String name, double value, String unit) {
      figures.add(new Figure(name, value, unit));
      return this;
    }

    /** The operation it belongs to. */
    public Builder operation(int number) {
      operation = number;
      return this;
    }

    /** Occurrences with the same rule, operation and cause become one finding. */
    public Builder cause(String what) {
      cause = what;
      return this;
    }

    /** Larger is worse. */
    public Builder severity(double worse) {
      severity = worse;
      return this;
    }

    /** The occurrence. */
    public Occurrence build() {
      return new Occurrence(
          rule,
          level,
          at,
          message.get(),
          facts.stream().map(Supplier::get).toList(),
          cure.map(Supplier::get),
          figures,
          operation,
          cause,
          severity);
    }

    /** The occurrence without its texts and figures: one that is only counted. */
    Occurrence wordless() {
      return Occurrence.wordless(rule, level, at, operation, cause, severity);
    }
  }

  /** One without texts and figures. */
  static Occurrence wordless(
      String rule, Level level, Place at, int operation, String cause, double severity) {
    return new Occurrence(
        rule, level, at, "", List.of(), Optional.empty(), List.of(), operation, cause, severity);
  }
}
