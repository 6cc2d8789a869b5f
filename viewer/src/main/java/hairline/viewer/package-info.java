/** The place of the viewer in the build; its screens come with their own work. */
@NullMarked
package hairline.viewer;

import org.jspecify.annotations.NullMarked;
