package hairline.checks.report;

import java.util.List;

/**
 * A brief before it is written in any format.
 *
 * @param title what it is about
 * @param sections its sections in their order
 */
record BriefPage(String title, List<Section> sections) {

  /**
   * A section.
   *
   * @param heading its heading
   * @param wide whether it needs the whole width of a page
   * @param parts what stands below
   */
  record Section(String heading, boolean wide, List<Part> parts) {
    Section {
      parts = List.copyOf(parts);
    }
  }

  /** Something below a heading. */
  sealed interface Part {}

  /** Facts, each with what it is a fact of. */
  record Facts(List<Fact> facts) implements Part {
    Facts {
      facts = List.copyOf(facts);
    }
  }

  /** A fact; an empty label goes on with the one before. */
  record Fact(String label, String text) {}

  /** A table; each row has as many cells as the head. */
  record Table(String caption, List<String> head, List<List<String>> rows) implements Part {
    Table {
      head = List.copyOf(head);
      rows = List.copyOf(rows);
    }
  }

  /** Things that the setter verifies by hand. */
  record Ticks(List<String> items) implements Part {
    Ticks {
      items = List.copyOf(items);
    }
  }

  /** Sentences, a line each. */
  record Items(List<String> items) implements Part {
    Items {
      items = List.copyOf(items);
    }
  }

  /** A finding: how bad, and its lines. */
  record Found(String level, String message, List<Fact> facts) implements Part {
    Found {
      facts = List.copyOf(facts);
    }
  }

  /**
   * A drawing, of which the text tells by its caption only.
   *
   * @param caption what is seen
   * @param svg the drawing, its own markup
   */
  record Figure(String caption, String svg) implements Part {}

  BriefPage {
    sections = List.copyOf(sections);
  }
}
