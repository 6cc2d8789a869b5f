/** Combination of errors and the decision rule. */
@NullMarked
package hairline.checks.budget;

import org.jspecify.annotations.NullMarked;
