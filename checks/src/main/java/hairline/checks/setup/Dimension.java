package hairline.checks.setup;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A kind of quantity, the units that fit it, and how a text becomes an exact number in the first of
 * them. Every unit is an exact decimal multiple of the first, so nothing is lost in reading.
 */
@SuppressWarnings("ImmutableEnumChecker") // the lists are made by List.of
enum Dimension {
  NUMBER("a number", unit("", "1")),
  LENGTH(
      "a length",
      unit("mm", "1"),
      unit("um", "0.001"),
      unit("nm", "0.000001"),
      unit("cm", "10"),
      unit("m", "1000"),
      unit("in", "25.4")),
  FEED(
      "a feed",
      unit("mm/min", "1"),
      unit("m/min", "1000"),
      unit("mm/s", "60"),
      unit("m/s", "60000"),
      unit("in/min", "25.4")),
  SURFACE_SPEED("a speed", unit("m/min", "1"), unit("m/s", "60"), unit("mm/min", "0.001")),
  ROTATION(
      "a spindle speed",
      unit("rpm", "1"),
      unit("1/min", "1"),
      unit("/min", "1"),
      unit("1/s", "60")),
  TIME("a time", unit("s", "1"), unit("ms", "0.001"), unit("min", "60"), unit("h", "3600")),
  ACCELERATION("an acceleration", unit("mm/s^2", "1"), unit("m/s^2", "1000")),
  JERK("a jerk", unit("mm/s^3", "1"), unit("m/s^3", "1000")),
  STRESS(
      "a stress or modulus",
      unit("MPa", "1"),
      unit("GPa", "1000"),
      unit("N/mm^2", "1"),
      unit("kN/mm^2", "1000")),
  EXPANSION(
      "a coefficient of expansion",
      unit("um/(m K)", "1"),
      unit("um/m/K", "1"),
      unit("ppm/K", "1"),
      unit("1/K", "1000000")),
  TEMPERATURE("a temperature", unit("degC", "1")),
  TEMPERATURE_DIFFERENCE("a temperature difference", unit("K", "1"), unit("degC", "1")),
  ANGLE("an angle", unit("deg", "1"));

  /**
   * A unit and how many of the first unit it is.
   *
   * @param name as typed, in the plain spelling
   * @param factor exact
   */
  record Unit(String name, BigDecimal factor) {}

  /** More digits than this say that the text is no measured or set value. */
  private static final int MOST_CHARACTERS = 40;

  private final String noun;
  private final List<Unit> units;

  Dimension(String noun, Unit... units) {
    this.noun = noun;
    this.units = List.of(units);
  }

  private static Unit unit(String name, String factor) {
    return new Unit(name, new BigDecimal(factor));
  }

  /** What it is, with its article. */
  String noun() {
    return noun;
  }

  List<Unit> units() {
    return units;
  }

  /** Its name in the JSON Schema. */
  String schemaName() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The unit in which values are kept. */
  String firstUnit() {
    return units.get(0).name();
  }

  /** The exact number, in the first unit, that the text stands for. */
  BigDecimal read(String text) throws Misread {
    String trimmed = text.strip();
    if (trimmed.isEmpty()) {
      throw new Misread("no value", "the key takes " + takes());
    }
    if (trimmed.length() > MOST_CHARACTERS) {
      throw new Misread(
          "a quantity of " + trimmed.length() + " characters",
          "at most " + MOST_CHARACTERS + " characters are read");
    }
    Optional<BigDecimal> usual = usual(trimmed);
    return usual.isPresent() ? usual.get() : any(trimmed);
  }

  /**
   * A quantity as most are typed: digits, perhaps with a point, then a unit as it is spelt here. It
   * needs no pattern; those take a good part of the start.
   */
  private Optional<BigDecimal> usual(String trimmed) {
    int end = 0;
    boolean point = false;
    while (end < trimmed.length() && (isDigit(trimmed, end) || (isPoint(trimmed, end) && !point))) {
      point |= isPoint(trimmed, end);
      end++;
    }
    if (end == 0 || isPoint(trimmed, 0)) {
      return Optional.empty();
    }
    BigDecimal number = new BigDecimal(trimmed.substring(0, end));
    boolean blank = end < trimmed.length() && trimmed.charAt(end) == ' ';
    return find(trimmed.substring(blank ? end + 1 : end))
        .map(unit -> number.multiply(unit.factor()));
  }

