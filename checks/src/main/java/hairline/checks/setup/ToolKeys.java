package hairline.checks.setup;

import hairline.checks.cutting.Band;
import java.util.List;

/** Keys of one tool of the list {@code tools}; symbols of ISO 13399 in capitals. */
public final class ToolKeys {
  /** T number. */
  public static final Key<Integer> NUMBER =
      Key.of("number", Types.integer(0, 99_999_999), "3", "T number");

  /** The tool, as the shop calls it. */
  public static final Key<String> NAME =
      Key.of("name", Types.text(), "flat end mill 0.4", "the tool, as the shop calls it");

  /** Flat | ball | bull. */
  public static final Key<ToolShape> SHAPE =
      Key.of("shape", Types.choice(ToolShape.class), "flat", "flat | ball | bull");

  /** Cutting diameter DC. */
  public static final Key<Length> DIAMETER =
      Key.of("diameter", Types.length(Bounds.positive("500")), "0.4 mm", "cutting diameter DC");

  /** Corner radius RE. */
  public static final Key<Length> CORNER_RADIUS =
      Key.of("corner_radius", Types.length(Bounds.fromZero("250")), "0 mm", "corner radius RE");

  /** Number of flutes NOF. */
  public static final Key<Integer> FLUTES =
      Key.of("flutes", Types.integer(1, 100), "2", "number of flutes NOF");

  /** Rounding of the cutting edge, not the corner. */
  public static final Key<LengthBand> EDGE_RADIUS =
      Key.of(
          "edge_radius",
          Types.lengthBand(Bounds.positive("1")),
          "1.5 um",
          "rounding of the cutting edge, not the corner");

  /** Largest axial depth APMX. */
  public static final Key<Length> CUTTING_LENGTH =
      Key.of(
          "cutting_length",
          Types.length(Bounds.positive("1000")),
          "0.6 mm",
          "largest axial depth APMX");

  /** Neck diameter DN. */
  public static final Key<Length> NECK_DIAMETER =
      Key.of("neck.diameter", Types.length(Bounds.positive("500")), "0.37 mm", "neck diameter DN");

  /** Usable length LU: from the tip, flutes included. */
  public static final Key<Length> NECK_LENGTH =
      Key.of(
          "neck.length",
          Types.length(Bounds.positive("1000")),
          "2 mm",
          "usable length LU: from the tip, flutes included");

  /** Cone between neck and shank. */
  public static final Key<Length> TAPER_LENGTH =
      Key.of(
          "taper_length",
          Types.length(Bounds.fromZero("1000")),
          "6 mm",
          "cone between neck and shank");

  /** Shank diameter DMM. */
  public static final Key<Length> SHANK_DIAMETER =
      Key.of("shank.diameter", Types.length(Bounds.positive("500")), "4 mm", "shank diameter DMM");

  /** Cylinder between cone and holder. */
  public static final Key<Length> SHANK_LENGTH =
      Key.of(
          "shank.length",
          Types.length(Bounds.positive("1000")),
          "12 mm",
          "cylinder between cone and holder");

  /** Gauge length set in the holder, for travel in Z. */
  public static final Key<Length> LENGTH =
      Key.of(
          "length",
          Types.length(Bounds.positive("2000000")),
          "20 mm",
          "gauge length set in the holder, for travel in Z");

  /** Carbide | hss | diamond | cbn, or a mapping with youngs_modulus and rupture_strength. */
  public static final Key<ToolMaterial> MATERIAL =
      Key.of(
          "material",
          Types.choice(ToolMaterial.class),
          "carbide",
          "carbide | hss | diamond | cbn, or a mapping with youngs_modulus and rupture_strength");

  /** Young's modulus of the tool's body. */
  public static final Key<Band> YOUNGS_MODULUS_GPA =
      Key.of(
          "material.youngs_modulus",
          Types.band(Types.gigapascals(Bounds.positive("2000000"))),
          "580 GPa",
          "Young's modulus of the tool's body");

  /** Bending stress at which the tool breaks. */
  public static final Key<Band> RUPTURE_STRENGTH_MPA =
      Key.of(
          "material.rupture_strength",
          Types.band(Dimension.STRESS, Bounds.positive("20000")),
          "3500 MPa",
          "bending stress at which the tool breaks");

  /**
   * Total reading at the rotating edges, as clamped: largest less smallest radius, helix included.
   */
  public static final Key<LengthBand> RUNOUT =
      Key.of(
          "runout",
          Types.lengthBand(Bounds.fromZero("1")),
          "0.8 um",
          "total reading at the rotating edges, as clamped: largest less smallest radius, helix included");

  /** H number expected with this tool; its own number unless given. */
  public static final Key<Integer> LENGTH_OFFSET =
      Key.of(
          "length_offset",
          Types.integer(0, 99_999_999),
          "3",
          "H number expected with this tool; its own number unless given");

  /** Largest feed per tooth. */
  public static final Key<Length> MAX_FEED_PER_TOOTH =
      Key.of(
          "max_feed_per_tooth",
          Types.length(Bounds.positive("10")),
          "12 um",
          "largest feed per tooth");

  /** Steepest ramp or helix into stock. */
  public static final Key<Double> MAX_RAMP_ANGLE_DEG =
      Key.of(
          "max_ramp_angle",
          Types.quantity(Dimension.ANGLE, Bounds.between("0", "90")),
          "3 deg",
          "steepest ramp or helix into stock");

  /** Length in cut that the tool lasts. */
  public static final Key<Length> LIFE =
      Key.of(
          "life",
          Types.length(Bounds.positive("1000000000")),
          "20 m",
          "length in cut that the tool lasts");

  /** Surface speeds that suit the tool. */
  public static final Key<NumberRange> SURFACE_SPEED_M_PER_MIN =
      Key.of(
          "surface_speed",
          Types.range(Dimension.SURFACE_SPEED, Bounds.fromZero("100000")),
          "[40 m/min, 160 m/min]",
          "surface speeds that suit the tool");

  /** All of them, in the order of the sheet. */
  static final List<Key<?>> ALL =
      List.of(
          NUMBER,
          NAME,
          SHAPE,
          DIAMETER,
          CORNER_RADIUS,
          FLUTES,
          EDGE_RADIUS,
          CUTTING_LENGTH,
          NECK_DIAMETER,
          NECK_LENGTH,
          TAPER_LENGTH,
          SHANK_DIAMETER,
          SHANK_LENGTH,
          LENGTH,
          MATERIAL,
          YOUNGS_MODULUS_GPA,
          RUPTURE_STRENGTH_MPA,
          RUNOUT,
          LENGTH_OFFSET,
          MAX_FEED_PER_TOOTH,
          MAX_RAMP_ANGLE_DEG,
          LIFE,
          SURFACE_SPEED_M_PER_MIN);

  private ToolKeys() {}
}
