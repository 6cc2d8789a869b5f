package hairline.checks.report;

import java.io.IOException;

/**
 * Writes the report of one run while it goes on: {@code begin}, each program in order, {@code end}.
 * The stream it writes to is flushed at the end and not closed. Same calls, same bytes.
 */
public interface ReportWriter {
  /**
   * Before the first program.
   *
   * @throws IOException if it cannot be written
   */
  void begin() throws IOException;

  /**
   * The next program.
   *
   * @throws IOException if it cannot be written
   */
  void program(CheckedProgram program) throws IOException;

  /**
   * After the last program.
   *
   * @throws IOException if it cannot be written
   */
  void end(Verdict verdict) throws IOException;
}
