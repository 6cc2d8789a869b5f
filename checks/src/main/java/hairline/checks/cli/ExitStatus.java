package hairline.checks.cli;

/** With what the process ends; in rising order of what outweighs what. */
enum ExitStatus {
  CLEAN(0, "nothing found at or above --fail-on"),
  FOUND(1, "something found at or above --fail-on"),
  INCOMPLETE(3, "an input could not be read or fully analysed, or a report could not be written"),
  USAGE(2, "wrong usage, or a setup sheet that can't be used"),
  FAULT(4, "a fault of hairline's own");

  private final int code;
  private final String meaning;

  ExitStatus(int code, String meaning) {
    this.code = code;
    this.meaning = meaning;
  }

  int code() {
    return code;
  }

  String meaning() {
    return meaning;
  }

  /** The one of both that outweighs the other. */
  ExitStatus and(ExitStatus other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
