// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.util.List;
import java.util.ServiceLoader;

/** A kind of simulated children. Kinds are found on the class path by {@link ServiceLoader}. */
public interface SimulatedLearnerKind {
    /** A short name, used in tables and on the command line. */
    String name();

    /** The child with that seed; the same seed always gives the same child. */
    SimulatedLearner create(long seed);

    /** The days of that child's home; four a week unless the kind says otherwise. */
    default Calendar calendar(long seed) {
        return HomeCalendar.fourDays(seed);
    }

    /** All kinds on the class path, in the order of their service files. */
    static List<SimulatedLearnerKind> all() {
        return ServiceLoader.load(SimulatedLearnerKind.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
    }

    /**
     * The kinds with these names, in that order; all kinds where none is named.
     *
     * @throws IllegalArgumentException if there is no kind of a name
     */
    static List<SimulatedLearnerKind> named(List<String> names) {
        return names.isEmpty()
                ? all()
                : names.stream().map(SimulatedLearnerKind::named).toList();
    }

    /** The kind with that name. */
    private static SimulatedLearnerKind named(String name) {
        return all().stream()
                .filter(kind -> kind.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no kind of children is called \"" + name
                        + "\"; there are "
                        + String.join(
                                ", ",
                                all().stream().map(SimulatedLearnerKind::name).toList())));
    }
}
