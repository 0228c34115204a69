package fourfold.simulation;

import java.util.List;
import java.util.ServiceLoader;

/** A kind of simulated children. Kinds are found on the class path by {@link ServiceLoader}. */
public interface SimulatedLearnerKind {
    /** A short name, used in tables and on the command line. */
    String name();

    /** The child with that seed; the same seed always gives the same child. */
    SimulatedLearner create(long seed);

    /** All kinds on the class path, in the order of their service files. */
    static List<SimulatedLearnerKind> all() {
        return ServiceLoader.load(SimulatedLearnerKind.class).stream()
                .map(ServiceLoader.Provider::get)
                .toList();
    }
}
