/** Warm-up and measuring: the state the spindle is in. */
@NullMarked
package hairline.checks.warmth;

import org.jspecify.annotations.NullMarked;
