package hairline.packing;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.function.BiFunction;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.function.IntUnaryOperator;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;

/** Lambdas, method references and records of all shapes, and what they give. */
// The lambdas are what is looked at, dropped values and objects made twice among them.
@SuppressWarnings({"UnnecessaryLambda", "IdentityBinaryExpression", "ReturnValueIgnored"})
public final class Samples implements Supplier<List<String>> {
  private final String name = "sample";

  /** Made by reflection, once as compiled and once as rewritten. */
  public Samples() {}

  @Override
  public List<String> get() {
    List<String> given = new ArrayList<>();
    captured(given);
    references(given);
    conversions(given);
    hosts(given);
    records(given);
    return given;
  }

  private void captured(List<String> given) {
    Supplier<String> nothing = () -> "nothing";
    given.add(nothing.get());
    Supplier<String> self = () -> name + hidden(3);
    given.add(self.get());
    boolean truth = given.size() > 1;
    byte small = (byte) given.size();
    char letter = 'q';
    long big = 1L << 40;
    float half = 0.5f;
    double third = 1 / 3.0;
    int[] array = {1, 2};
    Supplier<String> all =
        () -> truth + " " + small + letter + big + half + third + Arrays.toString(array) + name;
    given.add(all.get());
    DoubleUnaryOperator wide = x -> x * third + big;
    given.add(Double.toString(wide.applyAsDouble(2)));
    Function<String, Function<String, String>> nested = a -> b -> a + b + name;
    given.add(nested.apply("a").apply("b"));
    given.add(Boolean.toString(constant() == constant()));
    given.add(Boolean.toString(capturing(1) == capturing(1)));
  }

  private static Supplier<String> constant() {
    return () -> "constant";
  }

  private static IntUnaryOperator capturing(int k) {
    return x -> x + k;
  }

  private String hidden(int k) {
    return "hidden" + k;
  }

  private static String joined(String... parts) {
    return String.join("+", parts);
  }

  private void references(List<String> given) {
    IntFunction<String> bound = this::hidden;
    given.add(bound.apply(4));
    BiFunction<Samples, Integer, String> unbound = Samples::hidden;
    given.add(unbound.apply(this, 5));
    Function<String, Integer> parse = Integer::parseInt;
    given.add(parse.apply("12").toString());
    Function<String, StringBuilder> made = StringBuilder::new;
    given.add(made.apply("made").reverse().toString());
    IntFunction<int[]> arrays = int[]::new;
    given.add(Integer.toString(arrays.apply(3).length));
    Function<int[], int[]> copied = int[]::clone;
    given.add(Arrays.toString(copied.apply(new int[] {7, 8})));
    BiFunction<String, String, String> many = Samples::joined;
    given.add(many.apply("a", "b"));
    Function<List<String>, Integer> size = List::size;
    given.add(size.apply(List.of("x", "y")).toString());
    Supplier<String> above = super::toString;
    given.add(Boolean.toString(above.get().startsWith("hairline.packing.Samples@")));
    BooleanSupplier empty = "".isEmpty() ? String.valueOf("")::isEmpty : () -> false;
    given.add(Boolean.toString(empty.getAsBoolean()));
    try {
      String nobody = given.isEmpty() ? "" : System.getProperty("hairline.no.such.property");
      Supplier<String> ofNobody = Objects.requireNonNull(nobody)::trim;
      given.add(ofNobody.get());
    } catch (NullPointerException e) {
      given.add("nobody");
    }
  }

  /** A method without type arguments. */
  interface Words {
    String word(String text);
  }

  /** What holds one thing. */
  record Holder<T>(T held) {}

  private void conversions(List<String> given) {
    Function<Integer, Integer> boxed = x -> x + 1;
    given.add(boxed.apply(1).toString());
    ToIntFunction<Integer> out = Integer::intValue;
    given.add(Integer.toString(out.applyAsInt(9)));
    ToLongFunction<Integer> wider = Integer::intValue;
    given.add(Long.toString(wider.applyAsLong(-9)));
    ToDoubleFunction<Integer> widest = Integer::intValue;
    given.add(Double.toString(widest.applyAsDouble(11)));
    IntToDoubleFunction root = StrictMath::sqrt;
    given.add(Double.toString(root.applyAsDouble(2)));
    ToDoubleFunction<Float> single = Float::floatValue;
    given.add(Double.toString(single.applyAsDouble(0.1f)));
    ToDoubleFunction<Long> whole = Long::longValue;
    given.add(Double.toString(whole.applyAsDouble(1L << 53)));
    Function<Character, Integer> code = Character::getNumericValue;
    given.add(code.apply('7').toString());
    IntFunction<Object> object = Integer::valueOf;
    given.add(object.apply(77).toString());
    Function<Integer, Object> text = Integer::toBinaryString;
    given.add(text.apply(5).toString());
    List<String> list = new ArrayList<>();
    Consumer<String> dropped = list::add;
    dropped.accept("dropped");
    LongSupplier longs = () -> 5L;
    Runnable twoWords = longs::getAsLong;
    twoWords.run();
    given.add(list.toString());
    Words same = Objects::requireNonNull;
    given.add(same.word("same"));
    ToIntFunction<Holder<Integer>> held = Holder::held;
    given.add(Integer.toString(held.applyAsInt(new Holder<>(31))));
    ToLongFunction<Holder<Integer>> heldWide = Holder::held;
    given.add(Long.toString(heldWide.applyAsLong(new Holder<>(32))));
    Function<Holder<String>, String> heldText = Holder::held;
    given.add(heldText.apply(new Holder<>("held")));
    Supplier<String> kept = (Supplier<String> & Serializable) () -> "serializable";
    given.add(kept.get());
  }

