package hairline.parser;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.EdgeCasesMode;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/**
 * A block printed in any spacing, any case, with any line end and with comments anywhere comes back
 * as it was.
 */
class RoundTripProperties {
  /** A block to print: its words, its settings, its comments, each in order, and how they mix. */
  private record Plan(List<Item> items, boolean deletable, long seed) {}

  /** One item as the pieces that blanks may part, and how the reader should show it. */
  private record Item(char sort, List<String> pieces, String shown) {}

  @Property(edgeCases = EdgeCasesMode.NONE)
  void blocksComeBack(@ForAll("plans") List<Plan> plans) {
    Random random = new Random(plans.hashCode());
    StringBuilder text = new StringBuilder();
    for (Plan plan : plans) {
      print(plan, random, text);
      text.append(List.of("\n", "\r\n", "\r").get(random.nextInt(3)));
      // A lone CR and the LF of an empty line would make one line end.
      text.append(text.charAt(text.length() - 1) == '\r' ? " " : "");
    }
    byte[] bytes = text.toString().getBytes(UTF_8);
    List<Block> blocks = Read.program(bytes);
    for (int i = 0; i < plans.size(); i++) {
      assertSame(plans.get(i), blocks.get(i));
    }
    LineReaderTest.assertRangesCover(blocks, bytes);
  }

  private static void assertSame(Plan plan, Block block) {
    assertThat(block.problems())
        .as(block.text())
        .allMatch(p -> p.kind() == Problem.Kind.SPACE_INSIDE_NUMBER);
    assertThat(block.deletable()).as(block.text()).isEqualTo(plan.deletable);
    assertThat(block.words().stream().map(Show::word)).isEqualTo(shown(plan, 'w'));
    assertThat(block.settings().stream().map(Show::setting)).isEqualTo(shown(plan, 's'));
    assertThat(block.comments().stream().map(Comment::text)).isEqualTo(shown(plan, 'c'));
    for (Word word : block.words()) {
      assertThat(Character.toUpperCase(charAt(block, word.span().column())))
          .isEqualTo(word.letter());
    }
    for (Setting setting : block.settings()) {
      assertThat(charAt(block, setting.span().column())).isEqualTo('#');
    }
  }

  private static char charAt(Block block, int column) {
    return block.text().charAt(block.text().offsetByCodePoints(0, column - 1));
  }

  private static List<String> shown(Plan plan, char sort) {
    return plan.items.stream().filter(item -> item.sort == sort).map(Item::shown).toList();
  }

  private static void print(Plan plan, Random random, StringBuilder to) {
    blanks(random, to);
    if (plan.deletable) {
      to.append('/');
      blanks(random, to);
    }
    for (Item item : plan.items) {
      for (String piece : item.pieces) {
        to.append(item.sort == 'c' ? piece : anyCase(piece, random));
        blanks(random, to);
      }
    }
  }

  private static void blanks(Random random, StringBuilder to) {
    to.append(List.of("", "", "", " ", "\t", "  ").get(random.nextInt(6)));
  }

