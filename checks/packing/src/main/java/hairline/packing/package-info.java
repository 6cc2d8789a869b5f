/**
 * What is done to the classes of {@code hairline.jar} as they are packed. Java links lambdas and
 * the methods of records anew at every start, which takes a quarter of a short check; here they
 * become plain classes and plain code, which come from the archive of loaded classes like all
 * others. The sources stay as they are.
 */
@NullMarked
package hairline.packing;

import org.jspecify.annotations.NullMarked;
