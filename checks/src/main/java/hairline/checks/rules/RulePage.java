package hairline.checks.rules;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The page of a rule: one Markdown text, the same in {@code explain} and in the help of reports.
 *
 * @param name the rule
 * @param markdown the whole page; its first line is {@code # NAME}
 */
public record RulePage(String name, String markdown) {
  /** The headings of every page, in this order. */
  public static final List<String> HEADINGS =
      List.of(
          "What it finds",
          "Why it matters",
          "A program that triggers it, and its cure",
          "What it reads from the setup sheet",
          "What it assumes",
          "When to ignore it");

  /** The page of a rule; empty where there is none. */
  public static Optional<RulePage> of(String rule) {
    try (InputStream in = RulePage.class.getResourceAsStream("pages/" + rule + ".md")) {
      return in == null
          ? Optional.empty()
          : Optional.of(new RulePage(rule, new String(in.readAllBytes(), StandardCharsets.UTF_8)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The text below each second-level heading, trimmed, in the order of the page. */
  public Map<String, String> sections() {
    Map<String, String> sections = new LinkedHashMap<>();
    Optional<String> heading = Optional.empty();
    StringBuilder text = new StringBuilder();
    for (String line : markdown.lines().toList()) {
      if (line.startsWith("## ")) {
        heading.ifPresent(h -> sections.put(h, text.toString().strip()));
        heading = Optional.of(line.substring(3).strip());
        text.setLength(0);
      } else {
        text.append(line).append('\n');
      }
    }
    heading.ifPresent(h -> sections.put(h, text.toString().strip()));
    return sections;
  }
}
