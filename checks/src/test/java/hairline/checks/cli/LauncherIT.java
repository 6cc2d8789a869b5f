package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code mvn package} leaves to run: the launcher with its folder, and the jar alone. */
class LauncherIT {
  private static final Path BUILT = Path.of(System.getProperty("hairline.home"));
  private static final Path JAR = Path.of(System.getProperty("hairline.jar"));
  private static final String JAVA_HOME = System.getProperty("java.home");
  private static final String VERSION = "hairline " + System.getProperty("hairline.version");

  /** Which library brings which folders of the jar, and how licenses.txt calls it. */
  private static final Map<String, String> LIBRARIES =
      Map.of(
          "com/fasterxml", "Jackson core",
          "org/antlr", "ANTLR 4 runtime",
          "org/jspecify", "JSpecify",
          "org/yaml", "SnakeYAML",
          "picocli", "picocli");

  @TempDir private Path folder;

  @BeforeEach
  void needsAPosixShell() {
    assumeTrue(File.separatorChar == '/');
  }

  private record Ended(int status, String out, String err) {}

  private Ended run(Map<String, String> environment, String... command) throws Exception {
    Path out = Files.createTempFile(folder, "out", "");
    Path err = Files.createTempFile(folder, "err", "");
    ProcessBuilder builder = new ProcessBuilder(command);
    builder.directory(folder.toFile());
    builder.redirectOutput(out.toFile()).redirectError(err.toFile());
    // What the JVM prints about these would stand between the program's own words.
    Stream.of("JAVA_TOOL_OPTIONS", "_JAVA_OPTIONS", "JDK_JAVA_OPTIONS", "HAIRLINE_JAVA_OPTS")
        .forEach(builder.environment()::remove);
    builder.environment().putAll(environment);
    int status = builder.start().waitFor();
    return new Ended(status, Files.readString(out), Files.readString(err));
  }

  private static Map<String, String> java() {
    return Map.of("JAVA_HOME", JAVA_HOME);
  }

  /** The launcher's folder, moved to a place whose name needs quoting. */
  private Path moved() throws IOException {
    Path home = folder.resolve("a shop's (tools)").resolve("hairline");
    try (Stream<Path> files = Files.walk(BUILT)) {
      for (Path file : files.sorted().toList()) {
        Path target = home.resolve(BUILT.relativize(file).toString());
        Files.createDirectories(target.getParent());
        Files.copy(file, target);
      }
    }
    return home;
  }

  /** Stands in for a Java of some version: prints the words it is started with, one a line. */
  private Path standIn(String version) throws IOException {
    Path home = Files.createDirectories(folder.resolve("java " + version));
    Files.writeString(home.resolve("release"), "JAVA_VERSION=\"" + version + "\"\n");
    script(home.resolve("bin/java"), "printf '%s\\n' \"$@\" \"locale $LC_ALL\"");
    return home;
  }

  private static void script(Path file, String line) throws IOException {
    Files.createDirectories(file.getParent());
    Files.writeString(file, "#!/bin/sh\n" + line + "\n");
    assertThat(file.toFile().setExecutable(true)).isTrue();
  }

  private static String launcher(Path home) {
    return home.resolve("bin/hairline").toString();
  }

  private static void versionAndNothingElse(Ended ended) {
    assertThat(ended).isEqualTo(new Ended(0, VERSION + System.lineSeparator(), ""));
  }

  private static void refusal(Ended ended, String... parts) {
    assertThat(ended.status()).isEqualTo(2);
    assertThat(ended.out()).isEmpty();
    assertThat(ended.err()).startsWith("hairline: ").contains(parts).hasLineCount(1);
  }

  @Test
  void runs() throws Exception {
    versionAndNothingElse(run(java(), launcher(BUILT), "--version"));
  }

  @Test
  void runsFromAnyFolderThroughLinks() throws Exception {
    Path home = moved();
    Path absolute = Files.createSymbolicLink(folder.resolve("link 1"), Path.of(launcher(home)));
    Path relative = Files.createSymbolicLink(folder.resolve("link2"), absolute.getFileName());
    versionAndNothingElse(run(java(), launcher(home), "--version"));
    versionAndNothingElse(run(java(), relative.toString(), "--version"));
    versionAndNothingElse(run(java(), "./link2", "--version"));
    versionAndNothingElse(
        run(
            Map.of(
                "JAVA_HOME",
                JAVA_HOME,
                "CDPATH",
                folder.toString(),
                "PATH",
                folder + ":" + System.getenv("PATH")),
            "sh",
            "-c",
            "link2 --version"));
  }

