package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.jspecify.annotations.Nullable;

/** What {@link UsualLine} reads of a command line is what the command line's definition says. */
class UsualLineProperties {
  private static final List<String> WORDS =
      List.of(
          "a.nc",
          "b c.nc",
          "folder/",
          "-",
          "check",
          "@file",
          "${x}",
          "",
          "--",
          "-q",
          "--quiet",
          "-v",
          "--verbose",
          "-qv",
          "--summary",
          "--timings",
          "--allow-unread",
          "--setup",
          "setup.yaml",
          "--setup=s.yaml",
          "--only",
          "--skip",
          "chip-below-minimum",
          "a,b",
          "a,",
          ",",
          "a,,b",
          "\"a,b\"",
          "--format",
          "json",
          "html",
          "jsn",
          "--format=text",
          "--fail-on",
          "note",
          "never",
          "-j",
          "--jobs",
          "2",
          "-j2",
          "x",
          "--set",
          "tools.3.flutes=2",
          "--cell",
          "--depths",
          "--unknown",
          "-h",
          "--help",
          "-V");

  @Provide
  Arbitrary<List<String>> lines() {
    return Arbitraries.of(WORDS).list().ofMaxSize(7);
  }

  @Property(tries = 3000)
  void readsWhatTheDefinitionReads(@ForAll("lines") List<String> words) throws Exception {
    List<String> line = new ArrayList<>(List.of("check"));
    line.addAll(words);
    String[] args = line.toArray(String[]::new);
    Optional<CheckCommand> usual = UsualLine.check(args);
    if (usual.isPresent()) {
      // A line that the definition refuses throws here.
      Object defined = Main.line().parseArgs(args).subcommand().commandSpec().userObject();
      assertThat(fields(usual.get())).isEqualTo(fields((CheckCommand) defined));
    }
  }

  @Example
  void theseAreUsual() {
    assertThat(UsualLine.check("check", "programs")).isPresent();
    assertThat(UsualLine.check("check", "-q", "a.nc", "-", "b.nc")).isPresent();
    assertThat(UsualLine.check("check", "--only", "chip-below-minimum,step-differs", "a.nc"))
        .isPresent();
    assertThat(UsualLine.check("check", "--format", "sarif", "--fail-on", "error", "a b.nc"))
        .isPresent();
  }

  @Example
  void theseAreLeftToTheDefinition() {
    assertThat(UsualLine.check()).isEmpty();
    assertThat(UsualLine.check("check")).isEmpty();
    assertThat(UsualLine.check("rules", "a.nc")).isEmpty();
    assertThat(UsualLine.check("check", "--help")).isEmpty();
    assertThat(UsualLine.check("check", "a.nc", "--format")).isEmpty();
    assertThat(UsualLine.check("check", "-q", "--quiet", "a.nc")).isEmpty();
  }

  private static Map<String, @Nullable Object> fields(CheckCommand command) throws Exception {
    Map<String, @Nullable Object> fields = new LinkedHashMap<>();
    for (Field field : CheckCommand.class.getDeclaredFields()) {
      if (!Modifier.isStatic(field.getModifiers()) && !field.isSynthetic()) {
        field.setAccessible(true);
        fields.put(field.getName(), field.get(command));
      }
    }
    return fields;
  }
}
