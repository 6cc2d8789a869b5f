/** One class a format. */
@NullMarked
package hairline.checks.report;

import org.jspecify.annotations.NullMarked;
