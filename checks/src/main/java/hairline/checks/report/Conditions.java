package hairline.checks.report;

import java.util.ArrayList;
import java.util.List;

/**
 * Under which conditions a run was made that make its result say less than that of a whole one; no
 * report may leave them out.
 *
 * @param only names of the rules that alone were asked; empty for all
 * @param skip names of the rules left out
 * @param whatIf the values of the sheet that were changed for this run
 */
public record Conditions(List<String> only, List<String> skip, List<WhatIf> whatIf) {
  /** A whole run with the sheets as they are. */
  public static final Conditions NONE = new Conditions(List.of(), List.of(), List.of());

  /**
   * A value changed for this run only.
   *
   * @param key dotted as on the sheet
   * @param value as it was typed
   */
  public record WhatIf(String key, String value) {
    @Override
    public String toString() {
      return key + " = " + value;
    }
  }

  /** One condition: what it is called, and what it says. */
  record Named(String name, String text) {}

  public Conditions {
    only = List.copyOf(only);
    skip = List.copyOf(skip);
    whatIf = List.copyOf(whatIf);
  }

  /** Those that hold: asked, left out, what if. */
  List<Named> all() {
    List<Named> all = new ArrayList<>();
    if (!only.isEmpty()) {
      all.add(new Named("asked", "only " + String.join(", ", only)));
    }
    if (!skip.isEmpty()) {
      all.add(new Named("left out", String.join(", ", skip)));
    }
    for (WhatIf change : whatIf) {
      all.add(new Named("what if", change.toString()));
    }
    return all;
  }
}
