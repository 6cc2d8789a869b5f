package hairline.checks.setup;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A setup sheet as read: machine, control, tools, material and limits of a job. Immutable. */
public final class Setup {
  private static final Map<CodeMeaning, Key<List<CodeWord>>> CODE_KEYS =
      new EnumMap<>(
          Map.of(
              CodeMeaning.WARM_UP, CodeKeys.WARM_UP,
              CodeMeaning.MEASURE_TOOL, CodeKeys.MEASURE_TOOL,
              CodeMeaning.COOLANT_ON, CodeKeys.COOLANT_ON,
              CodeMeaning.COOLANT_OFF, CodeKeys.COOLANT_OFF,
              CodeMeaning.IGNORE, CodeKeys.IGNORE));

  /** The name of the machine on the embedded sheet. */
  static final String UNKNOWN_MACHINE = "unknown machine";

  private final ResolvedOnce resolved = new ResolvedOnce();
  private final String name;
  private final boolean embedded;
  private final Values values;
  private final Map<Integer, Tool> tools;
  private final List<Feature> features;
  private final Map<String, Offset> offsets;
  private final Codes codes;
  private final Set<String> ruleNames;

  private Setup(Builder builder) {
    this.name = builder.name;
    this.embedded = builder.embedded;
    this.values = builder.values;
    this.tools = Collections.unmodifiableMap(new LinkedHashMap<>(builder.tools));
    this.features = List.copyOf(builder.features);
    this.offsets = Collections.unmodifiableMap(new LinkedHashMap<>(builder.offsets));
    Map<CodeMeaning, List<CodeWord>> words = new EnumMap<>(CodeMeaning.class);
    CODE_KEYS.forEach((meaning, key) -> words.put(meaning, values.given(key).orElse(List.of())));
    this.codes = new Codes(words);
    this.ruleNames = builder.ruleNames;
  }

  /** An empty sheet to fill, for tests and tools that make sheets; nothing is validated. */
  public static Builder builder() {
    return new Builder();
  }

  /** The sheet as the user named it, or what stands in its place. */
  public String name() {
    return name;
  }

  /** Whether this is the embedded default sheet, so that nothing is known of the real machine. */
  public boolean embedded() {
    return embedded;
  }

  /** The value that holds: given, published or default. */
  public <T> Optional<T> get(Key<T> key) {
    return resolve(key).value();
  }

  /** The value that holds, where it comes from, and the name of its key. */
  public <T> Resolved<T> resolve(Key<T> key) {
    return resolved.get(key, k -> Resolving.sheet(values, k));
  }

  /** The values that the sheet itself gives, each as {@code key = value}, in its order. */
  public List<String> givenValues() {
    return values.keys().stream().map(key -> key + " = " + format(key)).toList();
  }

  private <T> String format(Key<T> key) {
    return values.given(key).map(key::format).orElse("");
  }

  /**
   * The values that stand on this sheet as on the embedded one, while its machine still has the
   * name that stands there: nobody has put in a machine of the shop. Each by its key, as the sheet
   * would have it; none on the embedded sheet itself.
   */
  public Map<String, String> valuesOfUnknownMachine() {
    Map<String, String> same = new LinkedHashMap<>();
    if (!embedded && values.given(MachineKeys.NAME).equals(Optional.of(UNKNOWN_MACHINE))) {
      Values assumed = new SheetReader().embedded().values;
      for (Key<?> key : assumed.keys()) {
        if (!key.equals(MachineKeys.NAME) && values.given(key).equals(assumed.given(key))) {
          same.put(key.path(), format(key));
        }
      }
    }
    return same;
  }

  /**
   * Every value that holds because the sheet gives it, or that stands for one it does not give
   * (published, default), by what the user would type to name it: {@code machine.resolution},
   * {@code tools.3.edge_radius}, {@code offsets.G54.X}, {@code job.features.NAME.step}. In the
   * order of the sheet.
   */
  public Map<String, String> valuesInForce() {
    return InForce.of(this);
  }

