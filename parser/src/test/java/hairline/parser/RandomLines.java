package hairline.parser;

import java.util.SplittableRandom;

/** Lines at random, most of them plain motion, some odd in every way that a line can be. */
final class RandomLines {
  private static final String LETTERS = "GMXYZIJKRFSTNHDPQLABCUVWOEgxyzn";
  private static final String ODD = " \t.-+0123456789GXYZNOM()[]#=/;:%*,eE'~\u007f\u0001é€";

  private final SplittableRandom random;

  RandomLines(long seed) {
    random = new SplittableRandom(seed);
  }

  String next() {
    StringBuilder line = new StringBuilder();
    int words = random.nextInt(7);
    for (int i = 0; i < words; i++) {
      blanks(line, 2);
      if (random.nextInt(12) == 0) {
        comment(line);
      } else {
        word(line);
      }
    }
    blanks(line, 4);
    if (random.nextInt(4) == 0) {
      spoil(line);
    }
    return line.toString();
  }

  private void word(StringBuilder line) {
    line.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    blanks(line, 8);
    if (random.nextInt(3) == 0) {
      line.append(random.nextBoolean() ? '-' : '+');
      blanks(line, 8);
    }
    digits(line);
    if (random.nextInt(2) == 0) {
      line.append('.');
      digits(line);
    }
  }

  private void digits(StringBuilder line) {
    int count = random.nextInt(20) == 0 ? random.nextInt(45) : random.nextInt(6);
    for (int i = 0; i < count; i++) {
      line.append((char) ('0' + random.nextInt(10)));
    }
  }

  private void comment(StringBuilder line) {
    switch (random.nextInt(6)) {
      case 0 -> line.append("; a remark (with a bracket");
      case 1 -> line.append("//a remark");
      case 2 -> line.append("(not closed");
      case 3 -> line.append("(µ)");
      default -> line.append("(a comment; G1 X5)");
    }
  }

  private void blanks(StringBuilder line, int oneIn) {
    while (random.nextInt(oneIn) == 0) {
      line.append(random.nextInt(5) == 0 ? '\t' : ' ');
      if (oneIn == 1) {
        return;
      }
    }
  }

  /** Puts in, takes out or changes a character. */
  private void spoil(StringBuilder line) {
    int at = random.nextInt(line.length() + 1);
    char odd = ODD.charAt(random.nextInt(ODD.length()));
    if (at == line.length() || random.nextInt(3) == 0) {
      line.insert(at, odd);
    } else if (random.nextBoolean()) {
      line.setCharAt(at, odd);
    } else {
      line.deleteCharAt(at);
    }
  }
}
