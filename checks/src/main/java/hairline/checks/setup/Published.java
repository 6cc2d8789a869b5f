package hairline.checks.setup;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.MaterialGroup;
import hairline.checks.cutting.MinimumChip;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * Values that are published for a material and stand in where the sheet gives none.
 *
 * @param value the value, of the type of its key
 * @param source whose it is, and how it is known
 */
record Published<T>(T value, String source) {

  /**
   * Young's modulus and rupture strength of tool materials. From memory of handbooks, not read
   * again; single-crystal diamond depends on direction.
   */
  private static final Map<ToolMaterial, Map<Key<?>, Published<?>>> TOOL =
      new EnumMap<>(
          Map.of(
              ToolMaterial.CARBIDE,
              Map.of(
                  ToolKeys.YOUNGS_MODULUS_GPA,
                  new Published<>(
                      Band.ofExact(580), "fine-grain carbide, handbook value from memory"),
                  ToolKeys.RUPTURE_STRENGTH_MPA,
                  new Published<>(
                      new Band(3000, 3500, 4000),
                      "fine-grain carbide, handbook value from memory")),
              ToolMaterial.HSS,
              Map.of(
                  ToolKeys.YOUNGS_MODULUS_GPA,
                  new Published<>(
                      Band.ofExact(220), "high-speed steel, handbook value from memory")),
              ToolMaterial.DIAMOND,
              Map.of(
                  ToolKeys.YOUNGS_MODULUS_GPA,
                  new Published<>(Band.ofExact(1050), "diamond, handbook value from memory")),
              ToolMaterial.CBN,
              Map.of()));

  private static final String TABLES = "German textbook tables, from memory";

  private static final Published<Double> STEEL_EXPANSION =
      new Published<>(11.5, "steel, Swyt, J. Res. NIST 99 (1994) 31-39");

  /**
   * Specific cutting force, its exponent and expansion by ISO 513 group. Bands span the tables'
   * materials of the group; the typical value between them is our choice. For hardened steel no
   * pair was found.
   */
  private static final Map<MaterialGroup, Map<Key<?>, Published<?>>> WORK =
      new EnumMap<>(
          Map.of(
              MaterialGroup.P,
              Map.of(
                  // C45 (1700 to 2220; 0.14 to 0.22), 16MnCr5 (2100; 0.26), 42CrMo4 (2500; 0.26)
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(new Band(1700, 2100, 2500), "C45, 16MnCr5, 42CrMo4 in " + TABLES),
                  MaterialKeys.FORCE_EXPONENT,
                  new Published<>(new Band(0.14, 0.22, 0.26), "C45, 16MnCr5, 42CrMo4 in " + TABLES),
                  MaterialKeys.EXPANSION_UM_PER_M_K,
                  STEEL_EXPANSION),
              MaterialGroup.M,
              Map.of(
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(Band.ofExact(2350), "X5CrNi18-10 in " + TABLES),
                  MaterialKeys.FORCE_EXPONENT,
                  new Published<>(Band.ofExact(0.21), "X5CrNi18-10 in " + TABLES)),
              MaterialGroup.K,
              Map.of(
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(Band.ofExact(1160), "GJL-250 in " + TABLES),
                  MaterialKeys.FORCE_EXPONENT,
                  new Published<>(Band.ofExact(0.26), "GJL-250 in " + TABLES)),
              MaterialGroup.N,
              Map.of(
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(Band.ofExact(780), "brass and wrought aluminium in " + TABLES),
                  MaterialKeys.FORCE_EXPONENT,
                  new Published<>(
                      new Band(0.18, 0.20, 0.23), "brass and wrought aluminium in " + TABLES)),
              MaterialGroup.S,
              Map.of(
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(Band.ofExact(1370), "TiAl6V4 in " + TABLES),
                  MaterialKeys.FORCE_EXPONENT,
                  new Published<>(Band.ofExact(0.21), "TiAl6V4 in " + TABLES)),
              MaterialGroup.H,
              Map.of(MaterialKeys.EXPANSION_UM_PER_M_K, STEEL_EXPANSION)));

  /** The published value of this key for a tool's material. */
  static <T> Optional<Published<T>> of(ToolMaterial material, Key<T> key) {
    return find(TOOL.getOrDefault(material, Map.of()), key);
  }

  /** The published value of this key for a group of work materials. */
  static <T> Optional<Published<T>> of(MaterialGroup group, Key<T> key) {
    if (key.equals(MaterialKeys.MINIMUM_CHIP_RATIO)) {
      MinimumChip.PublishedRatio ratio = MinimumChip.published(group);
      return find(Map.of(key, new Published<>(ratio.ratio(), ratio.source())), key);
    }
    return find(WORK.getOrDefault(group, Map.of()), key);
  }

  /** The tables pair each key with a value of its type. */
  @SuppressWarnings("unchecked")
  private static <T> Optional<Published<T>> find(Map<Key<?>, Published<?>> table, Key<T> key) {
    return Optional.ofNullable((Published<T>) table.get(key));
  }
}