  @Test
  void takesTheFirstJavaOfThePath() throws Exception {
    String path = JAVA_HOME + "/bin:" + System.getenv("PATH");
    versionAndNothingElse(run(Map.of("JAVA_HOME", "", "PATH", path), launcher(BUILT), "--version"));
  }

  @Test
  void isSilentAboutAClassArchiveItCannotUse() throws Exception {
    Path home = moved();
    String archive = "lib/hairline-" + System.getProperty("java.version") + ".jsa";
    Files.deleteIfExists(home.resolve(archive));
    versionAndNothingElse(run(java(), launcher(home), "--version"));
    Files.writeString(home.resolve(archive), "no archive at all");
    versionAndNothingElse(run(java(), launcher(home), "--version"));
    try (Stream<Path> built = Files.list(BUILT.resolve("lib"))) {
      for (Path real : built.filter(file -> file.toString().endsWith(".jsa")).toList()) {
        byte[] bytes = Files.readAllBytes(real);
        Files.write(home.resolve(archive), bytes);
        versionAndNothingElse(run(java(), launcher(home), "--version"));
        Files.write(home.resolve(archive), Arrays.copyOf(bytes, bytes.length / 2));
        versionAndNothingElse(run(java(), launcher(home), "--version"));
      }
    }
  }

  @Test
  void passesArgumentsUntouched() throws Exception {
    List<String> arguments =
        List.of("check", "two words", "*", "$HOME", "@file", "", "-", "back\\slash", "\"");
    List<String> command = new ArrayList<>(List.of(launcher(BUILT)));
    command.addAll(arguments);
    Ended ended =
        run(
            Map.of("JAVA_HOME", standIn("17.0.1").toString(), "HAIRLINE_JAVA_OPTS", "-Xmx1g -Dx=*"),
            command.toArray(String[]::new));
    List<String> words = ended.out().lines().toList();
    assertThat(words).containsSequence("-Xmx1g", "-Dx=*");
    int main = words.indexOf("hairline.checks.cli.Main");
    assertThat(words.subList(main + 1, words.size() - 1)).isEqualTo(arguments);
    assertThat(words.subList(0, main))
        .contains(BUILT.toRealPath().resolve("lib/hairline.jar").toString());
  }

  /**
   * A program of 200,000 blocks takes a fifth less processor time with one compiler, a million
   * blocks with both take a fifth less where the better one copies less; measured.
   */
  @Test
  void shortProgramsAreCheckedWithTheQuickCompilerAlone() throws Exception {
    Map<String, String> java = Map.of("JAVA_HOME", standIn("17.0.1").toString());
    Path programs = Files.createDirectories(folder.resolve("some programs"));
    Path program = Files.writeString(programs.resolve("one.nc"), "G0 X1.\n");
    String quick = "-XX:TieredStopAtLevel=1";
    String in = programs.toString();
    assertThat(run(java, launcher(BUILT), "check", program.toString()).out()).contains(quick);
    assertThat(run(java, launcher(BUILT), "check", "-q", in).out()).contains(quick);
    assertThat(run(java, launcher(BUILT), "rules").out()).contains(quick);
    assertThat(run(java, launcher(BUILT)).out()).contains(quick);
    String frugal = "-XX:InlineSmallCode=";
    assertThat(run(java, launcher(BUILT), "check", program.toString()).out())
        .doesNotContain(frugal);
    assertThat(run(java, launcher(BUILT), "check", "-").out())
        .doesNotContain(quick)
        .contains(frugal);
    try (RandomAccessFile file = new RandomAccessFile(program.toFile(), "rw")) {
      file.setLength(17L << 20);
    }
    assertThat(run(java, launcher(BUILT), "check", in, "x.nc").out()).doesNotContain(quick);
    assertThat(run(java, launcher(BUILT), "check", "x.nc", program.toString()).out())
        .doesNotContain(quick);
  }

