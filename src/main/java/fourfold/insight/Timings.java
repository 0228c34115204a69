// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Operation;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.Rates;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** A child's one-minute timings, oldest first, from all answers in order. Products and quotients are kept apart. */
public final class Timings implements Consumer<Answer> {
    /**
     * One timing.
     *
     * @param day the local day, counted from 1 January 1970
     * @param operation what was timed
     * @param rates digits and facts correct a minute
     */
    public record OneMinute(long day, Operation operation, Rates rates) {}

    private final List<Answer> open = new ArrayList<>();
    private final List<OneMinute> all = new ArrayList<>();

    @Override
    public void accept(Answer answer) {
        if (answer.purpose() != Purpose.TIMED) {
            return;
        }
        if (!open.isEmpty() && !open.get(0).drill().equals(answer.drill())) {
            close();
        }
        open.add(answer);
    }

    private void close() {
        Operation operation = open.get(0).question().orElseThrow().operation();
        all.add(new OneMinute(open.get(0).localDay(), operation, Rates.of(open, operation)));
        open.clear();
    }

    /** The timings of one operation, oldest first. */
    public List<OneMinute> of(Operation operation) {
        if (!open.isEmpty()) {
            close();
        }
        return all.stream().filter(t -> t.operation() == operation).toList();
    }
}
