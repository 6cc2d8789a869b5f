package hairline.checks.motion;

import java.util.Arrays;

/**
 * The sequence numbers of one program and the lines where they first stand: a table of plain
 * arrays, since a program may number every block. Holds {@value #CAP} numbers.
 */
final class SequenceNumbers {
  /** How many numbers are followed. */
  static final int CAP = 1 << 20;

  private static final int FIRST_SIZE = 1 << 10;

  /** What {@link #put} answers where the number is new. */
  static final int NEW = 0;

  /** What {@link #put} answers where the table is full. */
  static final int FULL = -1;

  private long[] numbers = new long[FIRST_SIZE];
  private int[] lines = new int[FIRST_SIZE];
  private int count;

  /**
   * Enters a number.
   *
   * @param line where it stands, from 1
   * @return the line where it stood before; {@link #NEW} or {@link #FULL}
   */
  int put(long number, int line) {
    int slot = slot(number);
    if (lines[slot] != 0) {
      return lines[slot];
    }
    if (count == CAP) {
      return FULL;
    }
    numbers[slot] = number;
    lines[slot] = line;
    count++;
    if (count > numbers.length / 2) {
      grow();
    }
    return NEW;
  }

  /** Forgets every number. */
  void clear() {
    if (count > 0) {
      Arrays.fill(lines, 0);
      count = 0;
    }
  }

  private int slot(long number) {
    int mask = numbers.length - 1;
    int slot = (int) ((number * 0x9E3779B97F4A7C15L) >>> 32) & mask;
    while (lines[slot] != 0 && numbers[slot] != number) {
      slot = (slot + 1) & mask;
    }
    return slot;
  }

  private void grow() {
    long[] oldNumbers = numbers;
    int[] oldLines = lines;
    numbers = new long[oldNumbers.length * 2];
    lines = new int[oldLines.length * 2];
    for (int i = 0; i < oldNumbers.length; i++) {
      if (oldLines[i] != 0) {
        int slot = slot(oldNumbers[i]);
        numbers[slot] = oldNumbers[i];
        lines[slot] = oldLines[i];
      }
    }
  }
}
