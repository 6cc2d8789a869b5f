package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.finding.Figure;
import hairline.checks.finding.Finding;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.motion.Place;
import hairline.checks.rules.Rule;
import hairline.checks.rules.RuleInfo;
import hairline.checks.rules.RulePage;
import hairline.checks.rules.Rules;
import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * SARIF 2.1.0 (OASIS standard). What could not be decided is a result of kind {@code open}
 * (3.27.9), accepted findings are results with a suppression (3.35), programs that could not be
 * read are notifications (3.58). Results beyond {@link #MOST_RESULTS} are counted in a
 * notification.
 */
final class SarifReport implements ReportWriter {
  static final int MOST_RESULTS = 25_000;

  private static final int MOST_NOTIFICATIONS = 1_000;
  private static final String SCHEMA =
      "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";
  private static final String FINGERPRINT = "hairlineContent/v1";

  private record Notification(String level, String text, Optional<String> uri) {}

  private final JsonGenerator json;
  private final OutputStream out;
  private final ReportOptions options;
  private final Map<String, Integer> ruleIndex = new HashMap<>();
  private final List<Notification> notifications = new ArrayList<>();
  private long notificationsLeftOut;
  private int results;
  private long leftOut;

  SarifReport(OutputStream out, ReportOptions options) {
    this.out = out;
    this.options = options;
    this.json = JsonText.to(out);
  }

  @Override
  public void begin() throws IOException {
    json.writeStartObject();
    json.writeStringField("$schema", SCHEMA);
    json.writeStringField("version", "2.1.0");
    json.writeArrayFieldStart("runs");
    json.writeStartObject();
    json.writeObjectFieldStart("tool");
    json.writeObjectFieldStart("driver");
    json.writeStringField("name", "hairline");
    json.writeStringField("version", options.version());
    json.writeArrayFieldStart("rules");
    for (Rule rule : Rules.all()) {
      if (options.rules().contains(rule.info().name())) {
        ruleIndex.put(rule.info().name(), ruleIndex.size());
        rule(rule.info());
      }
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndObject();
    json.writeStringField("columnKind", "unicodeCodePoints");
    conditions();
    json.writeArrayFieldStart("results");
  }

  /** As properties of the run (3.8), and as notifications, which viewers show. */
  private void conditions() throws IOException {
    Conditions conditions = options.conditions();
    json.writeObjectFieldStart("properties");
    JsonText.texts(json, "only", conditions.only());
    JsonText.texts(json, "skip", conditions.skip());
    JsonText.texts(
        json,
        "whatIf",
        conditions.whatIf().stream().map(change -> Visible.of(change.toString())).toList());
    json.writeEndObject();
    for (Conditions.Named condition : conditions.all()) {
      notify("note", condition.name() + ": " + condition.text(), Optional.empty());
    }
  }

  private void rule(RuleInfo rule) throws IOException {
    json.writeStartObject();
    json.writeStringField("id", rule.name());
    text("shortDescription", rule.summary());
    Optional<RulePage> page = RulePage.of(rule.name());
    if (page.isPresent()) {
      text("fullDescription", page.get().sections().getOrDefault("What it finds", rule.summary()));
      json.writeObjectFieldStart("help");
      json.writeStringField("text", page.get().markdown());
      json.writeStringField("markdown", page.get().markdown());
      json.writeEndObject();
    }
    json.writeObjectFieldStart("defaultConfiguration");
    json.writeStringField("level", rule.level().word());
    json.writeEndObject();
    json.writeObjectFieldStart("properties");
    JsonText.texts(json, "tags", List.of(rule.group().name().toLowerCase(Locale.ROOT)));
    json.writeEndObject();
    json.writeEndObject();
  }

  @Override
  public void program(CheckedProgram program) throws IOException {
    if (program.trouble().isPresent()) {
      Trouble trouble = program.trouble().get();
      String text = "[" + trouble.code() + "] " + trouble.sentence() + "; " + trouble.cure();
      notify("error", text, Optional.of(Uris.of(program.name())));
      return;
    }
    ProgramResult result = program.result().orElseThrow();
    String uri = Uris.of(program.name());
    if (result.stepBudgetReached()) {
      notify("error", "the budget of steps was used up; the rest is not checked", Optional.of(uri));
    }
    if (result.macroUnread()) {
      notify("warning", "macro statements that are not read", Optional.of(uri));
    }
    if (result.notUnderstood()) {
      notify("error", Words.NOT_UNDERSTOOD, Optional.of(uri));
    }
    Fingerprints fingerprints = new Fingerprints(result);
    for (Finding finding : result.findings()) {
      finding(result, finding, fingerprints);
    }
    for (Finding finding : result.accepted()) {
      finding(result, finding, fingerprints);
    }
    for (NotChecked missing : result.notChecked()) {
      if (missing.rule().isEmpty()) {
        String where = missing.first().map(at -> Words.line(result, at) + ": ").orElse("");
        notify("note", where + missing.reason(), Optional.of(uri));
      } else {
        open(result, missing, uri);
      }
    }
  }

  private boolean full() {
    if (results < MOST_RESULTS) {
      results++;
      return false;
    }
    leftOut++;
    return true;
  }

  private void finding(ProgramResult result, Finding finding, Fingerprints fingerprints)
      throws IOException {
    String fingerprint = fingerprints.of(finding);
    if (full()) {
      return;
    }
    Occurrence first = finding.first();
    json.writeStartObject();
    rule(finding.rule());
    json.writeStringField("level", finding.level().word());
    text("message", message(result, finding));
    json.writeArrayFieldStart("locations");
    location(result, first.at(), Optional.empty());
    json.writeEndArray();
    if (!finding.worst().at().equals(first.at())) {
      json.writeArrayFieldStart("relatedLocations");
      location(result, finding.worst().at(), Optional.of("worst: " + finding.worst().message()));
      json.writeEndArray();
    }
    json.writeNumberField("occurrenceCount", Math.min(finding.count(), Integer.MAX_VALUE));
    json.writeObjectFieldStart("partialFingerprints");
    json.writeStringField(FINGERPRINT, fingerprint);
    json.writeEndObject();
    if (finding.acceptedBecause().isPresent()) {
      json.writeArrayFieldStart("suppressions");
      json.writeStartObject();
      json.writeStringField("kind", "inSource");
      JsonText.text(json, "justification", Visible.of(finding.acceptedBecause().get()));
      json.writeEndObject();
      json.writeEndArray();
    }
    json.writeObjectFieldStart("properties");
    for (Figure figure : first.figures()) {
      json.writeObjectFieldStart(figure.name());
      JsonText.number(json, "value", figure.value());
      json.writeStringField("unit", figure.unit());
      json.writeEndObject();
    }
    json.writeEndObject();
    json.writeEndObject();
  }

  private static String message(ProgramResult result, Finding finding) {
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

  private void open(ProgramResult result, NotChecked missing, String uri) throws IOException {
    if (full()) {
      return;
    }
    json.writeStartObject();
    rule(missing.rule());
    json.writeStringField("kind", "open");
    json.writeStringField("level", "none");
    text("message", "not checked: " + missing.reason());
    json.writeArrayFieldStart("locations");
    if (missing.first().isPresent()) {
      location(result, missing.first().get(), Optional.empty());
    } else {
      json.writeStartObject();
      json.writeObjectFieldStart("physicalLocation");
      artifact(uri);
      json.writeEndObject();
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
  }

  private void rule(String name) throws IOException {
    json.writeStringField("ruleId", name);
    Integer index = ruleIndex.get(name);
    if (index != null) {
      json.writeNumberField("ruleIndex", index);
    }
  }

  private void location(ProgramResult result, Place at, Optional<String> message)
      throws IOException {
    json.writeStartObject();
    json.writeObjectFieldStart("physicalLocation");
    artifact(Uris.of(Words.file(result, at)));
    json.writeObjectFieldStart("region");
    json.writeNumberField("startLine", at.line());
    json.writeNumberField("startColumn", at.span().column());
    json.writeNumberField("endColumn", at.span().endColumn());
    Optional<String> source =
        Optional.ofNullable(result.excerpts().get(new SourceLine(at.file(), at.line())));
    if (source.isPresent()) {
      text("snippet", cut(source.get(), at));
    }
    json.writeEndObject();
    json.writeEndObject();
    if (message.isPresent()) {
      text("message", message.get());
    }
    json.writeEndObject();
  }

  /** The characters of the region itself (3.30.13). */
  private static String cut(String line, Place at) {
    int length = line.codePointCount(0, line.length());
    int from = line.offsetByCodePoints(0, Math.min(at.span().column() - 1, length));
    int to = line.offsetByCodePoints(0, Math.min(at.span().endColumn() - 1, length));
    return line.substring(from, to);
  }

  private void artifact(String uri) throws IOException {
    json.writeObjectFieldStart("artifactLocation");
    json.writeStringField("uri", uri);
    json.writeEndObject();
  }

  /**
   * A message or a multiformat string. In messages braces are doubled, because single ones are
   * placeholders (3.11.5), and nothing may look like a link (3.11.6).
   */
  private void text(String name, String text) throws IOException {
    boolean message = name.equals("message");
    StringBuilder lines = new StringBuilder();
    for (String line : text.split("\n", -1)) {
      String shown = name.equals("snippet") ? Visible.oneForOne(line) : Visible.of(line);
      lines.append(lines.length() == 0 ? "" : "\n");
      lines.append(
          message ? shown.replace("{", "{{").replace("}", "}}").replace("](", "] (") : shown);
    }
    json.writeObjectFieldStart(name);
    json.writeStringField("text", lines.toString());
    json.writeEndObject();
  }

  private void notify(String level, String text, Optional<String> uri) {
    if (notifications.size() < MOST_NOTIFICATIONS) {
      notifications.add(new Notification(level, text, uri));
    } else {
      notificationsLeftOut++;
    }
  }

  @Override
  public void end(Verdict verdict) throws IOException {
    json.writeEndArray();
    if (leftOut > 0) {
      notifications.add(
          new Notification(
              "warning",
              leftOut + " results are left out: a SARIF reader takes " + MOST_RESULTS + " at most",
              Optional.empty()));
    }
    if (notificationsLeftOut > 0) {
      notifications.add(
          new Notification(
              "note", notificationsLeftOut + " more notifications are left out", Optional.empty()));
    }
    notifications.add(new Notification("note", Words.CAUTION, Optional.empty()));
    json.writeArrayFieldStart("invocations");
    json.writeStartObject();
    json.writeBooleanField("executionSuccessful", verdict.exitStatus() < 2);
    json.writeNumberField("exitCode", verdict.exitStatus());
    json.writeArrayFieldStart("toolExecutionNotifications");
    for (Notification notification : notifications) {
      json.writeStartObject();
      json.writeStringField("level", notification.level());
      text("message", notification.text());
      if (notification.uri().isPresent()) {
        json.writeArrayFieldStart("locations");
        json.writeStartObject();
        json.writeObjectFieldStart("physicalLocation");
        artifact(notification.uri().get());
        json.writeEndObject();
        json.writeEndObject();
        json.writeEndArray();
      }
      json.writeEndObject();
    }
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
    json.writeEndArray();
    json.writeEndObject();
    json.writeRaw('\n');
    json.flush();
    out.flush();
  }
}
