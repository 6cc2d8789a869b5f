package hairline.viewer;

import javafx.scene.control.Label;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;

/** One line that tells of the move under the cursor. */
final class Readout extends HBox {
  private final Label line = value("line");
  private final Label block = new Label();
  private final Label place = new Label();
  private final Label kind = new Label();
  private final Label path = value("path");
  private final Label time = value("time");
  private final Label tool = new Label();

  Readout() {
    getStyleClass().add("readout");
    setId("readout");
    block.getStyleClass().add("block");
    block.setMinWidth(60);
    block.setId("readout-block");
    Tooltip whole = new Tooltip();
    whole.textProperty().bind(block.textProperty());
    block.setTooltip(whole);
    HBox.setHgrow(block, Priority.SOMETIMES);
    Region space = new Region();
    HBox.setHgrow(space, Priority.ALWAYS);
    for (Label label : new Label[] {line, place, kind, path, time, tool}) {
      label.setMinWidth(Region.USE_PREF_SIZE);
    }
    getChildren()
        .addAll(
            named("line", line),
            block,
            space,
            place,
            kind,
            named("path", path),
            named("time", time),
            tool);
    setFocusTraversable(false);
    clear();
  }

  private static Label value(String id) {
    Label label = new Label();
    label.setId("readout-" + id);
    return label;
  }

  private static HBox named(String name, Label value) {
    Label label = new Label(name);
    label.getStyleClass().add("name");
    label.setMinWidth(Region.USE_PREF_SIZE);
    return new HBox(6, label, value);
  }

  void clear() {
    tell("–", "no move under the cursor", "", "", "–", "–", "");
  }

  void tell(
      String lineText,
      String blockText,
      String placeText,
      String kindText,
      String pathText,
      String timeText,
      String toolText) {
    line.setText(lineText);
    block.setText(blockText);
    place.setText(placeText);
    kind.setText(kindText);
    path.setText(pathText);
    time.setText(timeText);
    tool.setText(toolText);
    setAccessibleText(
        String.join(
            ", ",
            "line " + lineText,
            blockText,
            placeText,
            kindText,
            "path " + pathText,
            "time " + timeText,
            toolText));
  }
}
