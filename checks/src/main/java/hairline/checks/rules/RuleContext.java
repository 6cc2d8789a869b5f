package hairline.checks.rules;

import hairline.checks.budget.StepBudget;
import hairline.checks.cutting.Certainty;
import hairline.checks.finding.Accepts;
import hairline.checks.finding.Assumption;
import hairline.checks.finding.Collector;
import hairline.checks.finding.Level;
import hairline.checks.finding.Occurrence;
import hairline.checks.motion.Modal;
import hairline.checks.motion.Place;
import hairline.checks.setup.Key;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Origin;
import hairline.checks.setup.Resolved;
import hairline.checks.setup.Setup;
import hairline.checks.setup.Tool;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** What a rule has to hand during one run over one program, and where it speaks. */
public final class RuleContext {
  private final RuleInfo info;
  private final Level level;
  private final Setup setup;
  private final Stages stages;
  private final Collector collector;
  private final IntFunction<String> fileName;

  private long said;

  /** Values that are not given, and were told to be assumed; a few, asked for at every cut. */
  private final List<Resolved<?>> told = new ArrayList<>();

  /** Values that hold, of which there is nothing to tell any more. */
  private final Held held = new Held();

  /** Values by what was asked for them, the sheet or a tool, and their key. */
  private static final class Held {
    private static final int MOST = 16;
    private final Object[] owners = new Object[MOST];
    private final Key<?>[] keys = new Key<?>[MOST];
    private final Optional<?>[] values = new Optional<?>[MOST];
    private int count;

    /** The value; null where it isn't held. */
    // The same keys and tools are asked for at every cut; what is put in for a key has its type.
    @SuppressWarnings({"ReferenceEquality", "unchecked", "NullableOptional"})
    <T> @Nullable Optional<T> of(Object owner, Key<T> key) {
      for (int i = 0; i < count; i++) {
        if (keys[i] == key && owners[i] == owner) {
          return (Optional<T>) values[i];
        }
      }
      return null;
    }

    <T> Optional<T> hold(Object owner, Key<T> key, Optional<T> value) {
      if (value.isPresent() && count < MOST) {
        owners[count] = owner;
        keys[count] = key;
        values[count++] = value;
      }
      return value;
    }
  }

  RuleContext(
      RuleInfo info,
      Map<String, Level> levels,
      Setup setup,
      Stages stages,
      Collector collector,
      IntFunction<String> fileName) {
    this.fileName = fileName;
    this.info = info;
    this.level = levels.getOrDefault(info.name(), info.level());
    this.setup = setup;
    this.stages = stages;
    this.collector = collector;
  }

  /** The setup sheet; ask {@link #need} for values that the rule cannot do without. */
  public Setup setup() {
    return setup;
  }

  /** Time and warmth, at the start of the event in hand. */
  public Stages stages() {
    return stages;
  }

  /**
   * A value of the sheet that the rule cannot do without here. Where it is missing, the rule is
   * listed as not checked, with the key that would let it run; where a default or a published value
   * stands in, the report names it.
   */
  public <T> Optional<T> need(Resolved<T> wanted, Place at) {
    return need(wanted, Optional.of(at), String::valueOf);
  }

  /** The same for a key of the sheet itself; its default is printed as a user would type it. */
  public <T> Optional<T> need(Key<T> key, Place at) {
    Optional<T> known = held.of(setup, key);
    return known != null
        ? known
        : held.hold(setup, key, need(setup.resolve(key), Optional.of(at), key::format));
  }

  /** The same for a rule that cannot do anything without the key, whatever the line. */
  public <T> Optional<T> need(Key<T> key) {
    return need(setup.resolve(key), Optional.empty(), key::format);
  }

  /** The same for a key of a tool. */
  public <T> Optional<T> need(Tool tool, Key<T> key, Place at) {
    Optional<T> known = held.of(tool, key);
    return known != null
        ? known
        : held.hold(tool, key, need(tool.resolve(key), Optional.of(at), key::format));
  }

