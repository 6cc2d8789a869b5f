package hairline.checks.report;

import hairline.checks.stock.Stands;
import hairline.checks.stock.SurfacePicture;
import hairline.checks.stock.TerraceArea;
import hairline.checks.stock.Terraces;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Which colour stands for which height. Terraces of a few microns beside a frame of half a
 * millimetre would all look alike on an even scale, so the colours step evenly from named height to
 * named height: those of the terraces, and the lowest and highest of all.
 */
public final class HeightColours {
  /** Most named heights. */
  public static final int MOST_NAMED = 16;

  /** How many colours stand for heights. */
  public static final int HEIGHTS = 240;

  private static final Stands[] OTHERS = {
    Stands.OUTSIDE, Stands.TOP_UNKNOWN, Stands.NOT_KNOWN, Stands.CUT_THROUGH
  };
  private static final int[] OTHER_COLOURS = {0xFFFFFF, 0xE4DCEB, 0xF3CFC4, 0xD9EAF2};

  /** A lone height takes this place of the map. */
  private static final double ALONE = 0.8;

  private final long[] named;

  private HeightColours(long[] named) {
    this.named = named;
  }

  /** The colours for what a picture shows. */
  public static HeightColours of(SurfacePicture picture, Terraces terraces) {
    TreeSet<Long> named = new TreeSet<>();
    for (TerraceArea area : terraces.areas()) {
      named.add(area.heightPm());
    }
    long lowest = Long.MAX_VALUE;
    long highest = Long.MIN_VALUE;
    for (int j = 0; j < picture.height(); j++) {
      for (int i = 0; i < picture.width(); i++) {
        if (picture.stands(i, j) == Stands.SURFACE) {
          lowest = Math.min(lowest, picture.heightPm(i, j));
          highest = Math.max(highest, picture.heightPm(i, j));
        }
      }
    }
    if (lowest <= highest && (named.isEmpty() || lowest < named.first())) {
      named.add(lowest);
    }
    if (lowest <= highest && highest > named.last()) {
      named.add(highest);
    }
    return new HeightColours(few(new ArrayList<>(named)));
  }

  /** At most so many, evenly by rank, both ends among them. */
  private static long[] few(List<Long> heights) {
    int count = Math.min(MOST_NAMED, heights.size());
    long[] few = new long[count];
    for (int k = 0; k < count; k++) {
      int rank = count == 1 ? 0 : (int) ((long) k * (heights.size() - 1) / (count - 1));
      few[k] = heights.get(rank);
    }
    return few;
  }

  /** The named heights from the lowest on. */
  public long[] named() {
    return named.clone();
  }

  /** The place of a height in the colour map. */
  private double place(long height) {
    if (named.length < 2) {
      return ALONE;
    }
    int k = 0;
    while (k < named.length - 2 && height >= named[k + 1]) {
      k++;
    }
    double share = (height - (double) named[k]) / (named[k + 1] - (double) named[k]);
    return (k + Math.max(0, Math.min(1, share))) / (named.length - 1);
  }

  /** The colour of a height, as an index into {@link #palette}. */
  public int index(long height) {
    return (int) (place(height) * (HEIGHTS - 1) + 0.5);
  }

  /** The colour of a height. */
  public int colour(long height) {
    return palette()[index(height)];
  }

  /** The colour of what is no surface. */
  public static int colour(Stands stands) {
    return OTHER_COLOURS[other(stands)];
  }

  private static int other(Stands stands) {
    for (int k = 0; k < OTHERS.length; k++) {
      if (OTHERS[k] == stands) {
        return k;
      }
    }
    throw new IllegalArgumentException(stands.name());
  }

  /** All colours: those of heights, then the others. */
  public int[] palette() {
    int[] palette = new int[HEIGHTS + OTHERS.length];
    for (int k = 0; k < HEIGHTS; k++) {
      palette[k] = Cividis.at(k / (HEIGHTS - 1.0));
    }
    System.arraycopy(OTHER_COLOURS, 0, palette, HEIGHTS, OTHERS.length);
    return palette;
  }

  /** The picture as indices into the palette, the upper row first. */
  byte[] pixels(SurfacePicture picture) {
    byte[] pixels = new byte[picture.width() * picture.height()];
    for (int j = 0; j < picture.height(); j++) {
      int line = (picture.height() - 1 - j) * picture.width();
      for (int i = 0; i < picture.width(); i++) {
        Stands stands = picture.stands(i, j);
        pixels[line + i] =
            (byte)
                (stands == Stands.SURFACE
                    ? index(picture.heightPm(i, j))
                    : HEIGHTS + other(stands));
      }
    }
    return pixels;
  }
}
