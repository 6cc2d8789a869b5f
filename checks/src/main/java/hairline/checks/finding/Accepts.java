package hairline.checks.finding;

import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The accept comments of one program and its subprograms, and which of them were needed. A comment
 * without a reason accepts nothing.
 */
public final class Accepts {
  private record Line(int file, int line) {}

  private final Map<Line, List<Accept>> byLine = new HashMap<>();
  private final List<Accept> untilEnd = new ArrayList<>();
  private final List<Accept> all = new ArrayList<>();
  private final Set<Accept> used = new HashSet<>();

  /**
   * Adds a comment.
   *
   * @param accept the comment
   * @param blockLine the line of the block it speaks of: its own, or the next block's
   */
  public void add(Accept accept, int blockLine) {
    all.add(accept);
    if (accept.reason().isEmpty()) {
      return;
    }
    if (accept.untilEnd()) {
      untilEnd.add(accept);
    } else {
      byLine
          .computeIfAbsent(new Line(accept.at().file(), blockLine), k -> new ArrayList<>())
          .add(accept);
    }
  }

  /** Whether there are none so far. */
  boolean isEmpty() {
    return all.isEmpty();
  }

  /** All of them, in the order added. */
  public List<Accept> all() {
    return List.copyOf(all);
  }

  /** The reason why a finding of this rule at this place is accepted, if it is. */
  public Optional<String> reasonFor(String rule, Place at) {
    Optional<Accept> accept = accept(rule, at);
    accept.ifPresent(used::add);
    return accept.flatMap(Accept::reason);
  }

  /** The same of a finding that is not told yet: the comment does not count as needed for it. */
  Optional<String> reasonAhead(String rule, Place at) {
    return accept(rule, at).flatMap(Accept::reason);
  }

  private Optional<Accept> accept(String rule, Place at) {
    if (all.isEmpty()) {
      return Optional.empty();
    }
    for (Accept accept : byLine.getOrDefault(new Line(at.file(), at.line()), List.of())) {
      if (accept.rule().equals(rule)) {
        return Optional.of(accept);
      }
    }
    for (Accept accept : untilEnd) {
      if (accept.rule().equals(rule)
          && accept.at().file() == at.file()
          && accept.at().line() <= at.line()) {
        return Optional.of(accept);
      }
    }
    return Optional.empty();
  }

  /** Those with a reason that nothing needed so far. */
  public List<Accept> unused() {
    return all.stream().filter(a -> a.reason().isPresent() && !used.contains(a)).toList();
  }
}
