package hairline.checks.setup;

import hairline.checks.cutting.Band;
import hairline.checks.cutting.Kienzle;
import hairline.checks.cutting.MaterialGroup;
import hairline.checks.cutting.MinimumChip;
import hairline.checks.cutting.PublishedForce;
import java.util.EnumMap;
import java.util.HashMap;
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

  private static final Published<Double> STEEL_EXPANSION =
      new Published<>(11.5, "steel, Swyt, J. Res. NIST 99 (1994) 31-39");

  private static final Map<MaterialGroup, Published<Double>> EXPANSION =
      new EnumMap<>(Map.of(MaterialGroup.P, STEEL_EXPANSION, MaterialGroup.H, STEEL_EXPANSION));

  /** The published value of this key for a tool's material. */
  static <T> Optional<Published<T>> of(ToolMaterial material, Key<T> key) {
    return find(TOOL.getOrDefault(material, Map.of()), key);
  }

  /** The published value of this key for a group of work materials. */
  static <T> Optional<Published<T>> of(MaterialGroup group, Key<T> key) {
    Map<Key<?>, Published<?>> work = new HashMap<>();
    MinimumChip.PublishedRatio ratio = MinimumChip.published(group);
    work.put(MaterialKeys.MINIMUM_CHIP_RATIO, new Published<>(ratio.ratio(), ratio.source()));
    PublishedForce.of(group)
        .ifPresent(
            force -> {
              Kienzle kienzle = force.kienzle();
              work.put(
                  MaterialKeys.SPECIFIC_FORCE_MPA,
                  new Published<>(kienzle.kc11MPa(), force.source()));
              work.put(MaterialKeys.FORCE_EXPONENT, new Published<>(kienzle.mc(), force.source()));
            });
    if (EXPANSION.containsKey(group)) {
      work.put(MaterialKeys.EXPANSION_UM_PER_M_K, EXPANSION.get(group));
    }
    return find(work, key);
  }

  /** The tables pair each key with a value of its type. */
  @SuppressWarnings("unchecked")
  private static <T> Optional<Published<T>> find(Map<Key<?>, Published<?>> table, Key<T> key) {
    return Optional.ofNullable((Published<T>) table.get(key));
  }
}
