/**
 * Text to blocks: the grammar of ISO 6983 part programs, exact decimals, positions and syntax
 * problems. Knows no machine.
 */
@NullMarked
package hairline.parser;

import org.jspecify.annotations.NullMarked;
