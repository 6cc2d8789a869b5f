package hairline.checks.setup;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** Reads setup sheets: YAML with units, machine and tools in place or by reference. */
public final class SheetReader {
  private static final String EMBEDDED = "default-setup.yaml";

  private final Set<String> ruleNames;

  /** A reader that takes any name for a rule. */
  public SheetReader() {
    this(Set.of());
  }

  /** A reader for which a rule that is not among these names is a problem. */
  public SheetReader(Collection<String> ruleNames) {
    this.ruleNames = new TreeSet<>(ruleNames);
  }

  /**
   * Reads a sheet and the files it refers to.
   *
   * @throws SheetException with all that is wrong
   */
  public Setup read(Path file) throws SheetException {
    Problems problems = new Problems();
    Optional<String> text =
        SheetFile.read(
            file,
            file.toString(),
            new SourcePosition(file.toString(), 1, 1),
            "name a setup sheet that exists; `hairline init` writes a new one",
            problems);
    problems.throwIfAny();
    return new Reading(ruleNames, problems)
        .sheet(text.orElse(""), file.toString(), Optional.of(file));
  }

  /**
   * Reads a sheet from its text; it can't refer to files.
   *
   * @param name what stands in the place of a file name
   * @throws SheetException with all that is wrong
   */
  public Setup parse(String text, String name) throws SheetException {
    return new Reading(ruleNames, new Problems()).sheet(text, name, Optional.empty());
  }

  /**
   * The sheet for a program: the one asked for, else the one that {@link SheetFinder} finds, else
   * the embedded default sheet.
   *
   * @param asked the sheet that the user names
   * @param program the program's file; none for standard input
   * @throws SheetException with all that is wrong
   */
  public Setup readFor(Optional<Path> asked, Optional<Path> program) throws SheetException {
    Optional<Path> sheet = asked.or(() -> program.flatMap(SheetFinder::find));
    return sheet.isPresent() ? read(sheet.get()) : embedded();
  }

  /** The embedded default sheet, which says what is assumed where a program has none. */
  public Setup embedded() {
    try (InputStream in = SheetReader.class.getResourceAsStream(EMBEDDED)) {
      if (in == null) {
        throw new IllegalStateException("the embedded sheet is missing");
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      return parse(text, "embedded default sheet").toBuilder().asEmbedded().build();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SheetException e) {
      throw new IllegalStateException(e);
    }
  }
}
