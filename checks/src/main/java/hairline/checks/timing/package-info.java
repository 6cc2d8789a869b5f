/** How long things take. */
@NullMarked
package hairline.checks.timing;

import org.jspecify.annotations.NullMarked;
