/** One class a rule, a registry, documentation pages as resources. */
@NullMarked
package hairline.checks.rules;

import org.jspecify.annotations.NullMarked;
