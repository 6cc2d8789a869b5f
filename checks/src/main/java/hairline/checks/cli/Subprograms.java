package hairline.checks.cli;

import hairline.checks.motion.CalledFiles;
import hairline.checks.motion.SheetControl;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The files of a run that are checked through their callers and not by themselves: found in a
 * folder, nothing but subprograms, and called by another program of the run.
 */
final class Subprograms {
  /** So many are named in a sentence. */
  private static final int NAMED = 3;

  private final List<Input.InFile> called;

  private Subprograms(List<Input.InFile> called) {
    this.called = called;
  }

  /** Looks for them among all inputs. */
  static Subprograms among(List<Input> inputs, Sheets sheets) {
    Map<Path, Input.InFile> maybe = new LinkedHashMap<>();
    List<Input.InFile> callers = new ArrayList<>();
    for (Input input : inputs) {
      if (input instanceof Input.InFile file) {
        if (file.found() && isSubprogramFile(file)) {
          maybe.put(Inputs.real(file.path()), file);
        } else {
          callers.add(file);
        }
      }
    }
    if (maybe.isEmpty()) {
      return new Subprograms(List.of());
    }
    Set<Path> folders = new HashSet<>();
    maybe.keySet().forEach(path -> folders.add(path.resolveSibling("")));
    Set<Path> called = new HashSet<>();
    for (Input.InFile caller : callers) {
      if (folders.contains(Inputs.real(caller.path()).resolveSibling(""))) {
        called.addAll(calledBy(caller, sheets));
      }
    }
    addCalledByTheRest(maybe, called, sheets);
    return new Subprograms(
        maybe.entrySet().stream()
            .filter(entry -> called.contains(entry.getKey()))
            .map(Map.Entry::getValue)
            .toList());
  }

  /** Those that no program calls are checked by themselves, and what they call through them. */
  private static void addCalledByTheRest(
      Map<Path, Input.InFile> maybe, Set<Path> called, Sheets sheets) {
    Map<Path, Set<Path>> rest = new LinkedHashMap<>();
    maybe.forEach(
        (path, file) -> {
          if (!called.contains(path)) {
            rest.put(path, calledBy(file, sheets));
          }
        });
    Map<Path, Integer> callers = new HashMap<>();
    rest.forEach(
        (path, calls) -> {
          for (Path to : calls) {
            if (!to.equals(path)) {
              callers.merge(to, 1, Integer::sum);
            }
          }
        });
    rest.forEach(
        (path, calls) -> {
          if (!callers.containsKey(path)) {
            called.addAll(calls);
          }
        });
    // What is left calls itself in a circle: the first by name stands for it.
    rest.forEach(
        (path, calls) -> {
          if (callers.containsKey(path) && !called.contains(path)) {
            calls.stream().filter(to -> !to.equals(path)).forEach(called::add);
          }
        });
  }

  private static boolean isSubprogramFile(Input.InFile file) {
    try {
      return CalledFiles.isSubprogramFile(file.path());
    } catch (IOException e) {
      // The run itself tells of it.
      return false;
    }
  }

  private static Set<Path> calledBy(Input.InFile caller, Sheets sheets) {
    try {
      Inputs.lookAt(caller);
      return CalledFiles.of(
          caller.path(), SheetControl.of(sheets.setupFor(Optional.of(caller.path()))).codes());
    } catch (Failed | IOException e) {
      // It will not be checked, so nothing is checked through it; the run tells why.
      return Set.of();
    }
  }

  /** The inputs that are checked by themselves. */
  List<Input> others(List<Input> inputs) {
    return inputs.stream()
        .filter(input -> !(input instanceof Input.InFile file) || !called.contains(file))
        .toList();
  }

  /** What is said of them, if there are any. */
  Optional<String> sentence() {
    if (called.isEmpty()) {
      return Optional.empty();
    }
    List<String> names = called.stream().limit(NAMED).map(Input.InFile::name).toList();
    int more = called.size() - names.size();
    return Optional.of(
        (called.size() == 1
                ? "1 file is a subprogram of another program and is checked through it: "
                : called.size() + " files are subprograms of others and are checked through them: ")
            + String.join(", ", names)
            + (more > 0 ? " and " + more + " more" : "")
            + "; to check one by itself, name it");
  }
}