  private static boolean isDigit(String text, int k) {
    return text.charAt(k) >= '0' && text.charAt(k) <= '9';
  }

  private static boolean isPoint(String text, int k) {
    return text.charAt(k) == '.';
  }

  private BigDecimal any(String trimmed) throws Misread {
    if (Written.DECIMAL_COMMA.matcher(trimmed).matches()) {
      throw new Misread(
          "`" + trimmed + "` has a decimal comma",
          "the decimal sign is a point: `" + trimmed.replace(',', '.') + "`");
    }
    Matcher matcher = Written.QUANTITY.matcher(trimmed);
    if (!matcher.matches()) {
      throw new Misread("`" + trimmed + "` is not " + noun, "the key takes " + takes());
    }
    if (Written.LONG_EXPONENT.matcher(matcher.group(1)).find()) {
      throw new Misread(
          "`" + trimmed + "` has an exponent of more than two digits",
          "no quantity of a sheet is that large or that small");
    }
    BigDecimal number = new BigDecimal(matcher.group(1));
    String unitName = plain(matcher.group(2));
    Optional<Unit> unit = find(unitName);
    if (unit.isPresent()) {
      return number.multiply(unit.get().factor());
    }
    throw unitMisread(trimmed, matcher.group(1), unitName);
  }

  private Misread unitMisread(String text, String number, String unitName) {
    if (unitName.isEmpty()) {
      return new Misread("`" + text + "` has no unit", "units that fit: " + unitList());
    }
    if (this == NUMBER) {
      return new Misread(
          "`" + text + "` has a unit", "the key takes a plain number: `" + number + "`");
    }
    for (Dimension other : values()) {
      if (other != NUMBER && other.find(unitName).isPresent()) {
        return new Misread(
            "`" + text + "` is " + other.noun + ", not " + noun, "units that fit: " + unitList());
      }
    }
    Optional<String> near = Nearest.of(unitName, units.stream().map(Unit::name).toList());
    return new Misread(
        "`" + unitName + "` is no unit that is known here",
        near.map(name -> "nearest is `" + name + "`; ").orElse("")
            + "units that fit: "
            + unitList());
  }

  private Optional<Unit> find(String unitName) {
    for (Unit unit : units) {
      if (unit.name().equals(unitName)) {
        return Optional.of(unit);
      }
    }
    return Optional.empty();
  }

  /** The one spelling of the ways to write a unit: both micro signs, raised digits, dots. */
  private static String plain(String unit) {
    return unit.strip()
        .replace('µ', 'u')
        .replace('μ', 'u')
        .replace("²", "^2")
        .replace("³", "^3")
        .replace("°C", "degC")
        .replace("°", "deg")
        .replaceAll("\\s*[·*]\\s*", " ")
        .replaceAll("\\s*/\\s*", "/")
        .replaceAll("\\s+", " ");
  }

  /** A phrase for what fits. */
  String takes() {
    return this == NUMBER ? noun : noun + " with its unit (" + unitList() + ")";
  }

  private String unitList() {
    return String.join(", ", units.stream().map(Unit::name).toList());
  }

  /** A number in the first unit, as a user would type it. */
  String format(BigDecimal number) {
    return this == NUMBER ? Numbers.plain(number) : Numbers.plain(number) + " " + firstUnit();
  }

  /**
   * The ways to write a quantity; made when the first one is read that is not typed as most are.
   */
  private static final class Written {
    private static final Pattern QUANTITY =
        Pattern.compile("([+-]?(?:[0-9]+\\.?[0-9]*|\\.[0-9]+)(?:[eE][+-]?[0-9]+)?)\\s*(.*)");
    private static final Pattern LONG_EXPONENT = Pattern.compile("[eE][+-]?[0-9]{3}");
    private static final Pattern DECIMAL_COMMA = Pattern.compile("[+-]?[0-9]+,[0-9]+(?:[^0-9].*)?");

    private Written() {}
  }
}
