package hairline.viewer;

import hairline.checks.finding.Level;
import hairline.checks.report.Visible;
import hairline.viewer.model.FindingMark;
import hairline.viewer.model.Program;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** The foot of the window: how far the reading is, what went wrong, what was found. */
final class Status extends HBox {
  private final ProgressBar bar = new ProgressBar(0);
  private final Button cancel = new Button("Cancel (Esc)");
  private final ProgressBar writingBar = new ProgressBar(0);
  private final Button stopWriting = new Button("Stop writing (Esc)");
  private final Label writing = new Label();
  private final Label words = new Label();
  private final Label trouble = new Label();
  private final Label found = new Label();
  private boolean changed;
  private Optional<Program> program = Optional.empty();

  /**
   * A foot.
   *
   * @param cancelling ends the reading
   * @param stopping ends the writing
   */
  Status(Runnable cancelling, Runnable stopping) {
    getStyleClass().add("status");
    setId("status");
    trouble.getStyleClass().add("trouble");
    trouble.setId("trouble");
    found.setId("found");
    words.setId("status-words");
    cancel.setId("cancel");
    cancel.setOnAction(e -> cancelling.run());
    bar.setAccessibleText("how far the program is read");
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    found.setMinWidth(Region.USE_PREF_SIZE);
    writing.setId("writing");
    writing.setMinWidth(Region.USE_PREF_SIZE);
    writingBar.setAccessibleText("how far the file is written");
    stopWriting.setId("stop-writing");
    stopWriting.setMinWidth(Region.USE_PREF_SIZE);
    stopWriting.setOnAction(e -> stopping.run());
    getChildren()
        .addAll(bar, cancel, words, writing, writingBar, stopWriting, trouble, space, found);
    writing("", 0, false);
    cancel.setMinWidth(Region.USE_PREF_SIZE);
    words.setMinWidth(Region.USE_PREF_SIZE);
  }

  void note(String text) {
    words.setText(text);
  }

  /** Tells how far a file is written. */
  void writing(String name, double share, boolean busy) {
    // The key stops the writing first.
    cancel.setText(busy ? "Cancel reading" : "Cancel (Esc)");
    show(writing, busy);
    show(writingBar, busy);
    show(stopWriting, busy);
    if (busy) {
      writing.setText(
          "writing "
              + Visible.of(name)
              + (share < 0 ? "" : ": " + (int) Math.floor(100 * share) + " %"));
      writingBar.setProgress(share < 0 ? ProgressBar.INDETERMINATE_PROGRESS : share);
    }
  }

  void setChanged(boolean is) {
    if (is != changed) {
      changed = is;
      tell(program);
    }
  }

  void tell(Optional<Program> now) {
    program = now;
    boolean reading = now.isPresent() && !now.get().finished();
    show(bar, reading);
    show(cancel, reading);
    if (now.isEmpty()) {
      words.setText("Open a part program: Ctrl+O");
      trouble.setText("");
      found.setText("");
      return;
    }
    Program p = now.get();
    bar.setProgress(p.moves().count() == 0 ? -1 : p.progress());
    words.setText(
        (!reading
                ? p.cancelled() ? "reading was cancelled: " : ""
                : p.ended() ? "all is read, the check goes on: " : "reading: ")
            + p.moves().count()
            + (p.moves().count() == 1 ? " move" : " moves")
            + (p.truncated() ? " kept of more" : ""));
    trouble.setText(
        p.trouble()
            .map(t -> Visible.of(t.sentence()) + " – " + Visible.of(t.cure()))
            .orElse(changed ? "changed on disk: F5 reads it anew" : ""));
    found.setText(
        p.result().isPresent()
            ? counts(p)
            : reading
                ? "so far " + counts(p)
                : p.moves().count() == 0 ? "not checked" : "not checked to its end: " + counts(p));
  }

  private static String counts(Program program) {
    List<FindingMark> standing =
        program.findings().stream()
            .filter(mark -> mark.finding().acceptedBecause().isEmpty())
            .toList();
    StringBuilder text = new StringBuilder();
    for (Level level : new Level[] {Level.ERROR, Level.WARNING, Level.NOTE}) {
      long count = standing.stream().filter(m -> m.finding().level() == level).count();
      text.append(text.length() == 0 ? "" : ", ").append(count).append(' ').append(level.word());
      text.append(count == 1 ? "" : "s");
    }
    int accepted = program.findings().size() - standing.size();
    int unsure = program.notChecked().size();
    return text
        + (accepted == 0 ? "" : ", " + accepted + " accepted")
        + ", "
        + unsure
        + " not checked";
  }

  private static void show(Region node, boolean is) {
    node.setVisible(is);
    node.setManaged(is);
  }
}
