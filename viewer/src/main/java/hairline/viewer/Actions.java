package hairline.viewer;

import hairline.viewer.model.Along;
import hairline.viewer.model.Trace;
import hairline.viewer.panes.Panes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuBar;
import javafx.scene.control.MenuItem;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.SeparatorMenuItem;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCombination;

/** All that can be done, each in a menu and with a key. */
final class Actions {
  private final Window window;
  private final Panes panes;
  private final MenuBar bar;
  private final List<MenuItem> all = new ArrayList<>();

  Actions(Window window, Panes panes) {
    this.window = window;
    this.panes = panes;
    this.bar = new MenuBar(file(), view(), go(), section(), help());
  }

  MenuBar menuBar() {
    return bar;
  }

  private MenuItem item(String words, String key, Runnable action) {
    return keyed(new MenuItem(words), key, action);
  }

  private <T extends MenuItem> T keyed(T item, String key, Runnable action) {
    if (!key.isEmpty()) {
      item.setAccelerator(KeyCombination.keyCombination(key));
    }
    item.setOnAction(e -> action.run());
    all.add(item);
    return item;
  }

  private Menu file() {
    Menu export = new Menu("_Write the pane in use");
    export
        .getItems()
        .addAll(
            item("as _PNG …", "Shortcut+E", () -> window.askSave(Saving.Format.PNG)),
            item("as _SVG …", "Shortcut+Shift+E", () -> window.askSave(Saving.Format.SVG)),
            item("as _CSV …", "Shortcut+Alt+E", () -> window.askSave(Saving.Format.CSV)));
    Menu menu = new Menu("_File");
    menu.getItems()
        .addAll(
            item("_Open …", "Shortcut+O", window::askOpen),
            item("_Read anew", "F5", window::reload),
            item("S_top writing or reading", "Esc", window::cancel),
            new SeparatorMenuItem(),
            export,
            new SeparatorMenuItem(),
            item("_Close", "Shortcut+W", window::quit));
    return menu;
  }

  private Menu view() {
    Menu menu = new Menu("_View");
    ToggleGroup along = new ToggleGroup();
    RadioMenuItem path =
        keyed(new RadioMenuItem("Along the _path"), "Shortcut+P", () -> panes.setAlong(Along.PATH));
    RadioMenuItem time =
        keyed(new RadioMenuItem("Along the _time"), "Shortcut+T", () -> panes.setAlong(Along.TIME));
    path.setToggleGroup(along);
    time.setToggleGroup(along);
    panes.onAlong(a -> (a == Along.PATH ? path : time).setSelected(true));
    CheckMenuItem levels = new CheckMenuItem("Each step drawn _alike");
    keyed(levels, "Shortcut+L", () -> panes.setByLevels(levels.isSelected()));
    panes.onByLevels(levels::setSelected);
    Menu traces = new Menu("_Second trace");
    ToggleGroup group = new ToggleGroup();
    int number = 0;
    for (Trace trace : Trace.values()) {
      RadioMenuItem item =
          keyed(
              new RadioMenuItem(trace.words()),
              "Shortcut+Alt+" + number++,
              () -> panes.setTrace(trace));
      item.setToggleGroup(group);
      traces.getItems().add(item);
      panes.onTrace(
          t -> {
            if (t == trace) {
              item.setSelected(true);
            }
          });
    }
    CheckMenuItem atCursor = new CheckMenuItem("Part as it stands at the _cursor");
    keyed(atCursor, "Shortcut+K", () -> panes.setAtCursor(atCursor.isSelected()));
    panes.onAtCursor(atCursor::setSelected);
    CheckMenuItem dark = new CheckMenuItem("_Dark");
    keyed(dark, "Shortcut+D", () -> window.setDark(dark.isSelected()));
    menu.setOnShowing(e -> dark.setSelected(window.isDark()));
    menu.getItems()
        .addAll(
            path,
            time,
            levels,
            traces,
            atCursor,
            order(),
            new SeparatorMenuItem(),
            item("Zoom _in", "Shortcut+Plus", () -> panes.zoom(1 / 1.5, false)),
            item("Zoom _out", "Shortcut+Minus", () -> panes.zoom(1.5, false)),
            item("Zoom in heights", "Shortcut+Shift+Plus", () -> panes.zoom(1 / 1.5, true)),
            item("Zoom out heights", "Shortcut+Shift+Minus", () -> panes.zoom(1.5, true)),
            item("Move left", "Alt+Shift+Left", () -> panes.pan(80, 0)),
            item("Move right", "Alt+Shift+Right", () -> panes.pan(-80, 0)),
            item("Move up", "Alt+Shift+Up", () -> panes.pan(0, 60)),
            item("Move down", "Alt+Shift+Down", () -> panes.pan(0, -60)),
            item("Show _all", "Shortcut+0", panes::fit),
            item("_Back to the view before", "Alt+Left", panes::back),
            item("_Forward again", "Alt+Right", panes::forward),
            new SeparatorMenuItem(),
            dark);
    return menu;
  }

