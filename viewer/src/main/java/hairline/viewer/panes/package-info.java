/** The panes of the window. */
@NullMarked
package hairline.viewer.panes;

import org.jspecify.annotations.NullMarked;
