package hairline.checks.rules;

import hairline.checks.finding.Figure;
import hairline.checks.finding.Occurrence;
import hairline.checks.finding.Quantities;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whether an occurrence states a figure found and a figure allowed so that a reader can compare.
 */
final class StatedFigures {
  private static final Pattern NUMBER_WITH_UNIT =
      Pattern.compile("(?<![\\w.])(?<number>-?\\d+(?:\\.\\d+)?) ?(?<unit>[A-Za-zµ°][\\w/µ]*|°)");

  /** A word of a program, as a message quotes it. */
  private static final Pattern WORD = Pattern.compile("\\b[XYZIJKR](?<number>-?\\d*\\.\\d+)");

  private static final Pattern BARE =
      Pattern.compile("(?:\\b[FS]|\\()(?<number>\\d+(?:\\.\\d+)?)(?= to |[^\\d.]|$)");

  /** Two limits of one rule, of which a message names the one it is about. */
  private static final Set<String> EITHER = Set.of("holdsUpTo", "failsAbove");

  /** How many micrometres a unit of length is; figures may be in one and texts in the other. */
  private static final Map<String, Double> LENGTHS = Map.of("µm", 1.0, "mm", 1000.0);

  private StatedFigures() {}

  /**
   * What is missing; empty where two figures of one unit stand in message or facts, with their
   * unit, and no two figures that differ are printed alike.
   */
  static List<String> missing(Occurrence occurrence) {
    List<String> texts = new ArrayList<>(occurrence.facts());
    texts.add(occurrence.message());
    List<String> missing = new ArrayList<>();
    boolean pair = false;
    List<Figure> figures = occurrence.figures();
    for (int i = 0; i < figures.size(); i++) {
      for (Figure other : figures.subList(i + 1, figures.size())) {
        Figure figure = figures.get(i);
        Set<String> printed = printed(figure, texts);
        Set<String> otherPrinted = printed(other, texts);
        if (figure.unit().isEmpty()
            || !figure.unit().equals(other.unit())
            || printed.isEmpty()
            || otherPrinted.isEmpty()) {
          continue;
        }
        if (alike(figure.value(), other.value())
            || printed.stream().anyMatch(p -> otherPrinted.stream().anyMatch(o -> !o.equals(p)))) {
          pair = true;
        } else {
          missing.add(figure.name() + " and " + other.name() + " differ, and read alike");
        }
      }
    }
    if (!pair) {
      missing.add("no two figures of one unit to compare");
    }
    return missing;
  }

  /** The figures with a unit that stand nowhere in message, facts or cure. */
  static List<String> unstated(Occurrence occurrence) {
    List<String> texts = new ArrayList<>(occurrence.facts());
    texts.add(occurrence.message());
    occurrence.cure().ifPresent(texts::add);
    return occurrence.figures().stream()
        .filter(figure -> !figure.unit().isEmpty() && !Double.isInfinite(figure.value()))
        .filter(figure -> !EITHER.contains(figure.name()))
        .filter(figure -> figure.value() != 0 || !figure.unit().equals("rpm")) // "standing"
        .filter(figure -> printed(figure, texts).isEmpty() && !printedBare(figure, texts))
        .map(figure -> occurrence.rule() + " " + figure.name())
        .toList();
  }

  /** As an F or S word, or as the low end of a band behind the typical value with its unit. */
  private static boolean printedBare(Figure figure, List<String> texts) {
    for (String text : texts) {
      Matcher bare = BARE.matcher(text);
      while (bare.find()) {
        String before = text.substring(bare.start(), bare.start() + 1);
        boolean unitFits =
            switch (before) {
              case "F" -> figure.unit().equals("mm/min");
              case "S" -> figure.unit().equals("rpm");
              default -> text.substring(0, bare.start()).endsWith(figure.unit() + " ");
            };
        if (unitFits && is(bare.group("number"), figure.unit(), figure)) {
          return true;
        }
      }
    }
    return false;
  }

  private static boolean alike(double a, double b) {
    return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b));
  }

  /** The numbers in the texts that are this figure, to four significant digits or more. */
  private static Set<String> printed(Figure figure, List<String> texts) {
    Set<String> printed = new LinkedHashSet<>();
    for (String text : texts) {
      Matcher number = NUMBER_WITH_UNIT.matcher(text);
      while (number.find()) {
        if (is(number.group("number"), number.group("unit"), figure)) {
          printed.add(number.group());
        }
      }
      Matcher word = WORD.matcher(text);
      while (word.find()) {
        if (is(word.group("number"), "mm", figure)) {
          printed.add(word.group());
        }
      }
    }
    return printed;
  }

  private static boolean is(String number, String unit, Figure figure) {
    double value = figure.value();
    if (Double.isInfinite(value)) {
      return false; // told in words
    }
    if (!unit.equals(figure.unit())) {
      if (!LENGTHS.containsKey(unit) || !LENGTHS.containsKey(figure.unit())) {
        return false;
      }
      value = value * LENGTHS.get(figure.unit()) / LENGTHS.get(unit);
    }
    int digits = number.replaceAll("^-?0*\\.?0*|\\.", "").length();
    double rounded = Double.parseDouble(Quantities.significant(value, Math.max(4, digits)));
    return alike(Math.abs(Double.parseDouble(number)), Math.abs(rounded));
  }
}
