package hairline.viewer.panes;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;
import javafx.scene.text.Text;
import javafx.scene.text.TextFlow;

/** The page of a rule as text that wraps: headings, paragraphs, lists, program text. */
final class Page {
  private Page() {}

  /** Adds a page to a box. */
  static void add(VBox box, String markdown) {
    List<String> paragraph = new ArrayList<>();
    List<String> code = new ArrayList<>();
    boolean inCode = false;
    for (String line : markdown.lines().toList()) {
      if (line.startsWith("```")) {
        flush(box, paragraph);
        if (inCode) {
          Label label = new Label(String.join("\n", code));
          label.getStyleClass().add("page-code");
          label.setMaxWidth(Double.MAX_VALUE);
          box.getChildren().add(label);
          code.clear();
        }
        inCode = !inCode;
      } else if (inCode) {
        code.add(line);
      } else if (line.startsWith("#")) {
        flush(box, paragraph);
        String text = line.replaceFirst("^#+ *", "");
        Label label = new Label(text);
        label.setWrapText(true);
        label.getStyleClass().add(line.startsWith("##") ? "page-heading" : "page-title");
        box.getChildren().add(label);
      } else if (line.isBlank()) {
        flush(box, paragraph);
      } else if (line.startsWith("- ") || line.startsWith("* ") || line.startsWith("|")) {
        flush(box, paragraph);
        paragraph.add(line.startsWith("|") ? line : "•  " + line.substring(2));
      } else {
        paragraph.add(line.strip());
      }
    }
    flush(box, paragraph);
  }

  private static void flush(VBox box, List<String> paragraph) {
    if (!paragraph.isEmpty()) {
      box.getChildren().add(flow(String.join(" ", paragraph)));
      paragraph.clear();
    }
  }

  /** Text in which {@code `…`} is program text and {@code **…**} is strong. */
  static TextFlow flow(String text) {
    TextFlow flow = new TextFlow();
    flow.getStyleClass().add("page-text");
    boolean code = false;
    for (String part : text.split("`", -1)) {
      if (code) {
        flow.getChildren().add(piece(part, "page-inline-code"));
      } else {
        boolean strong = false;
        for (String piece : part.split("\\*\\*", -1)) {
          if (!piece.isEmpty()) {
            flow.getChildren().add(piece(piece, strong ? "page-strong" : "page-plain"));
          }
          strong = !strong;
        }
      }
      code = !code;
    }
    return flow;
  }

  private static Text piece(String text, String style) {
    Text piece = new Text(text);
    piece.getStyleClass().add(style);
    return piece;
  }
}
