package hairline.checks.warmth;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.timing.Answer;
import hairline.checks.timing.Programs;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

/** What must hold of a warm-up whatever the program; small times, so that every case comes up. */
class SpindleWarmthProperties {
  private static final int NEEDED = 12;
  private static final int IDLE = 3;
  private static final int VALID_FOR = 6;
  private static final int FAST = 20000;
  private static final int SLOW = 10000;

  /** A stretch of whole seconds; an M0 comes ahead of it where asked. */
  record Stretch(int rpm, int seconds, boolean operator) {}

  @Provide
  Arbitrary<List<Stretch>> stretches() {
    return Combinators.combine(
            Arbitraries.of(0, 0, SLOW, FAST, FAST),
            Arbitraries.integers().between(1, 14),
            Arbitraries.integers().between(0, 9).map(i -> i == 0))
        .as(Stretch::new)
        .list()
        .ofMaxSize(20);
  }

  private static WarmUpDemand demand(double scale) {
    return new WarmUpDemand(
        OptionalDouble.of(NEEDED * scale),
        OptionalDouble.of(FAST),
        OptionalDouble.empty(),
        OptionalDouble.of(VALID_FOR * scale),
        IDLE * scale,
        false,
        true);
  }

  private static Answer run(List<Stretch> stretches, double scale, int parts) {
    Shop shop = new Shop(demand(scale), Shop.TIMES);
    Programs program = shop.program();
    for (Stretch stretch : stretches) {
      if (stretch.operator()) {
        program.stop("M0");
      }
      if (stretch.rpm() == 0) {
        program.m5();
      } else {
        program.m3(stretch.rpm());
      }
      for (int i = 0; i < parts; i++) {
        program.dwell(stretch.seconds() * scale / parts);
      }
    }
    program.end();
    return shop.warmth().warmUp().valid();
  }

  /** Second by second, the terms taken word for word, kept apart from the program on purpose. */
  private static Answer bySeconds(List<Stretch> stretches) {
    boolean valid = false;
    int run = 0;
    int stop = 0;
    for (Stretch stretch : stretches) {
      if (stretch.operator()) {
        valid = false;
        run = 0;
        stop = 1_000_000;
      }
      for (int second = 0; second < stretch.seconds(); second++) {
        if (stretch.rpm() > 0) {
          stop = 0;
          run += stretch.rpm() >= FAST ? 1 : 0;
          valid |= run >= NEEDED;
        } else {
          stop++;
          if (stop > IDLE && !valid) {
            run = 0;
          }
          if (stop > VALID_FOR) {
            valid = false;
            run = 0;
          }
        }
      }
    }
    return valid ? Answer.YES : Answer.NO;
  }

  @Property
  void itAgreesWithCountingSeconds(@ForAll("stretches") List<Stretch> stretches) {
    assertThat(run(stretches, 1, 1)).isEqualTo(bySeconds(stretches));
  }

  @Property
  void stretchesMayBeSplit(
      @ForAll("stretches") List<Stretch> stretches, @ForAll @IntRange(min = 2, max = 7) int parts) {
    assertThat(run(stretches, 1, parts)).isEqualTo(run(stretches, 1, 1));
  }

  @Property
  void allTimesMayBeScaled(
      @ForAll("stretches") List<Stretch> stretches,
      @ForAll @IntRange(min = 1, max = 500) int hundredths) {
    assertThat(run(stretches, hundredths / 10.0, 1)).isEqualTo(run(stretches, 1, 1));
  }
}
