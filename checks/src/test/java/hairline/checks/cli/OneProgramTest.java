package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the commands say that take one program or two, of everything that is none. */
class OneProgramTest {
  private static final String GOOD = "G21 G90 G17 G94\nG54\nT1 M6\nG0 X0. Y0. Z1.\nM30\n";

  @TempDir private Path folder;

  private Ran run(String command, String program) throws IOException {
    String good = Files.writeString(folder.resolve("good.nc"), GOOD).toString();
    return command.equals("compare") ? Ran.of(command, good, program) : Ran.of(command, program);
  }

  private void fails(String command, String program, int status, String sentence)
      throws IOException {
    Ran ran = run(command, program);
    assertThat(ran.status()).as(sentence).isEqualTo(status);
    assertThat(ran.err()).contains(sentence).doesNotContain("Exception", "\tat ");
    assertThat(ran.out()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"brief", "compare", "window"})
  void everyWrongInputIsASentence(String command) throws IOException {
    fails(command, "gone.nc", 3, "`gone.nc` does not exist");
    fails(command, folder.toString(), 2, "is a folder, and one program is due");
    Path empty = Files.createFile(folder.resolve("empty.nc"));
    fails(command, empty.toString(), 3, "is empty");
    Path binary = Files.write(folder.resolve("binary.nc"), new byte[] {'G', '1', 3, 0, 7, 12});
    fails(command, binary.toString(), 3, "is no text: byte 3 of it is 03 (hexadecimal)");
    fails(command, "-", 3, "`standard input` is empty");
    fails(command, "--", 2, "is missing");
  }

  @ParameterizedTest
  @ValueSource(strings = {"brief", "compare", "window"})
  void everyWrongOptionIsASentence(String command) throws IOException {
    String good = Files.writeString(folder.resolve("good.nc"), GOOD).toString();
    String[][] wrong = {
      {"--bogus", "unknown option `--bogus`"},
      {"--format=xml", "--format takes text"},
      {"--color=green", "--color takes auto, always, never, not `green`"},
      {"--set=foo", "--set `foo` is no key=value"},
      {"--set=machine.resolution=3 kg", "machine.resolution"},
      {"--setup=gone.yaml", "the file `gone.yaml` does not exist"},
    };
    for (String[] option : wrong) {
      Ran ran =
          command.equals("compare")
              ? Ran.of(command, option[0], good, good)
              : Ran.of(command, option[0], good);
      assertThat(ran.status()).as(option[0]).isEqualTo(2);
      assertThat(ran.err()).contains(option[1]).doesNotContain("Exception");
    }
    Ran misspelt = Ran.of(command.substring(1), good);
    assertThat(misspelt.status()).isEqualTo(2);
    assertThat(misspelt.err())
        .contains("unknown command `" + command.substring(1) + "`; nearest is " + command);
  }

  @ParameterizedTest
  @ValueSource(strings = {"brief", "compare", "window"})
  void aProgramByStandardInputIsTakenByName(String command) throws IOException {
    String good = Files.writeString(folder.resolve("good.nc"), GOOD).toString();
    Ran ran =
        command.equals("compare")
            ? Ran.withInput(GOOD, command, good, "-")
            : Ran.withInput(GOOD, command, "-");
    assertThat(ran.status()).isZero();
    assertThat(ran.out()).contains("standard input");
  }
}
