package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An accept comment: {@code (hairline: accept RULE: reason)} for its own block, or, standing alone,
 * for the next one; {@code (hairline: accept RULE until end: reason)} for the rest of the program.
 *
 * @param at the comment
 * @param rule the rule it names, in lower case
 * @param untilEnd whether it holds to the end
 * @param standsAlone whether its line holds nothing else, so that it speaks of the next block
 * @param reason the reason; empty where none is given
 */
public record Accept(
    Place at, String rule, boolean untilEnd, boolean standsAlone, Optional<String> reason) {

  private static final Pattern FORM =
      Pattern.compile(
          "\\s*hairline\\s*:\\s*accept\\s+(?<rule>[^\\s:]+)(?<until>\\s+until\\s+end)?\\s*"
              + "(?::\\s*(?<reason>.*?))?\\s*",
          Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

  /** Reads the text of a comment; empty where it is no accept comment. */
  public static Optional<Accept> read(Place at, String commentText, boolean standsAlone) {
    Matcher matcher = FORM.matcher(commentText);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    String rule = matcher.group("rule");
    return Optional.of(
        new Accept(
            at,
            rule == null ? "" : rule.toLowerCase(java.util.Locale.ROOT),
            matcher.group("until") != null,
            standsAlone,
            Optional.ofNullable(matcher.group("reason")).filter(r -> !r.isBlank())));
  }
}
