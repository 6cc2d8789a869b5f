package hairline.checks.setup;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * One of a few words.
 *
 * @param <T> what the word is kept as
 */
final class ChoiceType<T> extends ScalarType<T> {
  private final Map<String, T> words = new LinkedHashMap<>();
  private final boolean flag;

  private ChoiceType(boolean flag) {
    this.flag = flag;
  }

  /** The constants of an enumeration, each by its word. */
  static <E extends Enum<E>> ChoiceType<E> of(Class<E> type, Function<E, String> word) {
    ChoiceType<E> choice = new ChoiceType<>(false);
    for (E constant : type.getEnumConstants()) {
      choice.words.put(word.apply(constant), constant);
    }
    return choice;
  }

  /** True or false. */
  static ChoiceType<Boolean> flag() {
    ChoiceType<Boolean> choice = new ChoiceType<>(true);
    choice.words.put("true", true);
    choice.words.put("false", false);
    return choice;
  }

  @Override
  T parse(String text) throws Misread {
    T value = words.get(text);
    if (value != null) {
      return value;
    }
    Optional<String> near = Nearest.of(text, words.keySet());
    throw new Misread(
        "`" + Shown.cut(text) + "` is not one of the words that fit",
        near.map(word -> "nearest is `" + word + "`; ").orElse("") + "the key takes " + takes());
  }

  @Override
  String takes() {
    return String.join(" | ", words.keySet());
  }

  @Override
  String format(T value) {
    return words.entrySet().stream()
        .filter(entry -> entry.getValue().equals(value))
        .map(Map.Entry::getKey)
        .findFirst()
        .orElseThrow();
  }

  @Override
  Map<String, Object> schema() {
    return flag ? Map.of("type", "boolean") : Map.of("enum", List.copyOf(words.keySet()));
  }
}
