/** What a pass meets: contact, levels, step-downs, engagement. */
@NullMarked
package hairline.checks.stock;

import org.jspecify.annotations.NullMarked;
