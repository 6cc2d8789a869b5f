/**
 * What the window shows, apart from any window: an index of the program that grows while it is
 * read.
 */
@NullMarked
package hairline.viewer.model;

import org.jspecify.annotations.NullMarked;
