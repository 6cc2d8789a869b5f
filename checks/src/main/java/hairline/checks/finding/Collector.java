package hairline.checks.finding;

import hairline.checks.budget.StepBudget;
import hairline.checks.motion.Place;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Takes what rules say of one run and makes findings of it while streaming: accepts, explains away,
 * groups. Its memory grows with the number of different faults, not with how often they occur.
 */
public final class Collector {
  /** At most so many groups; what comes later is counted under "not checked". */
  public static final int MOST_GROUPS = 10_000;

  /** At most so many lines are remembered whose findings explain all others of the line away. */
  public static final int MOST_HIDING_LINES = 100_000;

  /** A group of findings: same rule, operation, cause, and same answer to "accepted?". */
  public record Key(String rule, int operation, String cause, Optional<String> accepted) {}

  private static final String ALL = "*";

  private record Line(int file, int line) {}

  private record Missing(String rule, String reason) {}

  private final Accepts accepts;
  private final Map<String, List<String>> hidesInBlock;
  private final Map<Key, Group> groups = new LinkedHashMap<>();
  private final Map<Missing, NotChecked> notChecked = new LinkedHashMap<>();
  private final Set<Assumption> assumptions = new LinkedHashSet<>();
  private final List<StepBudget> budgets = new ArrayList<>();
  private final List<Occurrence> ofThisBlock = new ArrayList<>();

  // The group of each, where it is known to be this one.
  private final List<Optional<Group>> theirGroups = new ArrayList<>();
  private final Set<Line> unreadLines = new HashSet<>();

  /**
   * @param accepts the accept comments of the program
   * @param hidesInBlock for each rule, which rules its findings explain away in their own block;
   *     "*" for all others
   */
  public Collector(Accepts accepts, Map<String, List<String>> hidesInBlock) {
    this.accepts = accepts;
    this.hidesInBlock = Map.copyOf(hidesInBlock);
  }

  /** Takes one occurrence. */
  public void report(Occurrence occurrence) {
    add(occurrence, Optional.empty());
  }

  private void add(Occurrence occurrence, Optional<Group> group) {
    ofThisBlock.add(occurrence);
    theirGroups.add(group);
  }

  /** The same, whose texts are made only if it may be the first or the worst of its group. */
  public void report(Occurrence.Builder occurrence) {
    Occurrence wordless = occurrence.wordless();
    Group group = groups.get(key(wordless, accepts.reasonAhead(wordless.rule(), wordless.at())));
    add(
        group != null && !group.isWorse(wordless) ? wordless : occurrence.build(),
        Optional.empty());
  }

  /**
   * Takes an occurrence of no severity of its own whose words nobody will read, because it is
   * neither the first nor the worst of its group; otherwise takes nothing and tells so.
   */
  public boolean repeats(String rule, Level level, Place at, int operation, String cause) {
    Group group = groups.get(new Key(rule, operation, cause, accepts.reasonAhead(rule, at)));
    if (group == null) {
      return false;
    }
    Occurrence wordless = Occurrence.wordless(rule, level, at, operation, cause, 0);
    if (group.isWorse(wordless)) {
      return false;
    }
    // Where nothing is accepted, it comes into no other group.
    add(wordless, accepts.isEmpty() ? group.itself : Optional.empty());
    return true;
  }

  private static Key key(Occurrence occurrence, Optional<String> accepted) {
    return new Key(occurrence.rule(), occurrence.operation(), occurrence.cause(), accepted);
  }

  /** Ends a block: what explains away within it is known now. */
  public void endBlock() {
    if (ofThisBlock.isEmpty()) {
      return;
    }
    boolean hiding = !unreadLines.isEmpty();
    for (Occurrence occurrence : ofThisBlock) {
      if (hidesInBlock.containsKey(occurrence.rule())) {
        hiding = true;
        if (hides(occurrence, ALL)) {
          hideOthers(occurrence.at());
        }
      }
    }
    for (int i = 0; i < ofThisBlock.size(); i++) {
      Occurrence occurrence = ofThisBlock.get(i);
      if (!hiding || !isHidden(occurrence)) {
        Optional<Group> known = theirGroups.get(i);
        if (known.isPresent()) {
          known.get().add(occurrence);
        } else {
          group(occurrence);
        }
      }
    }
    ofThisBlock.clear();
    theirGroups.clear();
  }

