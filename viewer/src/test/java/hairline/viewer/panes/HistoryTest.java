package hairline.viewer.panes;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HistoryTest {
  private final History<String> history = new History<>();

  @Test
  void goesBackAndForth() {
    history.leave("a", 0);
    history.leave("b", 5000);
    assertThat(history.back("c")).contains("b");
    assertThat(history.back("b")).contains("a");
    assertThat(history.back("a")).isEmpty();
    assertThat(history.forward("a")).contains("b");
    assertThat(history.forward("b")).contains("c");
    assertThat(history.forward("c")).isEmpty();
  }

  @Test
  void turnsOfAWheelCountAsOne() {
    history.leave("a", 0);
    history.leave("a1", 100);
    history.leave("a2", 200);
    history.leave("b", 5000);
    assertThat(history.back("c")).contains("b");
    assertThat(history.back("b")).contains("a");
  }

  @Test
  void aNewWayForgetsTheOldOne() {
    history.leave("a", 0);
    assertThat(history.back("b")).contains("a");
    history.leave("a", 9000);
    assertThat(history.forward("c")).isEmpty();
  }
}
