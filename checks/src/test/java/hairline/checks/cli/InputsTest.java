package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which programs the paths of a command line name, and in which order they come. */
class InputsTest {
  @TempDir private Path folder;

  private Path file(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, "M30\n");
  }

  private List<Input> of(String... paths) {
    return Inputs.of(List.of(paths), InputStream.nullInputStream());
  }

  private List<String> names(List<Input> inputs) {
    String prefix = Inputs.name(folder) + "/";
    return inputs.stream().map(input -> input.name().replace(prefix, "")).toList();
  }

  @Test
  void aFolderHoldsWhatItsEndingCallsAProgram() throws IOException {
    for (String name :
        List.of(
            "b.nc",
            "a.NC",
            "sub/c.tap",
            "sub/.hidden.nc",
            ".git/d.nc",
            "e.txt",
            "nc",
            ".nc",
            "f.nc.bak",
            "g.tar.nc",
            "sub/deep/h.GCode")) {
      file(name);
    }
    assertThat(names(of(folder.toString())))
        .containsExactly("a.NC", "b.nc", "g.tar.nc", "sub/c.tap", "sub/deep/h.GCode");
    List<Path> all = new ArrayList<>();
    for (String ending : Inputs.ENDINGS) {
      all.add(file("all/x." + ending.toUpperCase(Locale.ROOT)));
    }
    assertThat(of(folder.resolve("all").toString())).hasSameSizeAs(all);
    // A folder that was named is searched, even where its own name is a hidden one.
    assertThat(names(of(folder.resolve(".git").toString()))).containsExactly(".git/d.nc");
    assertThat(names(of(folder.resolve("e.txt").toString())))
        .as("a file that was named is one, whatever its ending")
        .containsExactly("e.txt");
  }

  @Test
  void theOrderIsThatOfNamesAndEachFileComesOnce() throws IOException {
    String a = file("a.nc").toString();
    String b = file("b.nc").toString();
    assertThat(names(of(b, a, b))).containsExactly("a.nc", "b.nc");
    assertThat(names(of(folder + "/./a.nc", folder + "/x/../a.nc"))).containsExactly("a.nc");
    List<Input> both = of(folder.toString(), b);
    assertThat(names(both)).containsExactly("a.nc", "b.nc");
    assertThat(((Input.InFile) both.get(0)).found()).as("met in a folder").isTrue();
    assertThat(((Input.InFile) both.get(1)).found()).as("named as well").isFalse();
    List<Input> named = of(a);
    assertThat(((Input.InFile) named.get(0)).found()).isFalse();
  }

  @Test
  void linksToOneFileAreOneProgram() throws IOException {
    assumeTrue(File.separatorChar == '/');
    Path a = file("in/a.nc");
    Files.createSymbolicLink(folder.resolve("in/z.nc"), a);
    List<Input> found = of(folder.resolve("in").toString());
    assertThat(names(found)).containsExactly("in/a.nc");
    assertThat(((Input.InFile) found.get(0)).found()).isTrue();
    // Whoever names it by its link wants it checked by itself.
    List<Input> linked = of(folder.resolve("in").toString(), folder.resolve("in/z.nc").toString());
    assertThat(linked).hasSize(1);
    assertThat(((Input.InFile) linked.get(0)).found()).isFalse();
  }

  @Test
  void whatCannotBeUsedKeepsItsPlaceAndItsReason() throws IOException {
    Files.createDirectory(folder.resolve("none"));
    List<Input> none = of(folder.resolve("none").toString(), "");
    assertThat(none).hasSize(2).allMatch(input -> input instanceof Input.Unusable);
    assertThat(((Input.Unusable) none.get(1)).failed().trouble().sentence())
        .contains("there is no part program in the folder");
    Input input =
        Inputs.of(
                List.of("-", "-"),
                new ByteArrayInputStream("M30\n".getBytes(StandardCharsets.UTF_8)))
            .get(0);
    assertThat(input).isInstanceOf(Input.Spooled.class);
    assertThat(input.name()).isEqualTo("standard input");
    assertThat(Inputs.files(List.of(input))).isEmpty();
  }

  /** A tenth of bytes that are no text is borne: tape has leaders, and a stray byte is told. */
  @Test
  void aTenthOfOddBytesIsStillText() throws Exception {
    Path file = folder.resolve("a.nc");
    Input.InFile input = new Input.InFile("a.nc", file, false);
    byte[] text = "G21 G90 G1 X1. Y1.\n\t\r\f".getBytes(StandardCharsets.UTF_8);
    byte[] bytes = new byte[30];
    java.util.Arrays.fill(bytes, (byte) 'X');
    System.arraycopy(text, 0, bytes, 0, text.length);
    bytes[27] = 0;
    bytes[28] = 0x1F;
    bytes[29] = 0x7F;
    Files.write(file, bytes);
    Inputs.lookAt(input);
    bytes[26] = 1;
    Files.write(file, bytes);
    try {
      Inputs.lookAt(input);
      assertThat(false).as("refused").isTrue();
    } catch (Failed e) {
      assertThat(e.trouble().sentence())
          .isEqualTo("`a.nc` is no text: byte 27 of it is 01 (hexadecimal)");
    }
    Files.write(file, new byte[] {'X', (byte) 0x80, (byte) 0xFF, ' '});
    Inputs.lookAt(input);
  }
}
