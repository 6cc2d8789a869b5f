package hairline.checks.stock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** The width of what a move takes, from the cells it takes; cells of 1, places across the path. */
class StripWidthTest {
  private final Extent extent = new Extent();

  StripWidthTest() {
    extent.clear();
  }

  /** From −2 to 3 in each of two rows: 6 wide, 12 cells, so 2 long. */
  @Test
  void aStripAcrossThePath() {
    extent.cover(6, -2, 3);
    extent.cover(6, 3, -2);
    assertThat(extent.cells).isEqualTo(12);
    assertThat(extent.across()).isEqualTo(5);
    assertThat(extent.width(1)).isEqualTo(6);
    assertThat(extent.length(1)).isEqualTo(2);
  }

  /** 3 cells on the left from 4 on, 2 on the right up to −4: the wider strip is 3 wide. */
  @Test
  void ofTwoStripsApartTheWiderOneCounts() {
    extent.cover(3, 4, 6);
    extent.cover(2, -5, -4);
    assertThat(extent.across()).isEqualTo(11);
    assertThat(extent.width(1)).isEqualTo(3);
    extent.cover(2, -7, -6);
    assertThat(extent.width(1)).isEqualTo(4);
  }

  /** The same cell by cell, as runs cover them. */
  @Test
  void cellsOneByOneAreAsARun() {
    Extent single = new Extent();
    single.clear();
    for (double across : new double[] {5, 4, 6, -4, -5, -6, -7}) {
      single.cover(across);
    }
    extent.cover(3, 4, 6);
    extent.cover(4, -7, -4);
    assertThat(single.cells).isEqualTo(extent.cells).isEqualTo(7);
    assertThat(single.acrossLow).isEqualTo(-7);
    assertThat(single.acrossHigh).isEqualTo(6);
    assertThat(single.width(1)).isEqualTo(extent.width(1)).isEqualTo(4);
  }

  /** A run over the path joins both sides, and so do neighbours at 0 and −1. */
  @Test
  void stripsThatTouchAreOne() {
    extent.cover(3, 4, 6);
    extent.cover(2, -5, -4);
    extent.cover(9, -4, 4);
    assertThat(extent.width(1)).isEqualTo(12);
    Extent touching = new Extent();
    touching.clear();
    touching.cover(4, 0, 3);
    touching.cover(3, -3, -1);
    assertThat(touching.width(1)).isEqualTo(7);
    // A gap of one cell parts them.
    Extent apart = new Extent();
    apart.clear();
    apart.cover(3, 1, 3);
    apart.cover(3, -3, -1);
    assertThat(apart.width(1)).isEqualTo(3);
  }

  /** All on one side: the strip does not begin at the path. */
  @Test
  void aStripOnOneSide() {
    extent.cover(3, 4, 6);
    assertThat(extent.width(1)).isEqualTo(3);
    Extent right = new Extent();
    right.clear();
    right.cover(3, -6, -4);
    assertThat(right.width(1)).isEqualTo(3);
    right.cover(-9.0);
    assertThat(right.width(1)).isEqualTo(6);
  }

  @Test
  void extentsAreAdded() {
    Extent left = new Extent();
    left.clear();
    left.cover(3, 4, 6);
    extent.cover(4, -7, -4);
    extent.cover(left);
    assertThat(extent.cells).isEqualTo(7);
    assertThat(extent.across()).isEqualTo(13);
    assertThat(extent.width(1)).isEqualTo(4);
    Extent nothing = new Extent();
    nothing.clear();
    extent.cover(nothing);
    assertThat(extent.cells).isEqualTo(7);
    assertThat(extent.length(1)).isCloseTo(7.0 / 4, within(1e-12));
  }

  /**
   * Cells of 2: 4 on the left from 8 to 14, one on the right, 8 and 2 wide; 10 cells are 5 long.
   */
  @Test
  void widthsAndLengthsAreInTheUnitOfTheCells() {
    for (double across : new double[] {10, 8, 14, 12, -9}) {
      extent.cover(across);
    }
    extent.cover(4, 8, 14);
    extent.cover(1, -9, -9);
    assertThat(extent.width(2)).isEqualTo(8);
    assertThat(extent.length(2)).isEqualTo(5);
    // Between 1 and −1 there is no cell of 2 missing.
    Extent joined = new Extent();
    joined.clear();
    joined.cover(2, 1, 3);
    joined.cover(2, -3, -1);
    assertThat(joined.width(2)).isEqualTo(8);
    assertThat(joined.width(1)).isEqualTo(3);
  }
}
