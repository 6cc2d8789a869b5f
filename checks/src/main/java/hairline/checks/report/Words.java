package hairline.checks.report;

import hairline.checks.finding.Finding;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Phrases that several formats share. */
final class Words {
  /** Said of a program in which something could not be followed. */
  static final String NOT_UNDERSTOOD =
      "not all was understood; what is unknown from where on stands under \"not checked\"";

  /** What a report must never let be forgotten. */
  static final String CAUTION =
      "a clean preflight replaces no prove-out; the machine builder's manual comes first";

  /** What somebody who stands at the machine must never forget. */
  static final List<String> CAUTIONS =
      List.of(
          CAUTION,
          "a new program is proved out above the part first, in single blocks and at reduced rapid",
          "guards and interlocks stay in force; local codes of safety hold before anything here",
          "figures are predictions from the sheet; the part is measured");

  /** What could not be read or followed, so that the check is not whole; a clause each. */
  static List<String> unread(ProgramResult result) {
    List<String> unread = new ArrayList<>();
    if (result.stepBudgetReached()) {
      unread.add("the budget of steps was used up; the rest is not checked");
    }
    if (result.macroUnread()) {
      unread.add("macro statements that are not read; what they do is not checked");
    }
    if (result.notUnderstood()) {
      unread.add(NOT_UNDERSTOOD);
    }
    return unread;
  }

  private Words() {}

  /** "1 error", "2 errors". */
  static String count(long count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  /** The findings of a run by level, e.g. "1 error, 2 warnings"; or "nothing found". */
  static String found(Verdict verdict) {
    List<String> parts = new ArrayList<>();
    if (verdict.errors() > 0) {
      parts.add(count(verdict.errors(), "error"));
    }
    if (verdict.warnings() > 0) {
      parts.add(count(verdict.warnings(), "warning"));
    }
    if (verdict.notes() > 0) {
      parts.add(count(verdict.notes(), "note"));
    }
    return parts.isEmpty() ? "nothing found" : String.join(", ", parts);
  }

  /** With which setting of the block delete switch a finding holds; empty for both. */
  static String blockDelete(Finding finding) {
    return switch (finding.blockDelete()) {
      case BOTH -> "";
      case ONLY_ON -> "only with block delete on";
      case ONLY_OFF -> "only with block delete off";
    };
  }

  /** The arithmetic of the worst occurrence as far as it is another than that of the first. */
  static List<String> worstFacts(Finding finding) {
    return finding.worst().facts().stream()
        .filter(fact -> !finding.first().facts().contains(fact))
        .toList();
  }

  /** The cure of the worst occurrence, where it is another than that of the first. */
  static Optional<String> worstCure(Finding finding) {
    return finding.worst().cure().filter(cure -> !finding.first().cure().equals(Optional.of(cure)));
  }

  /**
   * The line of the worst occurrence, and how many there are from which line on: "line 99, the
   * worst of 12 from line 97 on".
   */
  static String worstLine(ProgramResult result, Finding finding) {
    String worst = line(result, finding.worst().at());
    if (finding.count() <= 1) {
      return worst;
    }
    return finding.worst().at().equals(finding.at())
        ? worst + ", " + finding.count() + " times"
        : worst
            + ", the worst of "
            + finding.count()
            + " from "
            + line(result, finding.at())
            + " on";
  }

  /** "line 12", with the file where it is another than the program's own. */
  static String line(ProgramResult result, Place place) {
    return place.file() == 0
        ? "line " + place.line()
        : "line " + place.line() + " of " + file(result, place);
  }

  /** The same beside a finding, with the file too where it is another than the finding's. */
  static String line(ProgramResult result, Place place, Finding finding) {
    return place.file() == finding.at().file()
        ? line(result, place)
        : "line " + place.line() + " of " + file(result, place);
  }

  /** "lines 3 to 9", "line 3", "line 3 to line 5 of O7777.nc". */
  static String lines(ProgramResult result, Place first, Place last) {
    if (first.file() != last.file() || first.line() > last.line()) {
      return line(result, first) + " to " + line(result, last);
    }
    return first.line() == last.line()
        ? line(result, first)
        : "lines " + first.line() + " to " + line(result, last).substring("line ".length());
  }

  /** The name of the file that a place is in. */
  static String file(ProgramResult result, Place place) {
    return result.files().get(place.file());
  }
}
