// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;
import fourfold.log.ChildName;
import java.util.List;
import java.util.Optional;

/**
 * Whom a typed name means.
 *
 * @param all the children to choose from
 * @param fitting those who fit: one if it is clear who is meant
 */
public record ChildChoice(List<Child> all, List<Child> fitting) {
    /** Those whom a name means, or all without one; those written exactly so come before those of the same name. */
    static ChildChoice of(List<Child> all, Optional<String> name) {
        return new ChildChoice(all, name.map(n -> called(all, n)).orElse(all));
    }

    private static List<Child> called(List<Child> children, String name) {
        List<Child> exactly =
                children.stream().filter(c -> c.name().equals(name)).toList();
        return exactly.isEmpty()
                ? children.stream().filter(c -> ChildName.same(c.name(), name)).toList()
                : exactly;
    }

    /** The one who fits; empty if none or several do. */
    public Optional<Child> only() {
        return fitting.size() == 1 ? Optional.of(fitting.get(0)) : Optional.empty();
    }
}
