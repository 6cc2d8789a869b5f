package hairline.checks.report;

import hairline.checks.finding.Assumption;
import hairline.checks.finding.Finding;
import hairline.checks.finding.Finding.BlockDelete;
import hairline.checks.finding.Level;
import hairline.checks.finding.NotChecked;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.ProgramResult;
import hairline.checks.finding.ProgramResult.SourceLine;
import hairline.checks.motion.Place;
import hairline.parser.Span;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A made-up run that has one of everything a report must show, hostile text included. */
final class SampleRun {
  /** What must come out of no report as it is: colours, a bell, a reordering mark, markup. */
  static final String HOSTILE =
      "\u001b[31m\u0007\u202e<b>&\"'{0}[x](http://evil) ]]>\u0000\u009b\ufeff";

  static final ReportOptions OPTIONS =
      new ReportOptions(
          "1.2.3",
          Optional.of(Level.WARNING),
          false,
          false,
          false,
          100,
          List.of(),
          Conditions.NONE);

  private SampleRun() {}

  static Place at(int file, int line, int column, int endColumn) {
    return new Place(file, line, new Span(column, endColumn));
  }

  private static Finding one(Occurrence.Builder occurrence) {
    Occurrence built = occurrence.build();
    return new Finding(built, built, 1, built.at(), BlockDelete.BOTH, Optional.empty());
  }

  static CheckedProgram faulty() {
    Occurrence first =
        Occurrence.of(
                "chip-below-minimum",
                Level.ERROR,
                at(0, 41, 14, 19),
                "largest chip 0.31 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm)")
            .fact("tool 3, 2 flutes: feed per tooth 180 mm/min / (30000 rpm × 2) = 3 µm")
            .fact("engagement 2.1° of arc")
            .cure("F265 or more at this speed makes a chip")
            .figure("chip", 0.31, "µm")
            .figure("minimum", 0.45, "µm")
            .operation(2)
            .cause("tool 3 at 30000 rpm")
            .build();
    Occurrence worst =
        Occurrence.of(
                "chip-below-minimum",
                Level.ERROR,
                at(0, 57, 1, 6),
                "largest chip 0.28 µm, minimum 0.45 µm (0.3 × edge radius 1.5 µm)")
            .build();
    Finding grouped =
        new Finding(first, worst, 15, at(0, 60, 1, 6), BlockDelete.BOTH, Optional.empty());
    Occurrence deletable =
        Occurrence.of(
                "warm-up-deletable", Level.WARNING, at(0, 45, 2, 5), "M93 can be switched off")
            .build();
    Finding switched =
        new Finding(
            deletable, deletable, 1, deletable.at(), BlockDelete.ONLY_OFF, Optional.empty());
    Occurrence inSub =
        Occurrence.of("cuts-air", Level.NOTE, at(1, 3, 1, 3), "30 % of 12 mm touch nothing")
            .build();
    Finding note = new Finding(inSub, inSub, 1, inSub.at(), BlockDelete.BOTH, Optional.empty());
    Occurrence deliberate =
        Occurrence.of("feed-below-edge-radius", Level.WARNING, at(0, 41, 14, 19), "0.9 µm, 1.5 µm")
            .build();
    Finding accepted =
        new Finding(
            deliberate,
            deliberate,
            1,
            deliberate.at(),
            BlockDelete.BOTH,
            Optional.of("burnishing pass"));
    return CheckedProgram.of(
        new ProgramResult(
            "parts/mixer insert.nc",
            List.of("parts/mixer insert.nc", "parts/O7777.nc"),
            List.of(grouped, switched, note),
            List.of(accepted),
            List.of(
                new NotChecked(
                    "runout-exceeds-feed",
                    "tools.3.runout is not on the sheet",
                    Optional.of(at(0, 12, 1, 3)),
                    40),
                new NotChecked(
                    "chip-below-minimum",
                    "tools.3.runout is not on the sheet",
                    Optional.of(at(0, 12, 1, 3)),
                    40),
                new NotChecked(
                    "outside-travel", "machine.travel.X is not on the sheet", Optional.empty(), 1),
                new NotChecked("", "Z is unknown from here on", Optional.of(at(0, 80, 4, 9)), 1)),
            List.of(new Assumption("limits.step_margin", "3", "default; common practice")),
            "parts/setup.yaml",
            false,
            Map.of(
                new SourceLine(0, 41), "N230\tG1 X1.2 Y3.14 F180.",
                new SourceLine(0, 45), "/M93",
                new SourceLine(0, 57), "X1.25",
                new SourceLine(1, 3), "G1 X3."),
            false,
            false,
            false),
        Optional.empty());
  }

  static CheckedProgram hostile() {
    return CheckedProgram.of(
        new ProgramResult(
            HOSTILE + ".nc",
            List.of(HOSTILE + ".nc"),
            List.of(
                one(
                    Occurrence.of("syntax", Level.ERROR, at(0, 1, 2, 4), "found " + HOSTILE)
                        .fact("fact " + HOSTILE)
                        .cure("cure " + HOSTILE))),
            List.of(),
            List.of(new NotChecked("syntax", "reason " + HOSTILE, Optional.empty(), 1)),
            List.of(new Assumption("what", "value " + HOSTILE, "because " + HOSTILE)),
            "sheet " + HOSTILE,
            false,
            Map.of(new SourceLine(0, 1), "(" + HOSTILE + "\ud800 幅\ud83d\ude00)"),
            true,
            true,
            true),
        Optional.empty());
  }

  static CheckedProgram embedded() {
    return CheckedProgram.of(
        new ProgramResult(
            "plain.nc",
            List.of("plain.nc"),
            List.of(),
            List.of(),
            List.of(
                new NotChecked(
                    "flex-exceeds-step",
                    "tools.1.diameter is not on the sheet",
                    Optional.empty(),
                    9),
                new NotChecked(
                    "step-below-smallest",
                    "machine.smallest_step is not on the sheet",
                    Optional.empty(),
                    9)),
            List.of(),
            "embedded default sheet",
            true,
            Map.of(),
            false,
            false,
            false),
        Optional.empty());
  }

  static CheckedProgram gone() {
    return CheckedProgram.failed(
        "gone.nc", new Trouble("input-missing", "`gone.nc` does not exist", "check the name"));
  }

  static final Verdict VERDICT = new Verdict(3, 1, 1, 2, 1, 1, 1, 6, 3);

  static List<CheckedProgram> all() {
    return List.of(gone(), faulty(), embedded(), hostile());
  }

  static String report(ReportFormat format, ReportOptions options, List<CheckedProgram> programs) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ReportWriter writer = format.writer(out, options);
    try {
      writer.begin();
      for (CheckedProgram program : programs) {
        writer.program(program);
      }
      writer.end(VERDICT);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString(StandardCharsets.UTF_8);
  }
}
