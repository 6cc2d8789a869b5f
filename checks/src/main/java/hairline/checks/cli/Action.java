package hairline.checks.cli;

/** What a command does. */
interface Action {
  /**
   * Does it.
   *
   * @throws Failed if it can't be done
   */
  ExitStatus run(Streams streams, Messages messages) throws Failed;

  /** Whether failures are told with their traces. */
  default boolean verbose() {
    return false;
  }
}
