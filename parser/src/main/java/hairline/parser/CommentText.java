package hairline.parser;

/** Where comments and remarks of ASCII end. */
final class CommentText {
  /** The bit that lower case has. */
  private static final int CASE = 0x20;

  private CommentText() {}

  /**
   * Where a comment ends that begins at a round bracket: the index behind the bracket that closes
   * it; -1 where none does in the line, or where it holds other than ASCII.
   *
   * @param from where its text begins
   * @param to where the bytes end
   */
  static int endOfComment(byte[] bytes, int from, int to) {
    int at = from;
    for (; at <= bytes.length - Eight.BYTES; at += Eight.BYTES) {
      int found = Eight.commentEnd(Eight.at(bytes, at));
      if (found < Eight.BYTES) {
        at += found;
        return at < to && bytes[at] == ')' ? at + 1 : -1;
      }
    }
    for (; at < to && bytes[at] >= 0 && !isLineEnd(bytes[at]); at++) {
      if (bytes[at] == ')') {
        return at + 1;
      }
    }
    return -1;
  }

  /**
   * Where a remark ends: the index of the line end, or {@code to}; -1 where it holds other than
   * ASCII.
   *
   * @param from where its text begins
   * @param to where the bytes end
   */
  static int endOfRemark(byte[] bytes, int from, int to) {
    int at = from;
    for (; at <= bytes.length - Eight.BYTES; at += Eight.BYTES) {
      int found = Eight.remarkEnd(Eight.at(bytes, at));
      if (found < Eight.BYTES) {
        at += found;
        return at >= to ? to : bytes[at] < 0 ? -1 : at;
      }
    }
    while (at < to && bytes[at] >= 0 && !isLineEnd(bytes[at])) {
      at++;
    }
    return at >= to ? to : bytes[at] < 0 ? -1 : at;
  }

  /** Whether a character ends a line. */
  static boolean isLineEnd(int c) {
    return c == '\n' || c == '\r';
  }

  /** Whether the text of a comment may begin with the name of the checker. */
  static boolean maySpeak(byte[] bytes, int from, int to) {
    int at = from;
    while (at < to && bytes[at] <= ' ' && bytes[at] >= 0) {
      at++;
    }
    return at < to && (bytes[at] | CASE) == Comment.MARK.charAt(0);
  }
}