  private Menu order() {
    Menu menu = new Menu("Findings in _order of");
    menu.getItems()
        .addAll(
            item("_place", "Shortcut+Alt+P", () -> panes.sortFindings(-1)),
            item("_level", "Shortcut+Alt+L", () -> panes.sortFindings(0)),
            item("_rule", "Shortcut+Alt+R", () -> panes.sortFindings(1)),
            item("l_ine", "Shortcut+Alt+N", () -> panes.sortFindings(2)),
            item("_figure", "Shortcut+Alt+F", () -> panes.sortFindings(3)),
            item("li_mit", "Shortcut+Alt+M", () -> panes.sortFindings(4)));
    return menu;
  }

  private Menu go() {
    Menu menu = new Menu("_Go");
    menu.getItems()
        .addAll(
            item("Next _finding", "F8", () -> window.nextFinding(1)),
            item("Finding before", "Shift+F8", () -> window.nextFinding(-1)),
            item("Next _step", "F7", () -> window.nextStep(1)),
            item("Step before", "Shift+F7", () -> window.nextStep(-1)),
            item("Next _move", "F9", () -> window.nextMove(1)),
            item("Move before", "Shift+F9", () -> window.nextMove(-1)),
            item("_Line …", "Shortcut+G", window::askLine),
            item("Line of the _call", "Shortcut+U", () -> panes.program().showCaller()),
            new SeparatorMenuItem(),
            item("to the _heights", "Shortcut+1", () -> panes.focus(0)),
            item("to the _program", "Shortcut+2", () -> panes.focus(1)),
            item("to the p_lan", "Shortcut+3", () -> panes.focus(2)),
            item("to the fi_ndings", "Shortcut+4", () -> panes.focus(3)),
            item("to the sec_tion", "Shortcut+5", () -> panes.focus(4)),
            item("to what is not _checked", "Shortcut+6", () -> panes.focus(5)),
            item("to the le_vels", "Shortcut+7", () -> panes.focus(6)),
            item("to the filter of findings", "Shortcut+F", panes::focusFilter));
    return menu;
  }

  private Menu section() {
    Menu times = new Menu("_Heights against distances");
    for (int factor : new int[] {1, 10, 100, 1000}) {
      times
          .getItems()
          .add(
              item(
                  factor == 1 ? "true to scale" : factor + " times",
                  "Shortcut+Shift+" + Integer.toString(factor).length(),
                  () -> panes.section().setExaggeration(factor)));
    }
    Menu menu = new Menu("_Section");
    menu.getItems()
        .addAll(
            item("Along _X through the cursor", "F3", () -> panes.takeSection(true)),
            item("Along _Y through the cursor", "Shift+F3", () -> panes.takeSection(false)),
            item("From _point to point …", "Shortcut+F3", window::askSection),
            times,
            new SeparatorMenuItem(),
            item("_Measured trace over it …", "Shortcut+M", window::askTrace),
            item("Trace to the _left", "Shortcut+Shift+Left", () -> panes.section().shiftTrace(-1)),
            item(
                "Trace to the _right", "Shortcut+Shift+Right", () -> panes.section().shiftTrace(1)),
            item(
                "Trace _off",
                "Shortcut+Shift+M",
                () -> panes.section().setTrace(Optional.empty())));
    return menu;
  }

  private Menu help() {
    Menu menu = new Menu("_Help");
    menu.getItems()
        .addAll(
            item("_Keys and mouse", "F1", () -> window.inform("Keys and mouse", keys())),
            item(
                "_Caution",
                "Shift+F1",
                () ->
                    window.inform(
                        "Caution",
                        "A clean preflight replaces no prove-out. Hairline knows the program and"
                            + " the setup sheet, not what is clamped on the table. The machine"
                            + " builder's manual, the rules that hold where you work and licensed"
                            + " practice come first.")));
    return menu;
  }

  /** All keys, as the menus have them. */
  String keys() {
    StringBuilder text = new StringBuilder();
    text.append("In plots the wheel zooms at the pointer, with Ctrl the heights, with Shift both;")
        .append(" over the height axis the heights. A drag moves the plot, a double click shows")
        .append(
            " all, a click sets the cursor, the arrows left and right move it. In the plan a drag"
                + " draws a section or moves its")
        .append(" ends; with Ctrl or the right button it moves the plan. In the program the arrows")
        .append(
            " up and down go from line to line, left and right show the rest of long lines.\n\n");
    for (MenuItem item : all) {
      if (item.getAccelerator() != null) {
        text.append(item.getAccelerator().getDisplayText())
            .append("   ")
            .append(item.getText().replace("_", ""))
            .append('\n');
      }
    }
    return text.toString();
  }
}
