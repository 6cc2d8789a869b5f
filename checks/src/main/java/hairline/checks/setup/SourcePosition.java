package hairline.checks.setup;

/**
 * Where something stands.
 *
 * @param file the file as the user named it, or what stands in its place
 * @param line from 1
 * @param column in Unicode code points, from 1
 */
public record SourcePosition(String file, int line, int column) {
  @Override
  public String toString() {
    // What is typed behind an option has no lines.
    return file.startsWith(WhatIf.OPTION) ? file : file + ":" + line + ":" + column;
  }
}
