package hairline.checks.stock;

import java.util.List;

/**
 * What somebody wants to see of the part left.
 *
 * @param terraces whether the terraces are to be listed
 * @param sections where sections are to be taken
 * @param picture whether it is to be drawn
 */
public record SurfaceWanted(boolean terraces, List<SectionLine> sections, boolean picture) {
  /** Nothing. */
  public static final SurfaceWanted NOTHING = new SurfaceWanted(false, List.of(), false);

  public SurfaceWanted {
    sections = List.copyOf(sections);
  }

  /** Whether anything is wanted. */
  public boolean anything() {
    return terraces || !sections.isEmpty() || picture;
  }
}
