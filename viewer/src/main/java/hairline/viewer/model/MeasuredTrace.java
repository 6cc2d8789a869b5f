package hairline.viewer.model;

import hairline.checks.stock.Section;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * A measured profile: heights along a line, as a profilometer writes them.
 *
 * @param name what to call it
 * @param points its points, by distance
 */
public record MeasuredTrace(String name, List<Point> points) {
  /** Most points read. */
  public static final int MOST_POINTS = 1_000_000;

  /**
   * A point.
   *
   * @param distanceMm along the line
   * @param heightUm height
   */
  public record Point(double distanceMm, double heightUm) {}

  /**
   * A trace laid on a section: a straight line taken off it so that what remains between both is
   * least, by squares.
   *
   * @param points the levelled points
   * @param offsetUm how much was taken off at distance 0
   * @param tiltUmPerMm how much more for each mm
   * @param rmsUm what remains: root of the mean of the squares
   * @param compared how many points lie over a surface, and so were compared
   */
  public record Levelled(
      List<Point> points, double offsetUm, double tiltUmPerMm, double rmsUm, int compared) {
    public Levelled {
      points = List.copyOf(points);
    }
  }

  /** Why a file is no trace. */
  public static final class NoTrace extends Exception {
    private static final long serialVersionUID = 1L;

    NoTrace(String sentence) {
      super(sentence);
    }
  }

  public MeasuredTrace {
    points = List.copyOf(points);
  }

  /**
   * Reads a table of two columns, distance and height, parted by comma, semicolon or tab (then a
   * number may have a decimal comma). A first line without numbers names the columns; a unit in it
   * (mm, µm, um or nm) counts, else distances are mm and heights µm. Lines that begin with # are
   * left out.
   *
   * @throws NoTrace if it is none, with a sentence that says where and why
   */
  public static MeasuredTrace read(Path file) throws NoTrace {
    List<String> lines;
    try {
      lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new NoTrace("cannot read `" + file + "`: it is not there, or no text in UTF-8");
    }
    Path name = file.getFileName();
    return of(name == null ? file.toString() : name.toString(), lines);
  }

  /**
   * The same from lines of text.
   *
   * @throws NoTrace if they are none
   */
  public static MeasuredTrace of(String name, List<String> lines) throws NoTrace {
    double distanceUnitMm = 1;
    double heightUnitUm = 1;
    List<Point> points = new ArrayList<>();
    boolean headed = false;
    for (int k = 0; k < lines.size(); k++) {
      String line = lines.get(k).strip();
      if (k == 0 && line.startsWith("\uFEFF")) {
        line = line.substring(1);
      }
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      boolean commaParts = line.indexOf(';') < 0 && line.indexOf('\t') < 0;
      String[] cells = line.split(commaParts ? "," : "[;\t]", -1);
      if (cells.length < 2) {
        throw new NoTrace(
            "line " + (k + 1) + " of `" + name + "` has one column; distance and height are due");
      }
      OptionalDouble distance = number(cells[0], !commaParts);
      OptionalDouble height = number(cells[1], !commaParts);
      if (distance.isEmpty() && height.isEmpty() && points.isEmpty() && !headed) {
        headed = true;
        distanceUnitMm = unitMm(cells[0], 1);
        heightUnitUm = unitMm(cells[1], 1e-3) * 1e3;
        continue;
      }
      if (distance.isEmpty() || height.isEmpty()) {
        throw new NoTrace(
            "line " + (k + 1) + " of `" + name + "`: `" + line + "` holds no two numbers");
      }
      if (points.size() == MOST_POINTS) {
        throw new NoTrace("`" + name + "` has more than " + MOST_POINTS + " points");
      }
      points.add(
          new Point(distance.getAsDouble() * distanceUnitMm, height.getAsDouble() * heightUnitUm));
    }
    if (points.size() < 2) {
      throw new NoTrace("`" + name + "` holds fewer than two points");
    }
    points.sort((a, b) -> Double.compare(a.distanceMm(), b.distanceMm()));
    return new MeasuredTrace(name, points);
  }

  private static OptionalDouble number(String cell, boolean decimalComma) {
    String text = cell.strip().replace('−', '-');
    if (decimalComma) {
      text = text.replace(',', '.');
    }
    try {
      double value = new BigDecimal(text).doubleValue();
      return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
    } catch (NumberFormatException e) {
      return OptionalDouble.empty();
    }
  }

  private static double unitMm(String heading, double otherwise) {
    String text = heading.toLowerCase(Locale.ROOT);
    if (text.matches(".*\\bnm\\b.*")) {
      return 1e-6;
    }
    if (text.matches(".*(\\bum\\b|[µμ]m).*")) {
      return 1e-3;
    }
    return text.matches(".*\\bmm\\b.*") ? 1 : otherwise;
  }

  /**
   * Lays it on a section.
   *
   * @param shiftMm the trace is moved along the line by so much first
   */
  public Levelled levelledOn(Section section, double shiftMm) {
    double n = 0;
    double sumX = 0;
    double sumD = 0;
    double sumXx = 0;
    double sumXd = 0;
    List<double[]> differences = new ArrayList<>();
    SectionHeights heights = new SectionHeights(section);
    double middle = section.line().lengthPm() / 2e9;
    for (Point point : points) {
      OptionalDouble height = heights.um(point.distanceMm() + shiftMm);
      if (height.isPresent()) {
        // About the middle, so that the sums do not cancel.
        double x = point.distanceMm() + shiftMm - middle;
        double difference = point.heightUm() - height.getAsDouble();
        n++;
        sumX += x;
        sumD += difference;
        sumXx += x * x;
        sumXd += x * difference;
        differences.add(new double[] {x, difference});
      }
    }
    double spread = n * sumXx - sumX * sumX;
    double tilt = n >= 2 && spread > 1e-12 * n * n ? (n * sumXd - sumX * sumD) / spread : 0;
    double level = n == 0 ? 0 : (sumD - tilt * sumX) / n;
    double squares = 0;
    for (double[] difference : differences) {
      double rest = difference[1] - level - tilt * difference[0];
      squares += rest * rest;
    }
    List<Point> levelled = new ArrayList<>(points.size());
    for (Point point : points) {
      double at = point.distanceMm() + shiftMm;
      levelled.add(new Point(at, point.heightUm() - level - tilt * (at - middle)));
    }
    return new Levelled(
        levelled, level - tilt * middle, tilt, n == 0 ? 0 : Math.sqrt(squares / n), (int) n);
  }
}
