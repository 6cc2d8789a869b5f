package hairline.viewer;

import java.util.ArrayList;
import java.util.List;

/** Starts the window by itself: the same as {@code hairline view}. */
public final class Main {
  private Main() {}

  /**
   * Starts the window.
   *
   * @param args a part program, or nothing
   */
  public static void main(String[] args) {
    List<String> line = new ArrayList<>();
    line.add("view");
    line.addAll(List.of(args));
    hairline.checks.cli.Main.main(line.toArray(new String[0]));
  }
}
