package hairline.checks.report;

import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.motion.Place;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/**
 * JUnit XML for CI services: a suite for each program, in it a case for each rule that was asked. A
 * rule with a finding at or above the failing level fails, one that could not decide is skipped.
 * XML 1.0 forbids most control characters even as references: all text passes {@link Visible}.
 */
final class JunitReport implements ReportWriter {
  private final Writer out;
  private final ReportOptions options;

  JunitReport(OutputStream out, ReportOptions options) {
    this.out = new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8));
    this.options = options;
  }

  @Override
  public void begin() throws IOException {
    out.write("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuites name=\"hairline\">\n");
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    if (program.trouble().isPresent()) {
      Trouble trouble = program.trouble().get();
      suite(program.name(), 1, 0, 1, 0);
      startCase(program.name(), "read");
      out.write(
          ">\n      <error type="
              + quoted(trouble.code())
              + " message="
              + quoted(trouble.sentence()));
      out.write(">" + escaped(trouble.cure()) + "</error>\n    </testcase>\n  </testsuite>\n");
      return;
    }
    ProgramResult result = program.result().orElseThrow();
    TreeMap<String, Case> cases = new TreeMap<>();
    options.rules().forEach(rule -> cases.put(rule, new Case()));
    for (Finding finding : result.findings()) {
      Case of = cases.computeIfAbsent(finding.rule(), rule -> new Case());
      (options.fails(finding.level()) ? of.failing : of.passing).add(finding);
    }
    List<String> unread = new ArrayList<>();
    for (NotChecked missing : result.notChecked()) {
      if (missing.rule().isEmpty()) {
        unread.add(missing(result, missing));
      } else {
        cases.computeIfAbsent(missing.rule(), rule -> new Case()).missing.add(missing);
      }
    }
    if (result.stepBudgetReached()) {
      unread.add("the budget of steps was used up; the rest is not checked");
    }
    if (result.macroUnread()) {
      unread.add("macro statements that are not read");
    }
    if (result.notUnderstood()) {
      unread.add(Words.NOT_UNDERSTOOD);
    }
    long failures = cases.values().stream().filter(c -> !c.failing.isEmpty()).count();
    long skipped = cases.values().stream().filter(Case::isSkipped).count();
    suite(program.name(), cases.size() + 1L, failures, 0, skipped);
    startCase(program.name(), "read");
    out.write(unread.isEmpty() ? "/>\n" : "");
    if (!unread.isEmpty()) {
      out.write(">\n      <system-out>" + escaped(String.join("\n", unread)) + "</system-out>\n");
      out.write("    </testcase>\n");
    }
    for (var one : cases.entrySet()) {
      write(result, one.getKey(), one.getValue());
    }
    out.write("    <system-out>" + escaped(Words.CAUTION) + "</system-out>\n");
    out.write("  </testsuite>\n");
  }

  private static final class Case {
    final List<Finding> failing = new ArrayList<>();
    final List<Finding> passing = new ArrayList<>();
    final List<NotChecked> missing = new ArrayList<>();

    boolean isSkipped() {
      return failing.isEmpty() && passing.isEmpty() && !missing.isEmpty();
    }
  }

  private void suite(String name, long tests, long failures, long errors, long skipped)
      throws IOException {
    out.write("  <testsuite name=" + quoted(name) + " tests=\"" + tests + "\"");
    out.write(" failures=\"" + failures + "\" errors=\"" + errors + "\"");
    out.write(" skipped=\"" + skipped + "\">\n");
    List<Conditions.Named> conditions = options.conditions().all();
    if (!conditions.isEmpty()) {
      out.write("    <properties>\n");
      for (Conditions.Named condition : conditions) {
        out.write("      <property name=" + quoted(condition.name()));
        out.write(" value=" + quoted(condition.text()) + "/>\n");
      }
      out.write("    </properties>\n");
    }
  }

  private void startCase(String program, String rule) throws IOException {
    out.write("    <testcase classname=" + quoted(program) + " name=" + quoted(rule));
  }

  private void write(ProgramResult result, String rule, Case one) throws IOException {
    startCase(result.program(), rule);
    if (one.failing.isEmpty() && one.passing.isEmpty() && one.missing.isEmpty()) {
      out.write("/>\n");
      return;
    }
    out.write(">\n");
    for (Finding finding : one.failing) {
      out.write("      <failure type=" + quoted(finding.level().word()) + " message=");
      out.write(quoted(where(result, finding.at()) + ": " + finding.first().message()));
      out.write(">" + escaped(details(result, finding)) + "</failure>\n");
    }
    if (one.isSkipped()) {
      NotChecked first = one.missing.get(0);
      out.write("      <skipped message=" + quoted(missing(result, first)) + "/>\n");
    }
    List<String> more = new ArrayList<>();
    for (Finding finding : one.passing) {
      more.add(
          finding.level().word()
              + " at "
              + where(result, finding.at())
              + ": "
              + details(result, finding));
    }
    for (NotChecked missing : one.missing) {
      more.add("not checked: " + missing(result, missing));
    }
    if (!more.isEmpty()) {
      out.write("      <system-out>" + escaped(String.join("\n", more)) + "</system-out>\n");
    }
    out.write("    </testcase>\n");
  }

  private static String missing(ProgramResult result, NotChecked missing) {
    return missing.reason()
        + missing.first().map(at -> "; " + Words.line(result, at)).orElse("")
        + (missing.count() > 1 ? " and " + (missing.count() - 1) + " more" : "");
  }

  private static String where(ProgramResult result, Place at) {
    return Words.file(result, at) + ":" + at.line() + ":" + at.span().column();
  }

  private static String details(ProgramResult result, Finding finding) {
    Occurrence first = finding.first();
    List<String> lines = new ArrayList<>();
    lines.add(first.message());
    lines.addAll(first.facts());
    first.cure().ifPresent(cure -> lines.add("cure: " + cure));
    if (finding.count() > 1) {
      lines.add(
          finding.count()
              + " times, up to "
              + Words.line(result, finding.last(), finding)
              + "; worst at "
              + Words.line(result, finding.worst().at(), finding)
              + ": "
              + finding.worst().message());
      lines.addAll(Words.worstFacts(finding));
      Words.worstCure(finding).ifPresent(cure -> lines.add("cure at the worst: " + cure));
    }
    String blockDelete = Words.blockDelete(finding);
    if (!blockDelete.isEmpty()) {
      lines.add("holds " + blockDelete);
    }
    return String.join("\n", lines);
  }

  private static String quoted(String text) {
    return "\"" + escaped(Visible.of(text)) + "\"";
  }

  /** Text of lines; what is special in XML as references, what is forbidden made visible. */
  private static String escaped(String text) {
    StringBuilder out = new StringBuilder(text.length() + 16);
    String next = "";
    for (String line : text.split("\n", -1)) {
      out.append(next);
      next = "\n";
      Visible.of(line)
          .codePoints()
          .forEach(
              c -> {
                switch (c) {
                  case '<' -> out.append("&lt;");
                  case '>' -> out.append("&gt;");
                  case '&' -> out.append("&amp;");
                  case '"' -> out.append("&quot;");
                  case '\'' -> out.append("&#39;");
                  default -> out.appendCodePoint(c);
                }
              });
    }
    return out.toString();
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    out.write("</testsuites>\n");
    out.flush();
  }
}
