package hairline.checks.report;

import com.fasterxml.jackson.core.JsonGenerator;
import hairline.checks.budget.BudgetedStep;
import hairline.checks.budget.Missing;
import hairline.checks.budget.Part;
import hairline.checks.budget.StepBudget;
import hairline.checks.budget.Uncertainty.Contribution;
import hairline.checks.finding.ProgramResult;
import java.io.IOException;
import java.util.Locale;

/** The error budget of a step in the JSON report; the names stand in the schema. */
final class BudgetJson {
  private static final double PM_PER_MM = 1e9;
  private static final double PM_PER_UM = 1e6;

  private BudgetJson() {}

  /** The fields of a budget but for its place. */
  static void write(JsonGenerator json, ProgramResult.Budget of) throws IOException {
    StepBudget budget = of.step();
    BudgetedStep step = budget.step();
    JsonText.text(json, "feature", step.feature());
    json.writeStringField("blockDelete", of.blockDelete().name().toLowerCase(Locale.ROOT));
    JsonText.number(json, "upperZMm", step.upperZPm() / PM_PER_MM);
    JsonText.number(json, "lowerZMm", step.lowerZPm() / PM_PER_MM);
    json.writeBooleanField("upperUncut", step.upperUncut());
    JsonText.number(json, "heightUm", step.heightPm() / PM_PER_UM);
    JsonText.number(json, "nominalUm", step.nominalPm() / PM_PER_UM);
    json.writeStringField("nominalFrom", step.declared() ? "sheet" : "program");
    if (budget.toleranceUm().isPresent()) {
      JsonText.number(json, "toleranceUm", budget.toleranceUm().getAsDouble());
    }
    if (budget.guardUm().isPresent()) {
      JsonText.number(json, "gaugeUm", budget.guardUm().getAsDouble());
    }
    JsonText.number(json, "errorUm", budget.errorUm().typical());
    JsonText.number(json, "errorLowUm", budget.errorUm().low());
    JsonText.number(json, "errorHighUm", budget.errorUm().high());
    JsonText.number(json, "driftUm", budget.driftUm());
    JsonText.number(json, "standardUncertaintyUm", budget.standardUncertaintyUm());
    json.writeStringField("decision", budget.decision().name().toLowerCase(Locale.ROOT));
    json.writeArrayFieldStart("parts");
    for (StepBudget.Weighed weighed : budget.weighed()) {
      part(json, weighed);
    }
    json.writeEndArray();
    json.writeArrayFieldStart("missing");
    for (Missing missing : budget.missing()) {
      json.writeStartObject();
      json.writeStringField("source", missing.source().key());
      JsonText.text(json, missing.isKey() ? "key" : "reason", missing.reason());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  private static void part(JsonGenerator json, StepBudget.Weighed weighed) throws IOException {
    Part part = weighed.part();
    json.writeStartObject();
    json.writeStringField("source", part.source().key());
    json.writeStringField("kind", kind(part));
    JsonText.number(json, "um", weighed.um());
    if (part instanceof Part.Drift drift) {
      JsonText.number(json, "lowUm", drift.um().low());
      JsonText.number(json, "highUm", drift.um().high());
    }
    if (part instanceof Part.Random random) {
      Contribution contribution = random.contribution();
      JsonText.number(json, "standardUncertaintyUm", contribution.standard());
      JsonText.number(json, "sensitivity", contribution.sensitivity());
      if (!Double.isInfinite(contribution.degreesOfFreedom())) {
        JsonText.number(json, "degreesOfFreedom", contribution.degreesOfFreedom());
      }
    }
    JsonText.number(json, "share", weighed.shareOfError());
    JsonText.number(json, "halvingGainsUm", weighed.halvingGainsUm());
    JsonText.text(json, "basis", part.basis());
    json.writeEndObject();
  }

  /** What kind of part it is, as the schema names it. */
  static String kind(Part part) {
    if (part instanceof Part.Known) {
      return "known";
    }
    return part instanceof Part.Random
        ? "random"
        : part instanceof Part.Drift ? "drift" : "drift either way";
  }
}
