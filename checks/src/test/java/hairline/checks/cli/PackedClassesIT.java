package hairline.checks.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;

/** The classes of {@code hairline.jar}, which were rewritten as they were packed. */
class PackedClassesIT {
  private static final Path JAR = Path.of(System.getProperty("hairline.jar"));

  private static List<String> own(JarFile jar) {
    return jar.stream()
        .map(JarEntry::getName)
        .filter(name -> name.startsWith("hairline/") && name.endsWith(".class"))
        .toList();
  }

  @Test
  void passJavasVerifier() throws Exception {
    List<String> names;
    try (JarFile jar = new JarFile(JAR.toFile())) {
      names = own(jar);
    }
    assertThat(names).hasSizeGreaterThan(1000);
    try (URLClassLoader loader =
        new URLClassLoader(new URL[] {JAR.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
      for (String name : names) {
        String type = name.substring(0, name.length() - ".class".length()).replace('/', '.');
        // To initialise a class, Java verifies it.
        assertThat(Class.forName(type, true, loader).getClassLoader()).isSameAs(loader);
      }
    }
  }

  /** The names stand in the constants of a class in this encoding. */
  @Test
  void haveNothingLinkedAtTheStartButForAFew() throws Exception {
    List<String> records = new ArrayList<>();
    List<String> lambdas = new ArrayList<>();
    try (JarFile jar = new JarFile(JAR.toFile())) {
      for (String name : own(jar)) {
        try (InputStream in = jar.getInputStream(jar.getEntry(name))) {
          String bytes = new String(in.readAllBytes(), StandardCharsets.ISO_8859_1);
          if (bytes.contains("java/lang/runtime/ObjectMethods")) {
            records.add(name);
          }
          if (bytes.contains("java/lang/invoke/LambdaMetafactory")) {
            lambdas.add(name);
          }
        }
      }
    }
    assertThat(records).isEmpty();
    assertThat(lambdas).hasSizeLessThan(10);
  }
}
