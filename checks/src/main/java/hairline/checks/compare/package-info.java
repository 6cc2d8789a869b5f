/** Two programs held against each other: motion, state, surface left and findings. */
@NullMarked
package hairline.checks.compare;

import org.jspecify.annotations.NullMarked;
