// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.ParentAction;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import fourfold.progress.Setting;
import fourfold.progress.Steering;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Consumer;

/**
 * The stones of the stairs: for each family the highest level that it ever reached, one stone for each level above new. The
 * child's picture, the parent's grid, the family's page and paper all show these. Nothing takes a stone away: no error, no
 * pause of weeks, no family begun again, and no setting, for what counts as quick is the longest limit the parent ever chose.
 * Give it every answer of the child, oldest first.
 */
public final class LifetimeProgress implements Consumer<Answer> {
    /** How many stones a family can have. */
    public static final int MOST = Mastery.values().length - 1;

    private final Mastery[] families = new Mastery[Families.COUNT];
    private final Mastery[] traces = new Mastery[Trace.COUNT];
    private Progress levels;
    /** What the families had when the newest drill began. */
    private Mastery[] earlier;

    private Optional<UUID> drill = Optional.empty();
    private Optional<Long> lastLaid = Optional.empty();

    private LifetimeProgress(Progress levels, Mastery[] laid) {
        this.levels = levels;
        System.arraycopy(laid, 0, families, 0, families.length);
        Arrays.fill(traces, Mastery.NEW);
        earlier = families.clone();
    }

    /**
     * No stones yet.
     *
     * @param actions everything that the parent did for the child
     */
    public LifetimeProgress(List<ActionRecord> actions) {
        this(Progress.Fold.ofLevels(longestLimit(actions)).progress(), blank());
    }

    private static Mastery[] blank() {
        Mastery[] blank = new Mastery[Families.COUNT];
        Arrays.fill(blank, Mastery.NEW);
        return blank;
    }

    /** Nothing but the longest limit of those that ever held, whether it was taken back or not. */
    private static Steering longestLimit(List<ActionRecord> actions) {
        List<String> offered = Setting.QUICK.offered();
        int longest = offered.indexOf(Setting.QUICK.usual());
        Optional<ActionRecord> choice = Optional.empty();
        for (ActionRecord record : actions) {
            if (record.action() instanceof ParentAction.Choose choose
                    && choose.setting().equals(Setting.QUICK.key())
                    && offered.indexOf(choose.chosen()) > longest) {
                longest = offered.indexOf(choose.chosen());
                choice = Optional.of(record);
            }
        }
        return Steering.of(choice.map(List::of).orElse(List.of()));
    }

    @Override
    public void accept(Answer answer) {
        if (!drill.equals(Optional.of(answer.drill()))) {
            drill = Optional.of(answer.drill());
            earlier = families.clone();
        }
        Optional<Question> asked = answer.question();
        if (asked.filter(q -> stones(q.family()) == MOST).isPresent()) {
            // There is nothing more to lay, and no answer to it says anything of another family.
            return;
        }
        levels = levels.after(answer);
        if (asked.isEmpty()) {
            return;
        }
        Question question = asked.get();
        int trace = question.traceIndex();
        traces[trace] = stronger(traces[trace], levels.mastery(trace).level());
        int family = question.family().index();
        Mastery before = families[family];
        families[family] = stronger(before, levels.level(question.family()));
        if (families[family] != before) {
            lastLaid = Optional.of(answer.localDay());
        }
    }

    private static Mastery stronger(Mastery one, Mastery other) {
        return one.atLeast(other) ? one : other;
    }

    /** The highest level that the family ever reached. */
    public Mastery highest(Family family) {
        return families[family.index()];
    }

    /** The highest level of the family's product, or of the quotient that came less far. */
    public Mastery highest(Family family, Operation operation) {
        return family.traces().stream()
                .filter(t -> t.operation() == operation)
                .map(this::highest)
                .reduce(Mastery.LASTING, Mastery::weaker);
    }

    /** The highest level that the trace ever reached. */
    public Mastery highest(Trace trace) {
        return traces[trace.index()];
    }

    /** The stones of a family, one for each level above new. */
    public int stones(Family family) {
        return highest(family).ordinal();
    }

    /** The same as it was before a drill, if that is the newest: for the picture of what was laid in it. */
    public LifetimeProgress before(UUID thisDrill) {
        return new LifetimeProgress(levels, drill.equals(Optional.of(thisDrill)) ? earlier : families);
    }

    /** All stones laid so far, of {@link #MOST} for each family. */
    public int laid() {
        return Families.all().stream().mapToInt(this::stones).sum();
    }

    /** How many families have a stone. */
    public int begun() {
        return (int) Families.all().stream().filter(f -> stones(f) > 0).count();
    }

    /** How many families have exactly so many stones. */
    public int count(Mastery highest) {
        return (int) Arrays.stream(families).filter(highest::equals).count();
    }

    /** Whether every family has all its stones: the stairs are whole. */
    public boolean isWhole() {
        return laid() == MOST * Families.COUNT;
    }

    /** The local day, counted from 1 January 1970, on which the newest stone was laid; empty if there is none. */
    public Optional<Long> lastLaid() {
        return lastLaid;
    }
}
