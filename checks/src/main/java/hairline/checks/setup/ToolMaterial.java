package hairline.checks.setup;

/** The material of a tool's body. */
public enum ToolMaterial {
  /** Fine-grain tungsten carbide. */
  CARBIDE,
  /** High-speed steel. */
  HSS,
  /** Single-crystal diamond. */
  DIAMOND,
  /** Cubic boron nitride. */
  CBN
}