  private <T> Optional<T> need(
      Resolved<T> wanted, Optional<Place> at, Function<? super T, String> format) {
    if (wanted.value().isEmpty()) {
      said++;
      collector.notChecked(
          info.name(),
          wanted.path()
              + " is not on the sheet"
              + (wanted.source().isEmpty() ? "" : " (" + wanted.source() + ")"),
          at);
    } else if (wanted.origin() != Origin.GIVEN && !isTold(wanted)) {
      told.add(wanted);
      collector.assumed(
          new Assumption(wanted.path(), format.apply(wanted.value().get()), wanted.source()));
    }
    return wanted.value();
  }

  // The sheet gives the same object each time.
  @SuppressWarnings("ReferenceEquality")
  private boolean isTold(Resolved<?> wanted) {
    for (int i = 0; i < told.size(); i++) {
      if (told.get(i) == wanted) {
        return true;
      }
    }
    return false;
  }

  /**
   * A line as a text of a finding names it: "line 12", and "line 12 of main.nc" where that is
   * another file than the one the finding points into.
   */
  public String line(Place where, Place finding) {
    return line(where.file(), where.line(), finding);
  }

  /** The same for the line that stated an item of the modal state, or made it unknown. */
  public String line(Modal<?> item, Place finding) {
    return line(item.file(), item.line(), finding);
  }

  private String line(int file, int line, Place finding) {
    return "line " + line + (file == finding.file() ? "" : " of " + fileName.apply(file));
  }

  /** Begins an occurrence at the rule's own level. */
  public Occurrence.Builder occurrence(Place at, String message) {
    return Occurrence.of(info.name(), level, at, message);
  }

  /**
   * Begins an occurrence that is less than sure, such as a band of which the typical value fails
   * and the whole does not: one level below the rule's own.
   */
  public Occurrence.Builder lesserOccurrence(Place at, String message) {
    return Occurrence.of(info.name(), level.lower(), at, message);
  }

  /** The same, whose message is asked for only where somebody will read it. */
  public Occurrence.Builder occurrence(Place at, Supplier<String> message) {
    return Occurrence.of(info.name(), level, at, message);
  }

  /** The level of a banded comparison: the whole band fails, or only the typical value; or none. */
  public Optional<Occurrence.Builder> occurrence(
      Certainty certainty, Place at, Supplier<String> message) {
    return switch (certainty) {
      case CERTAIN -> Optional.of(occurrence(at, message));
      case LIKELY -> Optional.of(Occurrence.of(info.name(), level.lower(), at, message));
      default -> Optional.empty();
    };
  }

  /** Speaks. */
  public void report(Occurrence.Builder occurrence) {
    said++;
    collector.report(occurrence);
  }

  /**
   * Counts an occurrence at the rule's own level that is no worse than others and whose words
   * nobody will read, because others of the same fault were told before; where it tells that there
   * are none, the occurrence is yet to be reported.
   */
  boolean repeats(Place at, int operation, String cause) {
    boolean counted = collector.repeats(info.name(), level, at, operation, cause);
    if (counted) {
      said++;
    }
    return counted;
  }

  /** How often it has spoken so far, or said that it could not decide. */
  long said() {
    return said;
  }

  /** What other rules say of this line follows from what this one will say, later perhaps. */
  public void hideOthers(Place at) {
    collector.hideOthers(at);
  }

  /**
   * Lists the rule as not checked for this reason: a key, or a block that made something unknown.
   */
  public void notChecked(String reason, Place at) {
    said++;
    collector.notChecked(info.name(), reason, Optional.of(at));
  }

  /** The same whatever the line. */
  public void notChecked(String reason) {
    said++;
    collector.notChecked(info.name(), reason, Optional.empty());
  }

  /**
   * Whether the sheet says how finely the control stores a coordinate; where it doesn't, nothing is
   * rounded, and a rule that looks for what rounding does is listed as not checked.
   */
  public boolean knowsIncrement() {
    return setup.get(MachineKeys.INCH_RESOLUTION).isPresent()
        || need(MachineKeys.RESOLUTION).isPresent();
  }

  /** Hands on the error budget of a step. */
  public void budget(StepBudget budget) {
    collector.budget(budget);
  }

  /** The same, of which nothing is reported, not even what it could not decide. */
  RuleContext quiet() {
    return new RuleContext(
        info, Map.of(), setup, stages, new Collector(new Accepts(), Map.of()), fileName);
  }
}
