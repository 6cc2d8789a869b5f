package hairline.checks.rules;

import hairline.checks.finding.Level;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What the comments of an annotated program expect of a check.
 *
 * <ul>
 *   <li>{@code ; expect RULE LEVEL @COLUMN xCOUNT: text && text} on the line of the finding; column
 *       and count may be left out (count 1); each text must stand in the message, a fact or the
 *       cure;
 *   <li>{@code ; expect below RULE …} on the line before;
 *   <li>several on one line with {@code | expect} between them;
 *   <li>{@code ; not checked RULE: text} anywhere: the rule is listed as not checked with that
 *       reason.
 * </ul>
 *
 * @param findings the findings expected, in the order of their lines
 * @param notChecked what must be listed as not checked
 */
record Annotations(List<Expected> findings, List<Unchecked> notChecked) {
  private static final Pattern EXPECT =
      Pattern.compile(
          "expect (?<below>below )?(?<rule>[a-z-]+) (?<level>error|warning|note)"
              + "(?: @(?<column>\\d+))?(?: x(?<count>\\d+))?(?:: (?<texts>.*))?");
  private static final Pattern NOT_CHECKED =
      Pattern.compile("not checked (?<rule>[a-z-]+)(?:: (?<text>.*))?");

  record Expected(
      String rule,
      Level level,
      int line,
      Optional<Integer> column,
      long count,
      List<String> texts) {}

  record Unchecked(String rule, String text) {}

  static Annotations read(String program) {
    List<Expected> findings = new ArrayList<>();
    List<Unchecked> notChecked = new ArrayList<>();
    List<String> lines = program.lines().toList();
    for (int line = 1; line <= lines.size(); line++) {
      String text = lines.get(line - 1);
      int comment = text.indexOf(';');
      if (comment < 0) {
        continue;
      }
      for (String part : text.substring(comment + 1).split("\\|", -1)) {
        readOne(part.strip(), line, findings, notChecked);
      }
    }
    return new Annotations(findings, notChecked);
  }

  private static void readOne(
      String part, int line, List<Expected> findings, List<Unchecked> notChecked) {
    Matcher expect = EXPECT.matcher(part);
    Matcher unchecked = NOT_CHECKED.matcher(part);
    if (expect.matches()) {
      findings.add(
          new Expected(
              expect.group("rule"),
              Level.valueOf(expect.group("level").toUpperCase(Locale.ROOT)),
              expect.group("below") == null ? line : line + 1,
              Optional.ofNullable(expect.group("column")).map(Integer::valueOf),
              Optional.ofNullable(expect.group("count")).map(Long::valueOf).orElse(1L),
              Optional.ofNullable(expect.group("texts"))
                  .map(texts -> List.of(texts.split(" && ", -1)))
                  .orElse(List.of())));
    } else if (unchecked.matches()) {
      notChecked.add(
          new Unchecked(
              unchecked.group("rule"), Optional.ofNullable(unchecked.group("text")).orElse("")));
    } else if (part.startsWith("expect") || part.startsWith("not checked")) {
      throw new IllegalArgumentException("line " + line + ": cannot read '" + part + "'");
    }
  }
}
