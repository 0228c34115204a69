package fourfold.simulation;

import java.util.stream.LongStream;

/** Which children numbers may be chosen on, and which they are told from. The two never share a child. */
public enum Seeds {
    /** For choosing numbers: seeds 1 to 40. */
    TUNING(1),
    /** For the table: seeds 7001 to 7040. */
    REPORTING(7001);

    private final long first;

    Seeds(long first) {
        this.first = first;
    }

    /** The first so many seeds of the range. */
    public LongStream take(int children) {
        if (children < 1 || children > 1000) {
            throw new IllegalArgumentException("a range has 1 to 1000 children, not " + children);
        }
        return LongStream.range(first, first + children);
    }
}
