package hairline.checks.setup;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.MaterialGroup;
import java.util.List;

/** Keys of the work material, {@code material}. */
public final class MaterialKeys {
  /** The material. */
  public static final Key<String> NAME =
      Key.of("material.name", Types.text(), "hardened tool steel, 54 HRC", "the material");

  /** ISO 513 group, picks the published defaults: P | M | K | N | S | H. */
  public static final Key<MaterialGroup> GROUP =
      Key.of(
          "material.group",
          Types.capitals(MaterialGroup.class),
          "H",
          "ISO 513 group, picks the published defaults: P | M | K | N | S | H");

  /** Specific cutting force kc1.1. */
  public static final Key<Band> SPECIFIC_FORCE_MPA =
      Key.of(
          "material.specific_force",
          Types.band(Dimension.STRESS, Bounds.positive("100000")),
          "2800 MPa",
          "specific cutting force kc1.1");

  /** Exponent mc of the specific cutting force. */
  public static final Key<Band> FORCE_EXPONENT =
      Key.of(
          "material.force_exponent",
          Types.band(Types.forceExponent()),
          "0.25",
          "exponent mc of the specific cutting force");

  /** Minimum chip thickness over edge radius. */
  public static final Key<Band> MINIMUM_CHIP_RATIO =
      Key.of(
          "material.minimum_chip_ratio",
          Types.band(Dimension.NUMBER, Bounds.between("0", "2")),
          "0.30",
          "minimum chip thickness over edge radius");

  /** Coefficient of linear expansion. */
  public static final Key<Double> EXPANSION_UM_PER_M_K =
      Key.of(
          "material.expansion",
          Types.quantity(Dimension.EXPANSION, Bounds.between("-10", "1000")),
          "11.5 um/(m K)",
          "coefficient of linear expansion");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          NAME,
          GROUP,
          SPECIFIC_FORCE_MPA,
          FORCE_EXPONENT,
          MINIMUM_CHIP_RATIO,
          EXPANSION_UM_PER_M_K);

  private MaterialKeys() {}
}
