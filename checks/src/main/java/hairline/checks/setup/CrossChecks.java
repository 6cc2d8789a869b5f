package hairline.checks.setup;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Whether the values of a sheet agree with each other, ISO 13399 for tools. */
final class CrossChecks {
  private final Setup setup;
  private final Problems problems;

  private CrossChecks(Setup setup, Problems problems) {
    this.setup = setup;
    this.problems = problems;
  }

  static void check(Setup setup, Problems problems) {
    CrossChecks checks = new CrossChecks(setup, problems);
    checks.spindle();
    checks.codes();
    checks.stock();
    setup.tools().forEach(checks::tool);
  }

  private void spindle() {
    notAbove(SpindleKeys.MIN_SPEED_RPM, SpindleKeys.MAX_SPEED_RPM);
    notAbove(SpindleKeys.WARM_UP_MIN_SPEED_RPM, SpindleKeys.MAX_SPEED_RPM);
    notAbove(SpindleKeys.WARM_UP_SPEED_RPM, SpindleKeys.MAX_SPEED_RPM);
    notAbove(SpindleKeys.WARM_UP_MIN_SPEED_RPM, SpindleKeys.WARM_UP_SPEED_RPM);
  }

  private void notAbove(Key<Double> lower, Key<Double> upper) {
    Optional<Double> low = setup.values().given(lower);
    Optional<Double> high = setup.values().given(upper);
    if (low.isPresent() && high.isPresent() && low.get() > high.get()) {
      add(
          setup.values(),
          lower,
          "`"
              + lower.path()
              + "` ("
              + lower.format(low.get())
              + ") is above `"
              + upper.path()
              + "` ("
              + upper.format(high.get())
              + ")",
          "one of the two is to change");
    }
  }

  private void codes() {
    Map<CodeWord, Key<?>> seen = new HashMap<>();
    for (Key<List<CodeWord>> key :
        List.of(
            CodeKeys.WARM_UP,
            CodeKeys.MEASURE_TOOL,
            CodeKeys.COOLANT_ON,
            CodeKeys.COOLANT_OFF,
            CodeKeys.IGNORE)) {
      for (CodeWord word : setup.values().given(key).orElse(List.of())) {
        Key<?> first = seen.putIfAbsent(word, key);
        if (first != null) {
          add(
              setup.values(),
              key,
              "`" + key.path() + "`: " + word + " stands under `" + first.path() + "` already",
              "a code has one meaning");
        }
      }
    }
  }

  private void stock() {
    Optional<Length> top = setup.values().given(StockKeys.TOP);
    Optional<Length> bottom = setup.values().given(StockKeys.BOTTOM);
    if (top.isPresent() && bottom.isPresent() && bottom.get().compareTo(top.get()) >= 0) {
      add(
          setup.values(),
          StockKeys.BOTTOM,
          "`stock.bottom` (" + bottom.get() + ") is not below `stock.top` (" + top.get() + ")",
          "Z points up, out of the part");
    }
  }

  private void tool(Tool tool) {
    Optional<Length> diameter = tool.values().given(ToolKeys.DIAMETER);
    Optional<Length> cornerRadius = tool.values().given(ToolKeys.CORNER_RADIUS);
    Optional<ToolShape> shape = tool.values().given(ToolKeys.SHAPE);
    if (diameter.isPresent() && cornerRadius.isPresent()) {
      long twice = 2 * cornerRadius.get().pm();
      boolean ball = shape.equals(Optional.of(ToolShape.BALL));
      if (twice > diameter.get().pm() || (ball && twice != diameter.get().pm())) {
        add(
            tool,
            ToolKeys.CORNER_RADIUS,
            cornerRadius.get() + " with a diameter of " + diameter.get(),
            ball
                ? "a ball tool has half its diameter, RE = DC/2"
                : "at most half the diameter, RE ≤ DC/2");
      }
    }
    if (cornerRadius.equals(Optional.of(Length.ZERO))
        && shape.equals(Optional.of(ToolShape.BULL))) {
      add(
          tool,
          ToolKeys.CORNER_RADIUS,
          "0 mm on a bull tool",
          "a bull tool has one; else it is flat");
    }
    Optional<Length> neck = tool.values().given(ToolKeys.NECK_DIAMETER);
    if (diameter.isPresent() && neck.isPresent() && neck.get().compareTo(diameter.get()) >= 0) {
      add(
          tool,
          ToolKeys.NECK_DIAMETER,
          neck.get() + " with a cutting diameter of " + diameter.get(),
          "a neck is thinner than the cutting diameter, DN < DC; a tool without one has no neck");
    }
    Optional<Length> reach = tool.values().given(ToolKeys.NECK_LENGTH);
    Optional<Length> cutting = tool.values().given(ToolKeys.CUTTING_LENGTH);
    if (reach.isPresent() && cutting.isPresent() && reach.get().compareTo(cutting.get()) < 0) {
      add(
          tool,
          ToolKeys.NECK_LENGTH,
          reach.get() + " with a cutting length of " + cutting.get(),
          "it counts from the tip, flutes included, LU ≥ APMX");
    }
    Optional<LengthBand> edge = tool.values().given(ToolKeys.EDGE_RADIUS);
    if (diameter.isPresent()
        && edge.isPresent()
        && 2 * edge.get().high().pm() > diameter.get().pm()) {
      add(
          tool,
          ToolKeys.EDGE_RADIUS,
          edge.get().high() + " with a diameter of " + diameter.get(),
          "this is the rounding of the cutting edge, a few micrometres, not the corner");
    }
  }

  /** Where both are given, each difference of neighbouring levels is the step. */
  static void check(Feature feature, SourcePosition position, Problems problems) {
    if (feature.step().isEmpty() || feature.levels().size() < 2) {
      return;
    }
    List<Length> sorted = new ArrayList<>(feature.levels());
    Collections.sort(sorted);
    for (int i = 1; i < sorted.size(); i++) {
      Length difference = new Length(sorted.get(i).pm() - sorted.get(i - 1).pm());
      if (!difference.equals(feature.step().get())) {
        problems.add(
            position,
            "`job.features."
                + feature.name()
                + ".step` ("
                + feature.step().get()
                + ") differs from a step of its `levels` ("
                + difference
                + ")",
            "one of the two is to go");
        return;
      }
    }
  }

  private void add(Tool tool, Key<?> key, String sentence, String cure) {
    add(tool.values(), key, "`" + tool.path(key) + "`: " + sentence, cure);
  }

  private void add(Values values, Key<?> key, String sentence, String cure) {
    problems.add(values.position(key).orElse(sheet()), sentence, cure);
  }

  private SourcePosition sheet() {
    return new SourcePosition(setup.name(), 1, 1);
  }
}
