package hairline.parser;

/** Bytes of a test, given a few at a time. */
final class FakeSource implements ByteSource {
  private final byte[] bytes;
  private final int most;
  private final Runnable onClose;

  FakeSource(byte[] bytes, int most, Runnable onClose) {
    this.bytes = bytes;
    this.most = most;
    this.onClose = onClose;
  }

  @Override
  public int read(long position, byte[] target, int at, int length) {
    if (position >= bytes.length) {
      return -1;
    }
    int count = (int) Math.min(Math.min(length, most), bytes.length - position);
    System.arraycopy(bytes, (int) position, target, at, count);
    return count;
  }

  @Override
  public void close() {
    onClose.run();
  }
}
