/** Chip, force, flex, runout: pure functions of numbers. */
@NullMarked
package hairline.checks.cutting;

import org.jspecify.annotations.NullMarked;
