package hairline.packing;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Rewrites a jar so that its own classes need nothing linked at the start. */
public final class Packing {
  private static final String CLASS = ".class";

  private Packing() {}

  /**
   * Rewrites a jar where it stands. Entries keep their order and the time of the first.
   *
   * @param args the jar, and with what the names of the entries begin that are to be rewritten:
   *     {@code hairline/}
   * @throws IOException if the jar can't be read or written
   */
  public static void main(String[] args) throws IOException {
    if (args.length != 2) {
      throw new IllegalArgumentException(
          "takes a jar and the folder of the classes in it, not " + args.length + " arguments");
    }
    rewrite(Path.of(args[0]), args[1]);
  }

  static void rewrite(Path jar, String folder) throws IOException {
    Map<String, byte[]> entries = new LinkedHashMap<>();
    LocalDateTime time = null;
    try (ZipInputStream in = new ZipInputStream(Files.newInputStream(jar))) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        entries.put(entry.getName(), in.readAllBytes());
        time = time == null ? entry.getTimeLocal() : time;
      }
    }
    if (time == null) {
      throw new IOException(jar + " holds nothing");
    }
    Map<String, byte[]> classes = new LinkedHashMap<>();
    entries.forEach(
        (name, bytes) -> {
          if (name.startsWith(folder) && name.endsWith(CLASS)) {
            classes.put(name.substring(0, name.length() - CLASS.length()), bytes);
          }
        });
    PlainClasses.of(classes).forEach((name, bytes) -> entries.put(name + CLASS, bytes));
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    try (ZipOutputStream out = new ZipOutputStream(whole)) {
      for (Map.Entry<String, byte[]> each : entries.entrySet()) {
        ZipEntry entry = new ZipEntry(each.getKey());
        entry.setTimeLocal(time);
        out.putNextEntry(entry);
        out.write(each.getValue());
        out.closeEntry();
      }
    }
    Files.write(jar, whole.toByteArray());
  }
}