  /**
   * Hides what other rules say of a line that cannot be read, from here on. Such lines are known
   * before the run.
   */
  public void hideOthers(Place at) {
    if (unreadLines.size() < MOST_HIDING_LINES) {
      unreadLines.add(line(at));
    } else if (!unreadLines.contains(line(at))) {
      notChecked(
          "",
          "more than "
              + MOST_HIDING_LINES
              + " lines that cannot be read; what follows from later"
              + " ones may be told as well",
          Optional.of(at));
    }
  }

  private boolean hides(Occurrence hider, String rule) {
    return hidesInBlock.getOrDefault(hider.rule(), List.of()).contains(rule);
  }

  private boolean isHidden(Occurrence occurrence) {
    if (!unreadLines.isEmpty()
        && !hides(occurrence, ALL)
        && unreadLines.contains(line(occurrence.at()))) {
      return true;
    }
    for (Occurrence other : ofThisBlock) {
      if (hides(other, occurrence.rule()) && line(other.at()).equals(line(occurrence.at()))) {
        return true;
      }
    }
    return false;
  }

  private void group(Occurrence occurrence) {
    Key key = key(occurrence, accepts.reasonFor(occurrence.rule(), occurrence.at()));
    Group group = groups.get(key);
    if (group != null) {
      group.add(occurrence);
    } else if (groups.size() < MOST_GROUPS) {
      groups.put(key, new Group(occurrence));
    } else {
      notChecked(
          occurrence.rule(),
          "more than " + MOST_GROUPS + " different findings; the rest is only counted here",
          Optional.of(occurrence.at()));
    }
  }

  /** Takes note that a rule could not decide. */
  public void notChecked(String rule, String reason, Optional<Place> at) {
    notChecked.merge(
        new Missing(rule, reason),
        new NotChecked(rule, reason, at, 1),
        (a, b) -> new NotChecked(rule, reason, a.first().or(b::first), a.count() + 1));
  }

  /** Takes note of a default that was used. */
  public void assumed(Assumption assumption) {
    assumptions.add(assumption);
  }

  /** Takes the error budget of a step. */
  public void budget(StepBudget budget) {
    budgets.add(budget);
  }

  /** The error budgets of steps, in the order they were drawn up. */
  public List<StepBudget> budgets() {
    return List.copyOf(budgets);
  }

  /** The groups so far, in the order they began. */
  public Map<Key, Finding> findings() {
    endBlock();
    return findingsOfEndedBlocks();
  }

  /** The same, but of the block under way nothing yet: what it explains away is not known. */
  public Map<Key, Finding> findingsOfEndedBlocks() {
    Map<Key, Finding> all = new LinkedHashMap<>();
    groups.forEach((key, group) -> all.put(key, group.finding(key)));
    return all;
  }

  /** What could not be decided. */
  public List<NotChecked> notChecked() {
    return List.copyOf(notChecked.values());
  }

  /** Which defaults were used. */
  public Set<Assumption> assumptions() {
    return Set.copyOf(assumptions);
  }

  private static Line line(Place at) {
    return new Line(at.file(), at.line());
  }

  private static final class Group {
    private final Optional<Group> itself = Optional.of(this);
    private final Occurrence first;
    private Occurrence worst;
    private Place last;
    private long count;

    Group(Occurrence first) {
      this.first = first;
      this.worst = first;
      this.last = first.at();
      this.count = 1;
    }

    void add(Occurrence next) {
      count++;
      last = next.at();
      if (isWorse(next)) {
        worst = next;
      }
    }

    boolean isWorse(Occurrence next) {
      int byLevel = next.level().compareTo(worst.level());
      return byLevel > 0 || (byLevel == 0 && next.severity() > worst.severity());
    }

    Finding finding(Key key) {
      return new Finding(first, worst, count, last, Finding.BlockDelete.BOTH, key.accepted());
    }
  }
}
