package fourfold.simulation;

/** How one trace is kept in a simulated child's head. Times are seconds since the start of the school year. */
interface TraceMemory {
    /** The logit of the chance of recall for a fact of middle difficulty; at least {@link #NOTHING}. */
    double strength(double at);

    /** The fact was recalled, worked out, or seen. */
    void practised(double at, How how);

    /** The same trace once more, to look ahead. */
    TraceMemory copy();

    /** The strength of what was never met. */
    double NOTHING = -6;

    /** What happened to the trace. */
    enum How {
        /** The answer came from memory. */
        RECALLED,
        /** The answer was worked out. */
        WORKED_OUT,
        /** The answer was read. */
        SEEN
    }
}
