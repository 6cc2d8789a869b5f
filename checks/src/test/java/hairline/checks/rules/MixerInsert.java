package hairline.checks.rules;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Writes the programs of the demo: a mould insert for a microfluidic mixer. The clean one is as a
 * careful shop would post it; the faulty one has faults planted where people make them, each
 * annotated.
 */
final class MixerInsert {
  private final boolean faulty;
  private final List<String> lines = new ArrayList<>();

  private MixerInsert(boolean faulty) {
    this.faulty = faulty;
  }

  static String clean() {
    return new MixerInsert(false).write();
  }

  static String faulty() {
    return new MixerInsert(true).write();
  }

  private String write() {
    add("%");
    add("O100 (mould insert for a microfluidic mixer)");
    add("(a demo: the part, the machine and the tools are invented)");
    add("G21 G90 G17 G94");
    add("G54");
    add("(warm-up)");
    add("S30000 M3");
    if (!faulty) {
      add("M71");
    }
    roughFrame();
    cascade();
    ladder();
    basin();
    add("M9");
    add("M5");
    add("G0 Z10.");
    add("M30");
    add("%");
    return String.join("\n", lines) + "\n";
  }

  private void tool(int number, String name, String speed, boolean lengthOffset) {
    add("(tool " + number + ": " + name + ")");
    add("T" + number + " M6");
    add(speed);
    add("M72");
    add("M8");
    if (lengthOffset) {
      add("G0 G43 H" + number + " Z10.");
    }
  }

  /** A frame around the insert, 0.4 mm deep in two levels. */
  private void roughFrame() {
    tool(1, "frame", "S12000 M3", true);
    for (String z : List.of("-0.2", "-0.4")) {
      for (String y : List.of("3.5", "-3.5")) {
        add("G0 X-8. Y" + y);
        add("Z1.");
        add("Z" + z);
        add("G1 X8. F240.");
        add("G0 Z1.");
      }
    }
    add("G0 Z10.");
  }

  /** Four terraces, 4 µm apart, a millimetre wide each. */
  private void cascade() {
    tool(3, "terraces", "S50000 M3", true);
    String[] levels = {"-0.004", "-0.008", "-0.012", "-0.016"};
    for (int i = 0; i < levels.length; i++) {
      boolean slip = faulty && i == 1;
      terrace(
          -2 + i,
          slip ? "-0.00805" : levels[i],
          slip
              ? " ; expect digits-below-resolution warning @4: Z-0.00805 is stored as -0.0081 mm"
              : faulty && i == 0 ? " ; expect warm-up-missing error x1994: 720 s asked" : "",
          "F400.",
          "");
    }
  }

  /** Three terraces with steps of 4, 4 and 6 µm. */
  private void ladder() {
    add("(inlet ladder)");
    String feed = faulty ? "F18." : "F400.";
    String rubs =
        " ; expect chip-below-minimum error x27: minimum 0.45 µm"
            + " | expect feed-below-edge-radius warning x27: edge radius 1.5 µm"
            + " | expect runout-exceeds-feed warning x27: runout 0.8 µm"
            + " | expect budget-exceeds-tolerance error x3: fails above 1.12 µm && spindle growth";
    terrace(2.5, "-0.004", "", feed, faulty ? rubs : "");
    terrace(3.5, "-0.008", "", feed, "");
    terrace(4.5, "-0.014", "", feed, "");
  }

  /** Passes along Y, side by side, from the middle of the strip's first tool width to its last. */
  private void terrace(double left, String z, String zNote, String feed, String feedNote) {
    for (int pass = 0; pass < 5; pass++) {
      double x = left + 0.2 + 0.15 * pass;
      boolean up = pass % 2 == 0;
      if (pass == 0) {
        add("G0 X" + number(x) + " Y-0.8");
        add("Z0.1");
        add("G1 Z" + z + " F60." + zNote);
      } else {
        add("G1 X" + number(x) + " " + feed);
      }
      add("G1 Y" + (up ? "0.8 " : "-0.8 ") + feed + (pass == 0 ? feedNote : ""));
    }
    add("G0 Z1.");
  }

  /** A shallow basin, finished by lines of a ball tool. */
  private void basin() {
    tool(
        5,
        "basin",
        faulty
            ? "S80000 M3 ; expect speed-out-of-range error @1: S80000 asks for 80000 rpm, highest speed 60000 rpm"
            : "S40000 M3",
        !faulty);
    for (int line = 0; line <= 40; line++) {
      double y = -0.8 + 0.04 * line;
      for (int i = 0; i <= 50; i++) {
        int point = line % 2 == 0 ? i : 50 - i;
        double x = -4.8 + 0.036 * point;
        double depth = 0.06 * bowl(x + 3.9, 0.9) * bowl(y, 0.8);
        String at = "X" + number(x) + " Y" + number(y);
        if (line == 0 && i == 0) {
          add("G0 " + (faulty ? "X-5 Y-0.8 ; expect missing-decimal-point error @4: X-5 " : at));
          add("Z0.1" + (faulty ? " ; expect length-offset-missing error: tool 5" : ""));
          add("G1 " + at + " Z" + number(-depth) + " F480.");
        } else {
          add(at + " Z" + number(-depth));
        }
      }
    }
    add("G0 Z1.");
  }

  private static double bowl(double offset, double half) {
    double part = offset / half;
    return Math.max(0, 1 - part * part);
  }

  /** Four digits after the point, the last of them a tenth of a micron, with a decimal point. */
  private static String number(double mm) {
    String text =
        BigDecimal.valueOf(mm)
            .setScale(4, RoundingMode.HALF_UP)
            .stripTrailingZeros()
            .toPlainString();
    return text.contains(".") ? text : text + ".";
  }

  private void add(String line) {
    lines.add(line);
  }
}
