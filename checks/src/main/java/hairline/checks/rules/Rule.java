package hairline.checks.rules;

/**
 * One question asked of a program. An implementation is annotated with {@code AutoService}, has a
 * page {@code pages/NAME.md} beside it as a resource and annotated programs; nothing else names it.
 */
public interface Rule {
  /** Its name, level and needs. */
  RuleInfo info();

  /**
   * Begins a run over one program: subscribes to the events it needs. All state of the run lives
   * behind the handlers, so that a rule object serves many runs at once.
   */
  void begin(RuleContext context, Subscriptions on);
}
