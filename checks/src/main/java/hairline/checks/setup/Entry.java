package hairline.checks.setup;

import java.util.Map;
import java.util.Optional;

/** What stands behind a word of the sheet. */
sealed interface Entry {

  /** A value. */
  record Leaf(Key<?> key) implements Entry {}

  /**
   * A mapping of more words.
   *
   * @param path dotted, from the top of the sheet or of the item
   * @param doc what it holds
   * @param brief the key that a single text in the mapping's place gives, where that is allowed
   * @param entries by word, in the order of the sheet
   */
  record Section(String path, String doc, Optional<Key<?>> brief, Map<String, Entry> entries)
      implements Entry {}

  /**
   * Several items of one kind.
   *
   * @param path dotted, from the top of the sheet
   * @param doc what it holds
   * @param kind which of the three
   * @param item what each item holds
   */
  record Items(String path, String doc, Kind kind, Section item) implements Entry {}

  /** The kinds of items. */
  enum Kind {
    /** A list of tools. */
    TOOLS,
    /** A list of features. */
    FEATURES,
    /** A mapping of work offsets by name. */
    OFFSETS
  }
}
