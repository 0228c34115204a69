// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * That one record was removed for good. Removing a child makes one for the child, for each of its drills and each of the
 * parent's actions for it.
 *
 * @param id of the record
 * @param child whose it was
 * @param kind what it was
 * @param answers of a drill: the last position that was removed, 0 if it had no answer; 0 for others
 */
public record Removal(UUID id, UUID child, Kind kind, int answers) {
    /** What was removed. */
    public enum Kind {
        /** The child, unless something of it survives that no removal names. */
        CHILD,
        /** A drill, with its answers up to a position. */
        DRILL,
        /** A parent's action. */
        ACTION,
        /** The child with all that ever was or will be of it: so removed programs before December 2026. */
        WHOLE_CHILD
    }

    static boolean isWhole(@org.jspecify.annotations.Nullable Removal removal) {
        return removal != null && removal.kind() == Kind.WHOLE_CHILD;
    }

    /** One for each record: the one that removes most. */
    static Set<Removal> farthest(Stream<Removal> all) {
        return Set.copyOf(all.collect(Collectors.toMap(Removal::id, r -> r, Removal::farther))
                .values());
    }

    private static Removal farther(Removal one, Removal other) {
        boolean more = one.answers() > other.answers() || isWhole(one);
        return more ? one : other;
    }
}
