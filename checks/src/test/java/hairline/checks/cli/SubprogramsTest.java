package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A folder with programs and the subprograms that they call. */
class SubprogramsTest {
  @TempDir private Path folder;

  @BeforeEach
  void sheet() throws IOException {
    write("setup.yaml", "machine: {resolution: 0.1 um}\n");
  }

  private Path write(String name, String text) throws IOException {
    return Files.writeString(folder.resolve(name), text);
  }

  private static String calling(String... calls) {
    return "G21 G90 G17 G94\nG54\nG0 X0. Y0. Z1.\n" + String.join("\n", calls) + "\nM30\n";
  }

  /** Its states are those of its caller; by itself it starts with nothing stated. */
  private static String subprogram(int number) {
    return "O" + number + "\nG1 X1. F100.\nM99\n";
  }

  @Test
  void aFileThatAnotherCallsIsCheckedThroughItAndThatIsSaidOnce() throws IOException {
    write("part.nc", calling("M98 P100 L2"));
    write("O0100.nc", subprogram(100));
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.status()).as(ran.out()).isZero();
    assertThat(ran.out()).contains("in 1 program;");
    assertThat(ran.err())
        .containsOnlyOnce("is a subprogram of another program and is checked through it")
        .contains("O0100.nc");
  }

  @Test
  void namedItIsCheckedAllTheSame() throws IOException {
    Path part = write("part.nc", calling("M98 P100"));
    Path sub = write("O0100.nc", subprogram(100));
    for (List<Path> named : List.of(List.of(folder, sub), List.of(sub, folder, part))) {
      Ran ran = check(named);
      assertThat(ran.out()).contains("in 2 programs");
      assertThat(ran.err()).isEmpty();
    }
  }

  private static Ran check(List<Path> paths) {
    return Ran.of(
        Stream.concat(Stream.of("check"), paths.stream().map(Path::toString))
            .toArray(String[]::new));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "(M98 P100)",
        "M98 P101",
        "M98 P#1",
        "M98 P100 L0",
        "M30\nM98 P100",
        "M98 P200\nM30\nO200\nM99\nM98 P100",
        "M98 P100\nM30\nO100\nG1 X2. F100.\nM99"
      })
  void whatNoCallReachesIsCheckedByItself(String lines) throws IOException {
    write("part.nc", calling(lines));
    write("O0100.nc", subprogram(100));
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.out()).contains("in 2 programs").contains("O0100.nc");
    assertThat(ran.err()).isEmpty();
  }

  @Test
  void aProgramOfItsOwnIsCheckedByItselfThoughItIsCalled() throws IOException {
    write("part.nc", calling("M98 P100", "M98 P200"));
    write("O0100.nc", subprogram(100).replace("M99", "M30"));
    write("O0200.nc", subprogram(200) + "O201\nG0 X1.\nM30\n");
    assertThat(Ran.of("check", folder.toString()).out()).contains("in 3 programs");
  }

  @Test
  void callsBehindBlockDeleteAndThroughOtherFilesCount() throws IOException {
    write("part.nc", calling("/M98 P100", "M98 P300\nM30\nO300\nM98 P400\nM99"));
    write("O0100.nc", "O100\n/M99\nM98 P200\nM99\n");
    write("O0200.nc", subprogram(200));
    write("400.nc", subprogram(400));
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.out()).contains("in 1 program;");
    assertThat(ran.err()).contains("3 files are subprograms of others").contains("400.nc");
  }

  @Test
  void aCircleThatNobodyEntersIsCheckedFromItsFirst() throws IOException {
    write("O0001.nc", "O1\nG0 X1.\nM98 P2\nM99\n");
    write("O0002.nc", "O2\nG0 X1.\nM98 P1\nM99\n");
    write("O0003.nc", "O3\nG0 X1.\nM98 P1\nM99\n");
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.out()).contains("in 1 program;").contains("O0003.nc");
    Files.delete(folder.resolve("O0003.nc"));
    Ran circle = Ran.of("check", folder.toString());
    assertThat(circle.out()).contains("in 1 program;").contains("O0001.nc:");
  }

  @Test
  void aCallThatTheSheetGivesAMeaningIsNoCall() throws IOException {
    write("setup.yaml", "machine: {resolution: 0.1 um, codes: {warm_up: [P100]}}\n");
    write("part.nc", calling("M98 P100"));
    write("O0100.nc", subprogram(100));
    assertThat(Ran.of("check", folder.toString()).out()).contains("in 2 programs");
  }

  @Test
  void aCallerThatCannotBeCheckedSparesNothing() throws IOException {
    write("part.nc", calling("M98 P100"));
    write("part.setup.yaml", "machine: {resolutoin: 0.1 um}\n");
    write("O0100.nc", subprogram(100));
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.out()).contains("O0100.nc");
    assertThat(ran.err()).doesNotContain("subprogram");
  }

  @Test
  void subprogramsOfAnotherFolderAreNotCalled() throws IOException {
    write("part.nc", calling("M98 P100"));
    write("O0100.nc", subprogram(100));
    Path below = Files.createDirectory(folder.resolve("below"));
    Files.writeString(below.resolve("O0100.nc"), subprogram(100));
    Ran ran = Ran.of("check", folder.toString());
    assertThat(ran.out()).contains("in 2 programs").contains("below/O0100.nc");
  }

  @Test
  void theOrderIsThatOfNamesWhateverIsLeftOutAndHoweverManyWork() throws IOException {
    write("a.nc", calling("M98 P100"));
    write("z.nc", calling("M98 P200"));
    write("O0100.nc", subprogram(100));
    write("O0200.nc", subprogram(200));
    write("O0300.nc", subprogram(300));
    Ran one = Ran.of("check", "--jobs=1", folder.toString());
    Ran four = Ran.of("check", "--jobs=4", folder.toString());
    assertThat(four).isEqualTo(one);
    assertThat(one.out()).contains("in 3 programs");
    assertThat(one.out().indexOf("O0300.nc")).isLessThan(one.out().indexOf("/a.nc")).isPositive();
  }
}
