package hairline.viewer;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.viewer.model.Program;
import hairline.viewer.model.Programs;
import java.io.IOException;
import java.lang.ref.WeakReference;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.stage.Stage;
import org.junit.jupiter.api.Test;

/** Windows that are closed leave nothing behind. */
class OpenAndCloseTest extends Screen {
  private static final int TIMES = 100;

  @Test
  void aHundredWindowsAreForgotten() throws Exception {
    Path file =
        Programs.write(folder, "part.nc", "G21 G90 G54", "G0 Z5.", "X1.", "G1 Z-0.1 F50.", "M30");
    List<WeakReference<Window>> windows = new ArrayList<>();
    List<WeakReference<Program>> programs = new ArrayList<>();
    for (int k = 0; k < TIMES; k++) {
      openAndClose(file, windows, programs);
    }
    until("no thread of a closed window runs", () -> threads() == 0);
    // The toolkit itself may hold the window that had the focus last.
    long held = 0;
    for (int k = 0; k < 50; k++) {
      System.gc();
      frames();
      held = windows.stream().filter(reference -> reference.get() != null).count();
      if (held <= 1) {
        break;
      }
    }
    assertThat(held).isLessThanOrEqualTo(1);
    assertThat(programs.stream().filter(reference -> reference.get() != null).count())
        .isLessThanOrEqualTo(1);
  }

  private void openAndClose(
      Path file, List<WeakReference<Window>> windows, List<WeakReference<Program>> programs)
      throws IOException {
    Stage other = onScreen(Stage::new);
    Window opened = onScreen(() -> new Window(other, new Settings(folder.resolve("other"))));
    onScreen(
        () -> {
          other.show();
          opened.open(file, Optional.empty());
          return true;
        });
    until("it is read", opened::settled);
    programs.add(new WeakReference<>(onScreen(() -> opened.program().orElseThrow())));
    windows.add(new WeakReference<>(opened));
    onScreen(
        () -> {
          opened.close();
          other.hide();
          return true;
        });
  }

  private static long threads() {
    Thread[] all = new Thread[Thread.activeCount() + 64];
    int count = Thread.enumerate(all);
    long found = 0;
    for (int k = 0; k < count; k++) {
      // The window of the test itself has threads of its own, which begin when they are needed.
      found += all[k].getName().matches("hairline-(lines|check)") ? 1 : 0;
    }
    return found;
  }
}
