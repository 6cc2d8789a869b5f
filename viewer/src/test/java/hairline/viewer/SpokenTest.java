package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.Level;
import hairline.viewer.model.LevelMark;
import hairline.viewer.model.Program;
import hairline.viewer.model.Programs;
import hairline.viewer.model.Trace;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import javafx.collections.ObservableList;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.Labeled;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

/** What a screen reader is told, and that the keyboard alone suffices. */
class SpokenTest extends Screen {

  private static void collect(Node node, List<Node> into) {
    if (!node.isVisible()) {
      return;
    }
    into.add(node);
    if (node instanceof Parent parent) {
      ObservableList<Node> children = parent.getChildrenUnmodifiable();
      children.forEach(child -> collect(child, into));
    }
  }

  private static String told(Node node) {
    String text = node.getAccessibleText();
    if (text != null && !text.isBlank()) {
      return text;
    }
    return node instanceof Labeled labeled && labeled.getText() != null ? labeled.getText() : "";
  }

  /** Each node that can take the focus has a role and says what it is. */
  @Test
  void everyControlSaysWhatItIs() {
    open(Programs.FAULTY);
    robot.push(KeyCode.F8);
    Set<String> seen = new HashSet<>();
    for (int pane = 0; pane <= 6; pane++) {
      int at = pane;
      onScreen(
          () -> {
            window.panes().focus(at);
            return true;
          });
      frames();
      onScreen(
          () -> {
            List<Node> nodes = new ArrayList<>();
            collect(stage.getScene().getRoot(), nodes);
            for (Node node : nodes) {
              if (node.isFocusTraversable()) {
                assertThat(told(node)).as(String.valueOf(node)).isNotBlank();
                assertThat(node.getAccessibleRole())
                    .as(String.valueOf(node))
                    .isNotIn(AccessibleRole.NODE, AccessibleRole.PARENT);
                seen.add(told(node));
              }
            }
            return true;
          });
    }
    assertThat(seen)
        .contains(
            "Findings",
            "Not checked",
            "Levels",
            "Filter of findings",
            "Second trace",
            "heights along the path")
        .hasSizeGreaterThan(12);
  }

  /** The plots say the figures that they show; the tables carry all of them. */
  @Test
  void plotsSayTheirFigures() {
    Program program = open(Programs.FAULTY);
    onScreen(
        () -> {
          window.goToLine(44);
          window.panes().setTrace(Trace.CHIP);
          window.panes().takeSection(new double[] {-2.5, 0.1, 5.8, 0.1});
          return true;
        });
    until("the part follows", () -> window.panes().remark().get().equals("the part at line 44"));
    frames();
    String strip = onScreen(() -> window.panes().strip().getAccessibleText());
    // Of the program: levels at 0 (uncut), 4, 8, 8.1, 12, 14, 16, 200 and 400 µm below.
    assertThat(strip)
        .contains(
            program.moves().count() + " moves",
            "9 levels from −400 µm to 0 µm",
            "smallest step 0.1 µm",
            program.findings().size() + " findings",
            "Cursor at line 44, Z −4 µm",
            "chip thickness ");
    assertThat(onScreen(() -> window.panes().plan().getAccessibleText()))
        .contains("the part at line 44", "terraces: ", "−400 µm");
    assertThat(onScreen(() -> window.panes().section().getAccessibleText()))
        .startsWith("Section of 8.3 mm, heights ");
    assertThat(onScreen(() -> window.panes().program().list().getAccessibleText()))
        .startsWith("line 44, ");
    onScreen(
        () -> {
          List<Long> heights =
              window.panes().levels().table().getItems().stream().map(row -> row.zPm()).toList();
          assertThat(heights).hasSize(9).isSortedAccordingTo((a, b) -> Long.compare(b, a));
          assertThat(heights)
              .containsAll(program.levels().stream().map(LevelMark::zPm).distinct().toList());
          return true;
        });
  }

  @Test
  void theSelectedFindingIsSaidWhole() {
    open(Programs.FAULTY);
    robot.push(KeyCode.F8);
    frames();
    assertThat(onScreen(() -> stage.getScene().lookup("#page").getAccessibleText()))
        .startsWith(Level.ERROR.word() + ": warm-up-missing. ")
        .contains("720 s asked");
  }

  private static void items(List<MenuItem> from, List<MenuItem> into) {
    for (MenuItem item : from) {
      if (item instanceof Menu menu) {
        items(menu.getItems(), into);
      } else if (!(item instanceof SeparatorMenuItem)) {
        into.add(item);
      }
    }
  }

  /** Every action stands in a menu with a key of its own, and Help lists them all. */
  @Test
  void everyActionHasAKeyOfItsOwn() {
    onScreen(
        () -> {
          List<MenuItem> items = new ArrayList<>();
          MenuBar bar = (MenuBar) stage.getScene().lookup(".menu-bar");
          bar.getMenus().forEach(menu -> items(menu.getItems(), items));
          assertThat(items).hasSizeGreaterThan(55);
          Set<String> keys = new HashSet<>();
          for (MenuItem item : items) {
            assertThat(item.getAccelerator()).as(item.getText()).isNotNull();
            assertThat(keys.add(item.getAccelerator().toString())).as(item.getText()).isTrue();
            assertThat(window.keys()).contains(item.getText().replace("_", ""));
          }
          return true;
        });
  }

  /** A section by its points, a level, and an order of findings: typed, with no mouse. */
  @Test
  void sectionsLevelsAndOrdersAreReachedByKeys() {
    Program program = open(Programs.FAULTY);
    robot.push(KeyCode.CONTROL, KeyCode.F3);
    frames();
    onScreen(
        () -> {
          Node field =
              javafx.stage.Window.getWindows().stream()
                  .map(shown -> shown.getScene().lookup(".dialog-pane .text-field"))
                  .filter(Objects::nonNull)
                  .findFirst()
                  .orElseThrow();
          assertThat(field.isFocused()).isTrue();
          ((TextField) field).setText("-2.5 0.1 5.8 0.1");
          return true;
        });
    robot.push(KeyCode.ENTER);
    frames();
    assertThat(onScreen(() -> window.panes().shared().section().get().orElseThrow().x1Pm()))
        .isEqualTo(5_800_000_000L);
    robot.push(KeyCode.CONTROL, KeyCode.DIGIT7);
    frames();
    robot.push(KeyCode.HOME);
    robot.push(KeyCode.DOWN);
    frames();
    // The second from the top: 4 µm below the uncut top.
    long cursor = onScreen(() -> window.panes().shared().cursor().get());
    assertThat(program.moves().z(cursor)).isEqualTo(-4_000_000L);
    robot.push(KeyCode.CONTROL, KeyCode.ALT, KeyCode.R);
    frames();
    assertThat(
            onScreen(
                () ->
                    window.panes().findings().shown().stream()
                        .map(mark -> mark.finding().rule())
                        .toList()))
        .isSorted();
  }
}
