/** Finding, level, place, grouping, suppression. */
@NullMarked
package hairline.checks.finding;

import org.jspecify.annotations.NullMarked;