  @Test
  void givesJavaALocaleThatCanNameFiles() throws Exception {
    String java = standIn("17.0.1").toString();
    Map<String, String> plain = Map.of("JAVA_HOME", java, "LC_ALL", "", "LC_CTYPE", "", "LANG", "");
    assertThat(run(plain, launcher(BUILT)).out()).endsWith("locale C.UTF-8\n");
    assertThat(run(Map.of("JAVA_HOME", java, "LC_ALL", "POSIX"), launcher(BUILT)).out())
        .endsWith("locale C.UTF-8\n");
    assertThat(run(Map.of("JAVA_HOME", java, "LC_ALL", "de_DE.UTF-8"), launcher(BUILT)).out())
        .endsWith("locale de_DE.UTF-8\n");
  }

  @Test
  void saysThatThereIsNoJava() throws Exception {
    Path tools = Files.createDirectories(folder.resolve("tools"));
    for (String tool : List.of("dirname", "ls", "sed")) {
      String path = run(Map.of(), "sh", "-c", "command -v " + tool).out().strip();
      script(tools.resolve(tool), "exec " + path + " \"$@\"");
    }
    Map<String, String> environment = Map.of("JAVA_HOME", "", "PATH", tools.toString());
    refusal(run(environment, launcher(BUILT), "--version"), "no Java found", "JAVA_HOME");
  }

  @Test
  void saysThatJavaHomeHasNoJava() throws Exception {
    Map<String, String> environment = Map.of("JAVA_HOME", folder.toString());
    refusal(run(environment, launcher(BUILT)), "JAVA_HOME is " + folder, "bin/java");
  }

  @Test
  void saysThatJavaIsTooOld() throws Exception {
    for (Map.Entry<String, String> old :
        Map.of("1.8.0_392", "8", "11.0.2", "11", "16", "16").entrySet()) {
      Map<String, String> environment = Map.of("JAVA_HOME", standIn(old.getKey()).toString());
      refusal(run(environment, launcher(BUILT)), "Java 17 or newer", "is Java " + old.getValue());
    }
    Path unlabelled = folder.resolve("java");
    script(unlabelled.resolve("bin/java"), "echo 'openjdk version \"11.0.2\" 2019-01-15' >&2");
    refusal(run(Map.of("JAVA_HOME", unlabelled.toString()), launcher(BUILT)), "is Java 11");
  }

  @Test
  void saysThatTheJarIsMissing() throws Exception {
    Path home = moved();
    Files.delete(home.resolve("lib/hairline.jar"));
    refusal(run(java(), launcher(home)), "hairline.jar is missing", "mvn package");
  }

  @Test
  void theWindowsLauncherHasWindowsLineEnds() throws Exception {
    String text = Files.readString(BUILT.resolve("bin/hairline.bat"), StandardCharsets.US_ASCII);
    assertThat(text.replace("\r\n", "")).isNotEmpty().doesNotContain("\n", "\r");
  }

  @Test
  void theJarRunsAlone() throws Exception {
    Path alone = Files.copy(JAR, folder.resolve("alone.jar"));
    versionAndNothingElse(
        run(Map.of(), JAVA_HOME + "/bin/java", "-jar", alone.toString(), "--version"));
  }

  @Test
  void theJarBringsTheLicenceOfAllItHolds() throws Exception {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      Set<String> classFolders =
          jar.stream()
              .map(entry -> entry.getName())
              .filter(name -> name.endsWith(".class") && !name.startsWith("hairline/"))
              .map(name -> name.startsWith("picocli/") ? "picocli" : twoFolders(name))
              .collect(Collectors.toCollection(TreeSet::new));
      assertThat(classFolders).isEqualTo(new TreeSet<>(LIBRARIES.keySet()));
      assertThat(text(jar, "META-INF/licenses.txt")).contains(LIBRARIES.values());
      assertThat(text(jar, "META-INF/LICENSE")).contains("Apache License", "Version 2.0");
      assertThat(text(jar, "META-INF/NOTICE")).contains("Jackson");
      assertThat(jar.getEntry("META-INF/thirdparty-LICENSE")).isNotNull();
    }
  }

  private static String twoFolders(String name) {
    int second = name.indexOf('/', name.indexOf('/') + 1);
    return second < 0 ? name : name.substring(0, second);
  }

  private static String text(JarFile jar, String entry) throws IOException {
    return new String(
        jar.getInputStream(jar.getJarEntry(entry)).readAllBytes(), StandardCharsets.UTF_8);
  }
}
