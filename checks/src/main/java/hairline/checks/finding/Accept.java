package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An accept comment: {@code (hairline: accept RULE: reason)} for its own block, or, standing alone,
 * for the next one; {@code (hairline: accept RULE until end: reason)} for the rest of the program.
 * Several rules are joined by commas; each is an accept of its own.
 *
 * @param at the comment
 * @param rule the rule it names, in lower case; empty where the comment is not understood
 * @param untilEnd whether it holds to the end
 * @param standsAlone whether its line holds nothing else, so that it speaks of the next block
 * @param reason the reason; empty where none is given
 * @param problem why the comment is not understood; empty where it is
 */
public record Accept(
    Place at,
    String rule,
    boolean untilEnd,
    boolean standsAlone,
    Optional<String> reason,
    Optional<String> problem) {

  private static final Pattern TO_HAIRLINE =
      Pattern.compile(
          "\\s*hairline(?![\\p{L}\\p{N}_-])\\s*(?<colon>:)?\\s*(?<rest>.*)",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);
  private static final Pattern WORD =
      Pattern.compile("(?<word>[^\\s:]*)\\s*(?<rest>.*)", Pattern.DOTALL);
  private static final Pattern NAMES =
      Pattern.compile(
          "(?<rules>[^\\s,]+(?:\\s*,\\s*[^\\s,]+)*)(?<until>\\s+until\\s+end)?\\s*",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  /**
   * Reads the text of a comment: one accept a rule that it names; one that is not understood where
   * it begins with the word hairline and goes on in no known way; none where it speaks to others.
   */
  public static List<Accept> read(Place at, String commentText, boolean standsAlone) {
    Matcher to = TO_HAIRLINE.matcher(commentText);
    if (!to.matches()) {
      return List.of();
    }
    Matcher verb = WORD.matcher(group(to, "rest"));
    verb.matches();
    String word = group(verb, "word").toLowerCase(Locale.ROOT);
    if (group(to, "colon").isEmpty()) {
      return List.of(notUnderstood(at, standsAlone, "no colon stands behind hairline"));
    }
    if (!word.equals("accept")) {
      return List.of(
          notUnderstood(
              at,
              standsAlone,
              word.isEmpty() ? "nothing stands behind the colon" : "accept is due, not " + word));
    }
    String rest = group(verb, "rest");
    int colon = rest.indexOf(':');
    String names = colon < 0 ? rest : rest.substring(0, colon);
    Matcher matcher = NAMES.matcher(names);
    if (!matcher.matches()) {
      return List.of(
          notUnderstood(
              at,
              standsAlone,
              names.isBlank()
                  ? "no rule is named"
                  : "behind the rule a comma, until end or a colon is due"));
    }
    Optional<String> reason =
        Optional.of(colon < 0 ? "" : rest.substring(colon + 1).strip()).filter(r -> !r.isEmpty());
    List<Accept> all = new ArrayList<>();
    for (String rule : group(matcher, "rules").split("\\s*,\\s*", -1)) {
      all.add(
          new Accept(
              at,
              rule.toLowerCase(Locale.ROOT),
              !group(matcher, "until").isEmpty(),
              standsAlone,
              reason,
              Optional.empty()));
    }
    return all;
  }

  private static Accept notUnderstood(Place at, boolean standsAlone, String problem) {
    return new Accept(at, "", false, standsAlone, Optional.empty(), Optional.of(problem));
  }

  private static String group(Matcher matcher, String name) {
    String group = matcher.group(name);
    return group == null ? "" : group;
  }
}