  /** A lambda in an interface, with a private method. */
  interface Host {
    default Supplier<String> made() {
      return () -> secret() + shared();
    }

    private String secret() {
      return "secret";
    }

    private static String shared() {
      return "shared";
    }
  }

  /** A member of the nest that lies deeper. */
  static final class Inner implements Host {
    private final int depth;

    Inner(int depth) {
      this.depth = depth;
    }

    private IntUnaryOperator deeper() {
      return x -> {
        IntUnaryOperator again = y -> y + depth + x;
        return again.applyAsInt(x);
      };
    }
  }

  private void hosts(List<String> given) {
    Inner inner = new Inner(100);
    given.add(inner.made().get());
    given.add(Integer.toString(inner.deeper().applyAsInt(10)));
    Function<Inner, Integer> depth = i -> i.depth;
    given.add(depth.apply(inner).toString());
    IntFunction<Inner> made = Inner::new;
    given.add(Integer.toString(made.apply(6).depth));
    Supplier<String> anonymous =
        new Supplier<>() {
          @Override
          public String get() {
            Supplier<String> within = () -> name + "within";
            return within.get();
          }
        };
    given.add(anonymous.get());
  }

  /** No component. */
  record Nothing() {}

  /** Every type that a component may have. */
  record Everything(
      boolean truth,
      byte small,
      char letter,
      short narrow,
      int number,
      long big,
      float single,
      double wide,
      @Nullable String text,
      List<String> list,
      Words words) {
    Everything with(double newWide, float newSingle, @Nullable String newText) {
      return new Everything(
          truth, small, letter, narrow, number, big, newSingle, newWide, newText, list, words);
    }
  }

  /** A method of its own beside those that the compiler gives. */
  record Own(int number) {
    @Override
    public int hashCode() {
      return 5;
    }
  }

  private static void records(List<String> given) {
    Words words =
        new Words() {
          @Override
          public String word(String text) {
            return text;
          }

          @Override
          public int hashCode() {
            return 13;
          }

          @Override
          public String toString() {
            return "words";
          }
        };
    Everything first =
        new Everything(
            true, (byte) -3, 'x', (short) 500, -7, 1L << 50, 0f, 0.0, "a", List.of("b"), words);
    List<Object> all =
        List.of(
            new Nothing(),
            new Nothing(),
            first,
            first.with(0.0, 0f, "a"),
            first.with(-0.0, 0f, "a"),
            first.with(Double.NaN, 0f, "a"),
            first.with(Double.NaN, 0f, "a"),
            first.with(0.0, -0f, "a"),
            first.with(0.0, Float.NaN, "a"),
            first.with(0.0, 0f, null),
            new Everything(
                false, (byte) -3, 'x', (short) 500, -7, 1L << 50, 0f, 0.0, "a", List.of(), words),
            new Everything(
                true, (byte) 3, 'x', (short) 500, -7, 1L << 50, 0f, 0.0, "a", List.of("b"), words),
            new Everything(
                true, (byte) -3, 'y', (short) 500, -7, 1L << 50, 0f, 0.0, "a", List.of("b"), words),
            new Everything(
                true, (byte) -3, 'x', (short) 501, -7, 1L << 50, 0f, 0.0, "a", List.of("b"), words),
            new Everything(
                true, (byte) -3, 'x', (short) 500, -8, 1L << 50, 0f, 0.0, "a", List.of("b"), words),
            new Everything(
                true, (byte) -3, 'x', (short) 500, -7, 1L << 51, 0f, 0.0, "a", List.of("b"), words),
            new Own(1),
            new Own(1),
            new Own(2),
            new Holder<>("text"),
            new Holder<>(List.of(1)),
            "no record");
    for (Object one : all) {
      StringBuilder line = new StringBuilder();
      line.append(one).append(' ').append(one.hashCode()).append(' ');
      for (Object other : all) {
        line.append(one.equals(other) ? '=' : '.');
      }
      given.add(line.toString());
    }
  }
}