  /** Where the sheet gives the value. */
  public Optional<SourcePosition> positionOf(Key<?> key) {
    return values.position(key);
  }

  /** The tools, in the order of the sheet. */
  public List<Tool> tools() {
    return List.copyOf(tools.values());
  }

  /** The tool of this T number. */
  public Optional<Tool> tool(int number) {
    return Optional.ofNullable(tools.get(number));
  }

  /** The features, in the order of the sheet. */
  public List<Feature> features() {
    return features;
  }

  /** The tolerance of a feature's step heights: its own, else the job's. */
  public Resolved<Tolerance> toleranceOf(Feature feature) {
    return feature
        .tolerance()
        .map(
            tolerance ->
                new Resolved<>(
                    "job.features." + feature.name() + ".tolerance",
                    Optional.of(tolerance),
                    Origin.GIVEN,
                    ""))
        .orElseGet(() -> resolve(JobKeys.TOLERANCE));
  }

  /** The work offset of this name, such as G54 or G59.1. */
  public Optional<Offset> offset(String offsetName) {
    return Optional.ofNullable(offsets.get(offsetName));
  }

  /** The work offsets, in the order of the sheet. */
  public List<Offset> offsets() {
    return List.copyOf(offsets.values());
  }

  /** What the machine's own codes mean. */
  public Codes codes() {
    return codes;
  }

  /**
   * The same sheet with one value changed.
   *
   * @param key dotted, such as {@code limits.step_margin}, {@code tools.3.edge_radius}, {@code
   *     offsets.G54.X} or {@code job.features.NAME.step}
   * @param value as the sheet would have it, such as {@code 2 um}
   * @throws SheetException if there is no such key, the value does not fit, or contradicts others
   */
  public Setup withOverride(String key, String value) throws SheetException {
    return WhatIf.apply(this, key, value);
  }

  Values values() {
    return values;
  }

  Set<String> ruleNames() {
    return ruleNames;
  }

  Builder toBuilder() {
    Builder builder = new Builder();
    builder.name = name;
    builder.embedded = embedded;
    builder.values = values;
    builder.ruleNames = ruleNames;
    builder.tools.putAll(tools);
    builder.features.addAll(features);
    builder.offsets.putAll(offsets);
    return builder;
  }

  /** Fills a sheet. */
  public static final class Builder {
    private String name = "sheet";
    private boolean embedded;
    private Values values = Values.NONE;
    private Set<String> ruleNames = Set.of();
    private final Map<Integer, Tool> tools = new LinkedHashMap<>();
    private final List<Feature> features = new ArrayList<>();
    private final Map<String, Offset> offsets = new LinkedHashMap<>();

    private Builder() {}

    /** Names the sheet. */
    public Builder named(String sheet) {
      name = sheet;
      return this;
    }

    /** Marks it as the embedded default sheet. */
    public Builder asEmbedded() {
      embedded = true;
      return this;
    }

    /** Gives a value. */
    public <T> Builder with(Key<T> key, T value) {
      values = values.with(key, value, Optional.empty());
      return this;
    }

    Builder knowing(Set<String> rules) {
      ruleNames = rules;
      return this;
    }

    Builder with(Values more) {
      values = values.with(more);
      return this;
    }

    /** Adds a tool; one of the same number is replaced. */
    public Builder tool(Tool tool) {
      tools.put(tool.number(), tool);
      return this;
    }

    /** Adds a feature. */
    public Builder feature(Feature feature) {
      features.add(feature);
      return this;
    }

    Builder replace(Feature old, Feature changed) {
      features.replaceAll(feature -> feature.equals(old) ? changed : feature);
      return this;
    }

    /** Adds a work offset; one of the same name is replaced. */
    public Builder offset(Offset offset) {
      offsets.put(offset.name(), offset);
      return this;
    }

    /** The sheet. */
    public Setup build() {
      return new Setup(this);
    }
  }
}
