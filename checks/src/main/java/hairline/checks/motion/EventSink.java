package hairline.checks.motion;

/** Takes the events of a program in their order of execution. */
@FunctionalInterface
public interface EventSink {
  /** Takes the next event. */
  void accept(Event event);
}
