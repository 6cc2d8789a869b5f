package hairline.checks.setup;

import java.util.Optional;

/**
 * A value and where it comes from.
 *
 * @param path what the user would type to give it, such as {@code machine.smallest_step} or {@code
 *     tools.3.edge_radius}
 * @param value the value; empty where {@code origin} is {@link Origin#MISSING}
 * @param origin where the value comes from
 * @param source for a default or a published value: a phrase that says whose it is; for a given
 *     one: its position; for a missing one: empty, or why a published value does not stand in
 */
public record Resolved<T>(String path, Optional<T> value, Origin origin, String source) {}