  private static String anyCase(String text, Random random) {
    StringBuilder mixed = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      mixed.append(random.nextBoolean() ? letter : Character.toLowerCase(letter));
    }
    return mixed.toString();
  }

  @Provide
  Arbitrary<List<Plan>> plans() {
    Arbitrary<List<Item>> items =
        Arbitraries.frequencyOf(
                Tuple.of(6, words()), Tuple.of(2, settings()), Tuple.of(1, comments()))
            .list()
            .ofMaxSize(6);
    return Combinators.combine(items, Arbitraries.of(true, false), Arbitraries.longs())
        .as(Plan::new)
        .list()
        .ofMinSize(1)
        .ofMaxSize(4);
  }

  private static Arbitrary<Item> words() {
    return Combinators.combine(
            Arbitraries.chars().range('A', 'Z').filter(letter -> letter != 'N'), values(3))
        .as((letter, value) -> item('w', List.of(letter.toString()), value, letter.toString()));
  }

  private static Arbitrary<Item> settings() {
    return Combinators.combine(values(1), values(3))
        .as(
            (index, value) -> {
              List<String> pieces = new ArrayList<>(List.of("#"));
              pieces.addAll(index.pieces);
              pieces.add("=");
              pieces.addAll(value.pieces);
              return new Item('s', pieces, "#" + index.shown + "=" + value.shown);
            });
  }

  private static Arbitrary<Item> comments() {
    return Arbitraries.of("a", "Z", "9", " ", "(", ";", "/", "%", "[", "#", "=", "\t", "é", "😀")
        .list()
        .ofMaxSize(8)
        .map(parts -> String.join("", parts))
        .map(text -> new Item('c', List.of("(" + text + ")"), text));
  }

  private static Item item(char sort, List<String> before, Item value, String shownBefore) {
    List<String> pieces = new ArrayList<>(before);
    pieces.addAll(value.pieces);
    return new Item(sort, pieces, shownBefore + value.shown);
  }

  /** A value with at most so many levels. */
  private static Arbitrary<Item> values(int levels) {
    if (levels == 0) {
      return numbers();
    }
    Arbitrary<Item> inner = Arbitraries.lazy(() -> values(levels - 1));
    return Arbitraries.frequencyOf(
        Tuple.of(6, numbers()),
        Tuple.of(1, inner.map(v -> item('v', List.of("#"), v, "#"))),
        Tuple.of(1, Combinators.combine(inner, operators(), inner).as(RoundTripProperties::binary)),
        Tuple.of(1, Combinators.combine(functions(), inner).as(RoundTripProperties::call)),
        Tuple.of(1, Combinators.combine(inner, inner).as(RoundTripProperties::arcTangent)));
  }

  private static Arbitrary<Item> numbers() {
    Arbitrary<String> digits = Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(12);
    Arbitrary<String> unsigned =
        Arbitraries.oneOf(
            digits,
            digits.map(d -> d + "."),
            digits.map(d -> "." + d),
            Combinators.combine(digits, digits).as((a, b) -> a + "." + b));
    return Combinators.combine(Arbitraries.of("", "+", "-"), unsigned)
        .as(
            (sign, number) -> {
              List<String> pieces = new ArrayList<>();
              if (!sign.isEmpty()) {
                pieces.add(sign);
              }
              pieces.addAll(letters(number));
              return new Item('v', pieces, new BigDecimal(sign + number).toPlainString());
            });
  }

  private static List<String> letters(String text) {
    return text.chars().mapToObj(Character::toString).toList();
  }

  private static Arbitrary<List<String>> operators() {
    return Arbitraries.of(
        List.of("**"),
        List.of("*", "*"),
        List.of("*"),
        List.of("/"),
        List.of("+"),
        List.of("-"),
        List.of("M", "O", "D"),
        List.of("AND"),
        List.of("O", "R"),
        List.of("X", "OR"));
  }

  private static Arbitrary<Value.Function> functions() {
    return Arbitraries.of(Value.Function.class);
  }

  private static Item binary(Item left, List<String> operator, Item right) {
    List<String> pieces = new ArrayList<>(List.of("["));
    pieces.addAll(left.pieces);
    pieces.addAll(operator);
    pieces.addAll(right.pieces);
    pieces.add("]");
    String sign = String.join("", operator).toLowerCase(Locale.ROOT);
    return new Item('v', pieces, "[" + left.shown + " " + sign + " " + right.shown + "]");
  }

  private static Item call(Value.Function function, Item argument) {
    List<String> pieces = new ArrayList<>(letters(function.name()));
    pieces.add("[");
    pieces.addAll(argument.pieces);
    pieces.add("]");
    String name = function.name().toLowerCase(Locale.ROOT);
    return new Item('v', pieces, name + "[" + argument.shown + "]");
  }

  private static Item arcTangent(Item y, Item x) {
    List<String> pieces = new ArrayList<>(List.of("ATAN", "["));
    pieces.addAll(y.pieces);
    pieces.addAll(List.of("]", "/", "["));
    pieces.addAll(x.pieces);
    pieces.add("]");
    return new Item('v', pieces, "atan[" + y.shown + "]/[" + x.shown + "]");
  }
}
