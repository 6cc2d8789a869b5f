package hairline.checks.setup;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The meanings that the sheet gives to codes, {@code machine.codes}. */
public final class Codes {
  private final Map<CodeMeaning, List<CodeWord>> words = new EnumMap<>(CodeMeaning.class);
  private final Map<CodeWord, CodeMeaning> meanings = new HashMap<>();

  Codes(Map<CodeMeaning, List<CodeWord>> words) {
    this.words.putAll(words);
    words.forEach((meaning, list) -> list.forEach(word -> meanings.put(word, meaning)));
  }

  /** The meaning of a word of the program or of a call ({@code P} and the program number). */
  public Optional<CodeMeaning> meaningOf(CodeWord word) {
    return Optional.ofNullable(meanings.get(word));
  }

  /** As {@link #meaningOf(CodeWord)}, for a whole number. */
  public Optional<CodeMeaning> meaningOf(char letter, long number) {
    return meaningOf(CodeWord.of(letter, number));
  }

  /** The codes with this meaning, in the order of the sheet. */
  public List<CodeWord> words(CodeMeaning meaning) {
    return words.getOrDefault(meaning, List.of());
  }

  /** Whether the sheet names any code with this meaning. */
  public boolean names(CodeMeaning meaning) {
    return !words(meaning).isEmpty();
  }
}
