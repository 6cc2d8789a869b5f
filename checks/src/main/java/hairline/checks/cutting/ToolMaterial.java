package hairline.checks.cutting;

import java.util.Optional;

/** Elasticity and strength of what tools are made of. Values from memory, no text seen. */
public enum ToolMaterial {
  /** Fine-grain cemented carbide. */
  CARBIDE(580),
  /** High-speed steel. */
  HSS(220),
  /** Diamond. */
  DIAMOND(1050);

  /** What a report says about these values. */
  public static final String SOURCE = "usual values, from memory";

  private final double youngsModulusGPa;

  ToolMaterial(double youngsModulusGPa) {
    this.youngsModulusGPa = youngsModulusGPa;
  }

  /** Young's modulus in GPa. */
  public double youngsModulusGPa() {
    return youngsModulusGPa;
  }

  /** Transverse rupture strength in MPa, where a value is known. */
  public Optional<Band> ruptureStrengthMPa() {
    return this == CARBIDE ? Optional.of(new Band(3000, 3500, 4000)) : Optional.empty();
  }
}
