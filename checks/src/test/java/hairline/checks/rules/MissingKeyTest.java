package hairline.checks.rules;

import static org.assertj.core.api.Assertions.assertThat;

import hairline.checks.finding.ProgramResult;
import hairline.checks.setup.Setup;
import hairline.checks.setup.SheetException;
import hairline.checks.setup.SheetReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.yaml.snakeyaml.Yaml;

/**
 * A key that is missing silences no rule: where a rule speaks under the sheet of an annotated
 * program, it speaks, or is listed as not checked, under the same sheet without any one of its
 * values.
 */
class MissingKeyTest {

  /** Keys whose absence says something, or for which a default stands in, and what. */
  private static final Map<String, String> SAY_SOMETHING =
      Map.of(
          "neck", "the tool has none",
          "instant", "the spindle does not shift with speed",
          "waits", "the default: it waits",
          "length_offset", "the default of the sheet",
          "fine_step", "the default of the sheet",
          "call_depth", "the default of the sheet",
          "step_budget", "the default of the sheet");

  /** A warm-up code is a warm-up by itself where the sheet asks for no speed. */
  private static final Set<String> MEANT =
      Set.of("warm-up-short without [machine, spindle, warm_up, min_speed]");

  @TestFactory
  Stream<DynamicTest> noKeySilencesARule() throws IOException {
    return AnnotatedProgramsTest.programs().stream()
        .filter(program -> program.startsWith(Programs.ROOT.resolve("rules")))
        .filter(program -> sheet(program).isPresent())
        .filter(program -> !wanted(program).isEmpty())
        .map(
            program ->
                DynamicTest.dynamicTest(
                    Programs.ROOT.resolve("rules").relativize(program).toString(),
                    () -> assertNoKeySilences(program, sheet(program).orElseThrow())));
  }

  private static void assertNoKeySilences(Path program, Path sheetFile) throws IOException {
    Object sheet = new Yaml().load(Files.readString(sheetFile));
    List<String> wanted = wanted(program);
    // Alone, so that no other rule explains them away.
    ProgramCheck check = ProgramCheck.of(new Selection(Set.copyOf(wanted), Set.of()));
    List<String> silenced = new ArrayList<>();
    for (List<Object> key : keys(sheet)) {
      Optional<Setup> without = read(without(sheet, key));
      if (without.isPresent()) {
        Set<String> told = told(check.check(program, without.get()));
        wanted.stream()
            .filter(rule -> !told.contains(rule))
            .forEach(rule -> silenced.add(rule + " without " + key));
      }
    }
    silenced.removeAll(MEANT);
    assertThat(silenced).isEmpty();
  }

  /** The rules that are to speak, each of which stands for itself. */
  private static List<String> wanted(Path program) {
    try {
      return Annotations.read(Files.readString(program)).findings().stream()
          .map(Annotations.Expected::rule)
          .filter(rule -> !rule.startsWith("suppression-"))
          .distinct()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Set<String> told(ProgramResult result) {
    Set<String> told = new HashSet<>();
    result.findings().forEach(f -> told.add(f.rule()));
    result.notChecked().forEach(n -> told.add(n.rule()));
    return told;
  }

  /** Its own sheet, or that of its folder. */
  private static Optional<Path> sheet(Path program) {
    String name = program.getFileName().toString();
    Path own = program.resolveSibling(name.substring(0, name.length() - 3) + ".setup.yaml");
    return Stream.of(own, program.resolveSibling("setup.yaml")).filter(Files::exists).findFirst();
  }

  private static Optional<Setup> read(Object sheet) {
    try {
      return Optional.of(new SheetReader().parse(new Yaml().dump(sheet), "sheet"));
    } catch (SheetException e) {
      // A part without which the rest is no sheet.
      return Optional.empty();
    }
  }

  private static List<List<Object>> keys(Object sheet) {
    List<List<Object>> keys = new ArrayList<>();
    gather(sheet, List.of(), keys);
    return keys;
  }

  private static void gather(Object node, List<Object> path, List<List<Object>> into) {
    if (node instanceof Map<?, ?> mapping) {
      mapping.forEach((key, value) -> gatherBelow(path, key, value, into));
    } else if (node instanceof List<?> list && list.stream().allMatch(Map.class::isInstance)) {
      for (int k = 0; k < list.size(); k++) {
        gatherBelow(path, k, list.get(k), into);
      }
    }
  }

  private static void gatherBelow(
      List<Object> path, Object key, Object value, List<List<Object>> into) {
    if (SAY_SOMETHING.containsKey(String.valueOf(key))) {
      return;
    }
    List<Object> below = new ArrayList<>(path);
    below.add(key);
    if (value instanceof Map<?, ?>
        || (value instanceof List<?> list && list.get(0) instanceof Map)) {
      gather(value, below, into);
    } else {
      into.add(below);
    }
  }

  /** A copy of the sheet without one key. */
  private static Object without(Object node, List<Object> path) {
    List<Object> below = path.subList(1, path.size());
    if (node instanceof Map<?, ?> mapping) {
      Map<Object, Object> copy = new LinkedHashMap<>(mapping);
      if (below.isEmpty()) {
        copy.remove(path.get(0));
      } else {
        copy.computeIfPresent(path.get(0), (key, value) -> without(value, below));
      }
      return copy;
    }
    List<Object> copy = new ArrayList<>((List<?>) node);
    int index = (Integer) path.get(0);
    copy.set(index, without(copy.get(index), below));
    return copy;
  }
}
