package hairline.checks.setup;

import java.util.Optional;

/**
 * A work offset: where its zero lies in machine coordinates, as far as the sheet says.
 *
 * @param name such as G54
 */
public record Offset(String name, Optional<Length> x, Optional<Length> y, Optional<Length> z) {}
