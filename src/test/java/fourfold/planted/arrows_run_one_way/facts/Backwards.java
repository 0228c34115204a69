package fourfold.planted.arrows_run_one_way.facts;

import fourfold.progress.Progress;

/** Breaks the map on purpose: facts know nothing of progress. */
public final class Backwards {
    private Backwards() {}

    public static long count(Progress progress) {
        return progress.answers();
    }
}
