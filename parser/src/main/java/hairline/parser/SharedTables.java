package hairline.parser;

import org.jspecify.annotations.Nullable;

/**
 * The tables that readers share, so that each learns from the others. ANTLR never forgets by
 * itself; here the tables begin afresh when they have grown beyond a bound.
 */
final class SharedTables {
  /** Most states that are kept. The grammar as it stands needs some hundreds. */
  static final int MOST_STATES = 5_000;

  /** The tables of this process. */
  static final SharedTables ALL = new SharedTables(MOST_STATES);

  private final int mostStates;
  private volatile @Nullable GrammarTables current;

  SharedTables(int mostStates) {
    this.mostStates = mostStates;
  }

  /** The tables to use from now on. */
  GrammarTables current() {
    GrammarTables tables = current;
    if (tables == null || tables.states() > mostStates) {
      tables = new GrammarTables();
      current = tables;
    }
    return tables;
  }
}
