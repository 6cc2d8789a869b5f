/** Blocks to moves: modal state, rounding, arcs, cycles, subprograms. */
@NullMarked
package hairline.checks.motion;

import org.jspecify.annotations.NullMarked;
