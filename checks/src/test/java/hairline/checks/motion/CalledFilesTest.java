package hairline.checks.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which files a program calls, told from its text. */
class CalledFilesTest {
  @TempDir private Path folder;

  private Path file(String name, String... lines) throws IOException {
    return Files.writeString(folder.resolve(name), String.join("\n", lines) + "\n");
  }

  @BeforeEach
  void subprograms() throws IOException {
    file("O0100.nc", "O100", "G1 X1", "M99");
    file("O0200.nc", "O200", "G1 X2", "M98 P300", "M99");
    file("O0300.nc", "O300", "G1 X3", "M99");
  }

  /** The names of what a program of these lines calls. */
  private Set<String> called(String... lines) throws IOException {
    return called(Map.of(), lines);
  }

  private Set<String> called(Map<String, Event.MachineCode.Meaning> sheet, String... lines)
      throws IOException {
    Path program = file("main.nc", lines);
    return CalledFiles.of(program, sheet).stream()
        .map(path -> path.getFileName().toString())
        .collect(java.util.stream.Collectors.toSet());
  }

  @Test
  void aPlainNumberIsACall() throws IOException {
    assertThat(called("G0 X0", "M98 P100", "M30")).containsExactly("O0100.nc");
    assertThat(called("G1 X5 F10 M98 P0100. L3", "M30")).containsExactly("O0100.nc");
    assertThat(called("G1 X5 F10", "M30")).isEmpty();
  }

  @Test
  void whatASubprogramCallsIsCalled() throws IOException {
    assertThat(called("M98 P200", "M98 P100", "M30"))
        .containsExactlyInAnyOrder("O0100.nc", "O0200.nc", "O0300.nc");
  }

  @Test
  void anotherCodeOrLetterIsNone() throws IOException {
    assertThat(called("M97 P100", "G98 P100", "M98 Q100", "M98", "M30")).isEmpty();
  }

  @Test
  void aNumberOnlyTheRunWouldKnowIsLeftOut() throws IOException {
    assertThat(called("#1=100", "M98 P#1", "M98 P[50+50]", "M98 P100.5", "M30")).isEmpty();
    // The word decides that stands first.
    assertThat(called("M98 P#1 P100", "M30")).isEmpty();
  }

  @Test
  void noRepeatsAreNoCall() throws IOException {
    assertThat(called("M98 P100 L0", "M30")).isEmpty();
    assertThat(called("M98 P100 L1", "M98 P300 L#1", "M30"))
        .containsExactlyInAnyOrder("O0100.nc", "O0300.nc");
  }

  @Test
  void behindItsEndAProgramCallsNothing() throws IOException {
    for (String end : List.of("M2", "M30", "M99")) {
      assertThat(called(end, "M98 P100")).as(end).isEmpty();
      // The end may be left out by a switch.
      assertThat(called("/" + end, "M98 P100")).as(end).containsExactly("O0100.nc");
    }
    assertThat(called("M3", "G2", "G30", "G99", "M98 P100", "M30")).containsExactly("O0100.nc");
  }

  @Test
  void aMeaningOnTheSheetIsNoCall() throws IOException {
    Map<String, Event.MachineCode.Meaning> sheet =
        Map.of("P100", Event.MachineCode.Meaning.MEASURE_TOOL);
    assertThat(called(sheet, "M98 P100", "M98 P300", "M30")).containsExactly("O0300.nc");
  }

  @Test
  void aProgramThatCallsItselfIsNotAmongThem() throws IOException {
    file("O0400.nc", "O400", "M98 P500", "M99");
    file("O0500.nc", "O500", "M98 P400", "M99");
    assertThat(CalledFiles.of(folder.resolve("O0400.nc"), Map.of()))
        .containsExactly(folder.resolve("O0500.nc").toRealPath());
  }

  @Test
  void aFileThatIsNotThereIsNone() throws IOException {
    assertThat(called("M98 P999", "M30")).isEmpty();
  }

  @Test
  void aFileOfSubprogramsHasTheNameOfOneAndEndsNoRun() throws IOException {
    assertThat(CalledFiles.isSubprogramFile(folder.resolve("O0100.nc"))).isTrue();
    for (String name : List.of("100", "O100", "0100.nc", "O100.tap")) {
      assertThat(CalledFiles.isSubprogramFile(file(name, "G1 X1", "M99"))).as(name).isTrue();
    }
    for (String name : List.of("part.nc", "O100a.nc", "O100.v2.nc", "P100.nc", "O.nc")) {
      assertThat(CalledFiles.isSubprogramFile(file(name, "G1 X1", "M99"))).as(name).isFalse();
    }
  }

  @Test
  void aFileWithAProgramThatEndsTheRunIsMoreThanSubprograms() throws IOException {
    assertThat(CalledFiles.isSubprogramFile(file("O1", "O1", "X1", "M30"))).isFalse();
    assertThat(CalledFiles.isSubprogramFile(file("O2", "O2", "X1"))).isFalse();
    assertThat(CalledFiles.isSubprogramFile(file("O3", "O3", "M99", "O4", "M2"))).isFalse();
    assertThat(CalledFiles.isSubprogramFile(file("O5", "O5", "M30", "O6", "M99"))).isFalse();
    assertThat(CalledFiles.isSubprogramFile(file("O7", "O7", "M99", "O8", "M99"))).isTrue();
    // The last one may lack its end.
    assertThat(CalledFiles.isSubprogramFile(file("O9", "O9", "M99", "O10", "X1"))).isTrue();
  }
}
