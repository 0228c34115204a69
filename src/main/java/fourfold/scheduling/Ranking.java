package fourfold.scheduling;

/** How a plain policy ranks what may be asked. */
interface Ranking {
    /** Of two traces the one with the higher rank is asked first; negative infinity for one that is not wanted now. */
    double of(int trace);

    /** How many traces wait for their turn today; new families join while there are few. */
    int waiting();

    /** How many traces would be weak at the next drill, with what was practised today; 0 where nobody can tell. */
    default int weak() {
        return 0;
    }
}
