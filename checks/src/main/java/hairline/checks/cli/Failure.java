package hairline.checks.cli;

import java.util.Locale;

/**
 * All that can go wrong beside what rules find: the one catalogue behind every message of failure.
 * A sentence says what and where; a cure says what to do. {@code %s} are what the sentence is
 * about.
 */
enum Failure {
  NO_COMMAND(ExitStatus.USAGE, "no command given", "hairline --help lists the commands"),
  WRONG_OPTION(ExitStatus.USAGE, "%s", "hairline %2$s--help lists what there is"),
  NO_INPUT(
      ExitStatus.USAGE,
      "no program given",
      "name part programs, folders of them, or - for standard input"),
  RULE_UNKNOWN(ExitStatus.USAGE, "there is no rule `%s`", "%2$shairline rules lists all there are"),
  NO_RULE_LEFT(
      ExitStatus.USAGE,
      "%s leave no rule to ask",
      "a check that asks nothing finds nothing; ask at least one rule"),
  VALUE_WITHOUT_KEY(
      ExitStatus.USAGE,
      "--set `%s` is no key=value",
      "such as --set limits.step_margin=3; the key is dotted as in the setup sheet"),
  SHEET_WRONG(
      ExitStatus.USAGE,
      "the setup sheet can't be used: %s",
      "a wrong sheet would make every figure wrong, so nothing was checked with it"),
  SECTION_WRONG(
      ExitStatus.USAGE,
      "--section `%s` is no line: %s",
      "such as --section -2,0,2,0 from X-2 Y0 to X2 Y0, in mm unless a unit stands behind"),
  CELL_WRONG(
      ExitStatus.USAGE, "--cell `%s` can't be used: %s", "such as --cell 2um; from 0.1 um to 1 mm"),
  CSV_OF_NOTHING(
      ExitStatus.USAGE,
      "a csv report holds terraces, sections, depths, timelines, feeds and budgets, and none was"
          + " asked for",
      "add --terraces, --depths, --timeline, --feeds, --budget, or --section X0,Y0,X1,Y1"),
  VIEWER_MISSING(
      ExitStatus.USAGE,
      "the window is not installed, and all else works without it",
      "put hairline-viewer.jar into the folder lib beside hairline.jar, or start it alone: java"
          + " -jar hairline-viewer.jar PROGRAM; a build of the sources leaves it in viewer/target"),
  VIEWER_REFUSED(
      ExitStatus.USAGE,
      "no window can be opened: %s",
      "a display is due and, on Linux, the libraries Pango and GTK 3 (packages libpangoft2-1.0-0"
          + " and libgtk-3-0 or their like); hairline check tells the same findings without any"),
  REPORT_WITHOUT_FILE(
      ExitStatus.USAGE, "--report `%s` is no FORMAT=FILE", "such as --report sarif=hairline.sarif"),
  REPORT_FORMAT_UNKNOWN(ExitStatus.USAGE, "there is no report format `%s`", "the formats are %2$s"),
  INIT_WANTS_A_FILE(
      ExitStatus.USAGE,
      "a starter sheet is made for one program, and `%s` is a folder",
      "name one of its programs; the sheet serves the whole folder when it is called setup.yaml"),
  INIT_CUT_SHORT(
      ExitStatus.INCOMPLETE,
      "`%s` was not read to its end: the budget of %s steps was used up at %s",
      "the sheet speaks of what was used up to there; look at the repeats in that line"),
  WANTS_A_FILE(
      ExitStatus.USAGE, "`%s` is a folder, and one program is due", "name a program in it"),
  OUTPUT_FOLDER_MISSING(
      ExitStatus.USAGE,
      "cannot write `%s`: its folder does not exist",
      "make the folder first, or name another file"),
  OUTPUT_FOLDER_TAKES_NONE(
      ExitStatus.INCOMPLETE,
      "cannot write `%s`: its folder takes no new file",
      "name a file in a folder of your own; some folders of the system hold no files of others"),
  OUTPUT_DEAD_LINK(
      ExitStatus.USAGE,
      "cannot write `%s`: it is a link that leads to no file, or round in a circle",
      "name the file itself, or take the link away"),
  OUTPUT_IS_DASH(
      ExitStatus.USAGE,
      "`-` is no file to write",
      "without a file it goes to standard output (check --format, init without -o); a file of that"
          + " name is ./-"),
  OUTPUT_IS_FOLDER(ExitStatus.USAGE, "cannot write `%s`: it is a folder", "name a file in it"),
  OUTPUT_IS_INPUT(
      ExitStatus.USAGE,
      "refused to write `%s` over an input of this run",
      "name another file for the output"),
  OUTPUT_IS_SOURCE(
      ExitStatus.USAGE,
      "refused to write `%s`, which its name calls a part program or a setup sheet",
      "give the output another name: under this one a later run would read it"),
  OUTPUT_TWICE(
      ExitStatus.USAGE,
      "two reports would be written to `%s`",
      "give each report a file of its own"),
  OUTPUT_EXISTS(
      ExitStatus.USAGE,
      "`%s` is there already and was left as it is",
      "name another file, or add --force to write over it"),
  OUTPUT_FAILED(
      ExitStatus.INCOMPLETE,
      "cannot write %s: %s",
      "the disk may be full or read-only; a file is written whole or not at all"),
  INPUT_MISSING(
      ExitStatus.INCOMPLETE,
      "`%s` does not exist",
      "check the name; it is looked for from the folder the command runs in"),
  INPUT_DEAD_LINK(
      ExitStatus.INCOMPLETE,
      "`%s` is a link that leads to no file, or round in a circle",
      "name the file itself, or mend the link"),
  INPUT_UNREADABLE(
      ExitStatus.INCOMPLETE,
      "cannot read `%s`: %s",
      "permission to read it is due, or the disk or share may be at fault"),
  INPUT_NO_FILE(
      ExitStatus.INCOMPLETE,
      "`%s` is neither a file nor a folder",
      "let its text come by standard input, which - stands for"),
  INPUT_EMPTY(
      ExitStatus.INCOMPLETE,
      "`%s` is empty",
      "an empty program checks nothing; was it posted to the end?"),
  INPUT_BINARY(
      ExitStatus.INCOMPLETE,
      "`%s` is no text: byte %s of it is %s",
      "a part program is text as ISO 6983 has it; is it the right file?"),
  INPUT_NOT_NAMEABLE(
      ExitStatus.INCOMPLETE,
      "Java cannot name the file `%s` under this locale",
      "set the locale to UTF-8, such as LC_ALL=C.UTF-8, or rename the file"),
  FOLDER_WITHOUT_PROGRAMS(
      ExitStatus.INCOMPLETE,
      "there is no part program in the folder `%s`",
      "programs are known by their ending (%2$s); name a file with another ending by itself"),
  OUT_OF_MEMORY(
      ExitStatus.FAULT,
      "the memory did not suffice for `%s`",
      "HAIRLINE_JAVA_OPTS=-Xmx4g gives more; hairline should get along without, "
          + "so please report it with the program's size and the version"),
  OWN_FAULT(
      ExitStatus.FAULT,
      "a fault of hairline's own%s: %s",
      "please report it with the program, the setup sheet, the version (hairline --version) "
          + "and what --verbose adds");

  private final ExitStatus status;
  private final String sentence;
  private final String cure;

  Failure(ExitStatus status, String sentence, String cure) {
    this.status = status;
    this.sentence = sentence;
    this.cure = cure;
  }

  /** Its name for programs: lower case with hyphens. */
  String code() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  ExitStatus status() {
    return status;
  }

  String sentence(Object... about) {
    return String.format(Locale.ROOT, sentence, about);
  }

  String cure(Object... about) {
    return String.format(Locale.ROOT, cure, about);
  }
}
