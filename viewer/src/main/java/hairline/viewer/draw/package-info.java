/** Drawing on a screen and into a file alike: pens, scales, colours. */
@NullMarked
package hairline.viewer.draw;

import org.jspecify.annotations.NullMarked;
