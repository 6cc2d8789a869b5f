package hairline.checks.cutting;

import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Published constants of the cutting force for a group of materials.
 *
 * @param kienzle the constants: ends from all materials of the group that are listed, typical
 *     values from one of them
 * @param source a sentence for reports: which materials, from where, and how far it was checked
 */
public record PublishedForce(Kienzle kienzle, String source) {

  /**
   * A row of a published table.
   *
   * @param group the group of the material in ISO 513
   * @param material its standard designation
   * @param kc11MPa specific cutting force k_c1.1, N/mm²
   * @param mc its exponent
   * @param source where the pair is from
   */
  public record Row(
      MaterialGroup group, String material, double kc11MPa, double mc, String source) {}

  private static final String TEXTBOOK = "German textbook tables, from memory";

  /** The pair of each group that gives the typical values comes first. */
  private static final List<Row> ROWS =
      List.of(
          // Of the steels the one in the middle at chips of a few µm.
          new Row(
              MaterialGroup.P,
              "16MnCr5",
              1800,
              0.26,
              "as quoted from Vargas et al., Procedia CIRP 82 (2019)"),
          new Row(MaterialGroup.P, "16MnCr5", 2100, 0.26, TEXTBOOK),
          new Row(MaterialGroup.P, "C45", 2220, 0.14, TEXTBOOK),
          new Row(MaterialGroup.P, "C45", 1700, 0.22, TEXTBOOK + ", newer ones"),
          new Row(MaterialGroup.P, "42CrMo4", 2500, 0.26, TEXTBOOK),
          new Row(MaterialGroup.M, "X5CrNi18-10", 2350, 0.21, TEXTBOOK),
          new Row(MaterialGroup.K, "GJL-250", 1160, 0.26, TEXTBOOK),
          new Row(MaterialGroup.N, "wrought aluminium", 780, 0.23, TEXTBOOK),
          new Row(MaterialGroup.N, "brass", 780, 0.18, TEXTBOOK),
          new Row(MaterialGroup.S, "TiAl6V4", 1370, 0.21, TEXTBOOK));

  /** Every row that the product knows. */
  public static List<Row> rows() {
    return ROWS;
  }

  /**
   * The constants of a group; none for hardened steel, for which no published pair was found. A
   * group with one row gets that row, and the source names its material.
   */
  public static Optional<PublishedForce> of(MaterialGroup group) {
    List<Row> rows = ROWS.stream().filter(row -> row.group() == group).toList();
    if (rows.isEmpty()) {
      return Optional.empty();
    }
    Row typical = rows.get(0);
    Kienzle kienzle =
        new Kienzle(
            around(typical.kc11MPa(), rows, Row::kc11MPa), around(typical.mc(), rows, Row::mc));
    String source =
        rows.stream()
            .map(row -> row.material() + " (" + row.source() + ")")
            .collect(Collectors.joining(", "));
    return Optional.of(new PublishedForce(kienzle, source));
  }

  private static Band around(double typical, List<Row> rows, ToDoubleFunction<Row> column) {
    DoubleSummaryStatistics ends = rows.stream().mapToDouble(column).summaryStatistics();
    return new Band(ends.getMin(), typical, ends.getMax());
  }
}
