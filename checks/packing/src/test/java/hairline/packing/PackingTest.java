package hairline.packing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassReader;
import org.objectweb.asm.ClassVisitor;
import org.objectweb.asm.Handle;
import org.objectweb.asm.MethodVisitor;
import org.objectweb.asm.Opcodes;

/**
 * What the samples give as the compiler left them, where Java itself links what they call, is what
 * they have to give when rewritten.
 */
class PackingTest {
  private static final LocalDateTime TIME = LocalDateTime.of(2026, 1, 1, 0, 0);

  @TempDir Path folder;

  /** The class files of the samples, by internal name. */
  private static Map<String, byte[]> samples() throws IOException {
    Map<String, byte[]> classes = new LinkedHashMap<>();
    try (Stream<Path> files =
        Files.list(
            Path.of(
                Samples.class.getProtectionDomain().getCodeSource().getLocation().getPath(),
                "hairline/packing"))) {
      for (Path file : files.sorted().toList()) {
        String name = String.valueOf(file.getFileName());
        if (name.startsWith("Samples") && name.endsWith(".class")) {
          classes.put(
              "hairline/packing/" + name.substring(0, name.length() - ".class".length()),
              Files.readAllBytes(file));
        }
      }
    }
    return classes;
  }

  /** Classes from bytes, which Java verifies. */
  private static final class Loader extends ClassLoader {
    private final Map<String, byte[]> classes;

    Loader(Map<String, byte[]> classes) {
      super(PackingTest.class.getClassLoader());
      this.classes = classes;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      byte[] bytes = classes.get(name.replace('.', '/'));
      if (bytes == null) {
        return super.loadClass(name, resolve);
      }
      synchronized (getClassLoadingLock(name)) {
        Class<?> loaded = findLoadedClass(name);
        return loaded == null ? defineClass(name, bytes, 0, bytes.length) : loaded;
      }
    }
  }

  /** What calls in a class are linked when they are first made, by the method that links them. */
  private static List<String> linked(byte[] bytes) {
    List<String> linked = new ArrayList<>();
    new ClassReader(bytes)
        .accept(
            new ClassVisitor(Opcodes.ASM9) {
              @Override
              public MethodVisitor visitMethod(
                  int access,
                  String name,
                  String descriptor,
                  String signature,
                  String[] exceptions) {
                return new MethodVisitor(Opcodes.ASM9) {
                  @Override
                  public void visitInvokeDynamicInsn(
                      String name, String descriptor, Handle bootstrap, Object... arguments) {
                    linked.add(bootstrap.getName());
                  }
                };
              }
            },
            0);
    return linked;
  }

  @Test
  void rewrittenClassesGiveTheSame() throws Exception {
    Map<String, byte[]> classes = samples();
    classes.putAll(PlainClasses.of(classes));
    Class<?> rewritten = new Loader(classes).loadClass("hairline.packing.Samples");
    assertThat(rewritten).isNotSameAs(Samples.class);
    Object made = rewritten.getConstructor().newInstance();
    List<String> expected = new Samples().get();
    assertThat(expected).hasSizeGreaterThan(55).contains("hidden4", "secretshared", "nobody");
    assertThat(((Supplier<?>) made).get()).isEqualTo(expected);
  }

  @Test
  void onlyTheseLambdasAreLinkedAtTheStart() throws IOException {
    Map<String, byte[]> classes = samples();
    List<String> before = classes.values().stream().flatMap(c -> linked(c).stream()).toList();
    assertThat(before).contains("metafactory", "bootstrap", "altMetafactory");
    classes.putAll(PlainClasses.of(classes));
    assertThat(classes.values().stream().flatMap(c -> linked(c).stream()))
        // The serializable one, as made and as read back; the two that take a number out of any
        // box.
        .containsExactlyInAnyOrder(
            "altMetafactory", "altMetafactory", "metafactory", "metafactory");
  }

  @Test
  void classesWithoutLambdasAndRecordsStayAsTheyAre() throws IOException {
    byte[] plain;
    try (InputStream in = Object.class.getResourceAsStream("Object.class")) {
      plain = in.readAllBytes();
    }
    assertThat(PlainClasses.of(Map.of("java/lang/Object", plain))).isEmpty();
  }

  @Test
  void theHostOfTheNestHasToBeThere() throws IOException {
    byte[] inner = samples().get("hairline/packing/Samples$Inner");
    assertThatThrownBy(() -> PlainClasses.of(Map.of("hairline/packing/Samples$Inner", inner)))
        .hasMessageContaining("hairline/packing/Samples");
  }

  private Path jar() throws IOException {
    Path jar = Files.createTempFile(folder, "samples", ".jar");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(jar))) {
      put(out, "META-INF/MANIFEST.MF", "Manifest-Version: 1.0\n".getBytes(StandardCharsets.UTF_8));
      put(out, "folder/", new byte[0]);
      for (Map.Entry<String, byte[]> each : samples().entrySet()) {
        put(out, each.getKey() + ".class", each.getValue());
        put(out, "elsewhere/" + each.getKey() + ".class", each.getValue());
      }
      put(out, "last.txt", "last".getBytes(StandardCharsets.UTF_8));
    }
    return jar;
  }

  private static void put(ZipOutputStream out, String name, byte[] bytes) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    entry.setTimeLocal(TIME);
    out.putNextEntry(entry);
    out.write(bytes);
    out.closeEntry();
  }

  private static Map<String, byte[]> entries(Path jar) throws IOException {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    try (JarFile file = new JarFile(jar.toFile())) {
      for (JarEntry entry : file.stream().toList()) {
        assertThat(entry.getTimeLocal()).isEqualTo(TIME);
        try (InputStream in = file.getInputStream(entry)) {
          entries.put(entry.getName(), in.readAllBytes());
        }
      }
    }
    return entries;
  }

  @Test
  void jarKeepsItsOrderItsTimeAndWhatIsNotToBeRewritten() throws IOException {
    Path jar = jar();
    Map<String, byte[]> before = entries(jar);
    Packing.main(new String[] {jar.toString(), "hairline/"});
    Map<String, byte[]> after = entries(jar);
    assertThat(new ArrayList<>(after.keySet())).startsWith(before.keySet().toArray(String[]::new));
    assertThat(after).hasSizeGreaterThan(before.size() + 40);
    before.forEach(
        (name, bytes) -> {
          if (!name.startsWith("hairline/")) {
            assertThat(after.get(name)).isEqualTo(bytes);
          }
        });
    assertThat(after.get("hairline/packing/Samples.class"))
        .isNotEqualTo(before.get("hairline/packing/Samples.class"));
  }

  @Test
  void sameJarGivesTheSameBytes() throws IOException {
    Path one = jar();
    Path other = jar();
    Packing.rewrite(one, "hairline/");
    Packing.rewrite(other, "hairline/");
    assertThat(one).hasSameBinaryContentAs(other);
  }

  @Test
  void refusals() throws IOException {
    assertThatThrownBy(() -> Packing.main(new String[] {"one"})).hasMessageContaining("not 1");
    Path empty = folder.resolve("empty.jar");
    new ZipOutputStream(Files.newOutputStream(empty)).close();
    assertThatThrownBy(() -> Packing.rewrite(empty, "hairline/"))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("holds nothing");
  }
}
