/** The window: finds its program, puts the panes together, and links them by one cursor. */
@NullMarked
package hairline.viewer;

import org.jspecify.annotations.NullMarked;
