/** The commands; wires, decides nothing. */
@NullMarked
package hairline.checks.cli;

import org.jspecify.annotations.NullMarked;
