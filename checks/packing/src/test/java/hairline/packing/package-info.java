/** Tests of what is done to classes as they are packed. */
@NullMarked
package hairline.packing;

import org.jspecify.annotations.NullMarked;
