package hairline.checks.stock;

import hairline.checks.setup.Length;
import hairline.checks.setup.MachineKeys;
import hairline.checks.setup.Setup;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is to be seen of the part that a program leaves; holds nothing of the field.
 *
 * @param wanted what was asked for
 * @param cellPm edge of a cell
 * @param tolerancePm heights are of one terrace where they round to the same multiple of it
 * @param offsets what is left under each work offset
 */
public record SurfaceShown(
    SurfaceWanted wanted, long cellPm, long tolerancePm, List<Under> offsets) {

  private static final long USUAL_RESOLUTION_PM = 100_000;
  private static final long PARTS_OF_RESOLUTION = 10;

  /**
   * What is left under one work offset.
   *
   * @param offset "G54" and so on
   * @param known whether anything of it is known
   * @param bytes what its cells take in memory
   * @param stock the stock that the sheet gives
   * @param assumedStock what stands in for it; see {@link SurfaceLeft#assumedStock}
   * @param terraces the terraces; empty where neither they nor a picture was asked for
   * @param sections the sections in the order asked for
   * @param picture the picture
   */
  public record Under(
      String offset,
      boolean known,
      long bytes,
      Optional<StockModel.Box> stock,
      Optional<StockModel.Box> assumedStock,
      Optional<Terraces> terraces,
      List<Section> sections,
      Optional<SurfacePicture> picture) {
    public Under {
      sections = List.copyOf(sections);
    }
  }

  public SurfaceShown {
    offsets = List.copyOf(offsets);
  }

  /** Heights count as equal to a tenth of the resolution, which is 0.1 µm where none is given. */
  public static long tolerancePm(Setup setup) {
    long resolution = setup.get(MachineKeys.RESOLUTION).map(Length::pm).orElse(USUAL_RESOLUTION_PM);
    return Math.max(1, resolution / PARTS_OF_RESOLUTION);
  }

  /** Nothing was cut, so that there is nothing to see. */
  public static SurfaceShown empty(SurfaceWanted wanted, long cellPm, long tolerancePm) {
    return new SurfaceShown(wanted, cellPm, tolerancePm, List.of());
  }

  /** Looks at a part. */
  public static SurfaceShown of(
      PartLeft part, SurfaceWanted wanted, long cellPm, long tolerancePm) {
    List<Under> offsets = new ArrayList<>();
    for (SurfaceLeft surface : part.surfaces()) {
      offsets.add(under(surface, wanted, tolerancePm));
    }
    return new SurfaceShown(wanted, cellPm, tolerancePm, offsets);
  }

  private static Under under(SurfaceLeft surface, SurfaceWanted wanted, long tolerancePm) {
    Optional<TerraceFinder.Found> found =
        wanted.terraces() || wanted.picture()
            ? Optional.of(new TerraceFinder(surface, tolerancePm).find())
            : Optional.empty();
    return new Under(
        surface.offset(),
        surface.known(),
        surface.bytes(),
        surface.stock(),
        surface.assumedStock(),
        found.map(TerraceFinder.Found::terraces),
        wanted.sections().stream().map(surface::section).toList(),
        wanted.picture() ? found.map(f -> SurfacePicture.of(surface, f.at())) : Optional.empty());
  }
}
