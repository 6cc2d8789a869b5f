/** The setup sheet: reading, units, schema, defaults. */
@NullMarked
package hairline.checks.setup;

import org.jspecify.annotations.NullMarked;
