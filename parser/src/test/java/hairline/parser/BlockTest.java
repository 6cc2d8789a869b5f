package hairline.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class BlockTest {
  private static List<String> words(String text) {
    Block block = Read.block(text);
    assertThat(block.problems())
        .as(text)
        .noneMatch(p -> p.kind() != Problem.Kind.SPACE_INSIDE_NUMBER);
    return block.words().stream().map(w -> w.letter() + Show.value(w.value())).toList();
  }

  /** NISTIR 6556 §3.3: "g0x +0. 12 34y 7" is equivalent to "g0 x+0.1234 y7". */
  @Test
  void blanksMeanNothing() {
    assertThat(words("g0x +0. 12 34y 7")).containsExactly("G0", "X0.1234", "Y7");
  }

  @Test
  void settingActsBesideWords() {
    Block block = Read.block("#3=6 G1 x#3");
    assertThat(block.problems()).isEmpty();
    assertThat(block.words()).hasSize(2);
    assertThat(block.settings()).hasSize(1);
  }
}
