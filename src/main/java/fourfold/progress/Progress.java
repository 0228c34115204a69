// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Family;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.DrillSession;
import fourfold.memory.Memory;
import fourfold.memory.MotorTime;
import fourfold.memory.Parameters;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * What a child has reached: the fold of all answers, oldest first, under the parent's actions, together with the drill that is
 * going on. Immutable; folding in two parts equals folding at once.
 */
public final class Progress {
    private final Steering steering;
    /** What the calendar opens on the day that is looked at, worked out once. */
    private final Openings openings;

    private final AnswersSoFar answers;
    private final Optional<DrillSoFar> drill;

    private Progress(Steering steering, Openings openings, AnswersSoFar answers, Optional<DrillSoFar> drill) {
        this.steering = steering;
        this.openings = openings;
        this.answers = answers;
        this.drill = drill;
    }

    /** A child who has not begun. */
    public static Progress blank(Steering steering) {
        return blank(steering, Parameters.usual());
    }

    /** A child who has not begun, seen by a memory with other constants; the limit is the child's own all the same. */
    public static Progress blank(Steering steering, Parameters constants) {
        Parameters parameters = constants.withLimit(steering.settings().quick());
        return new Progress(
                steering, Openings.always(steering), AnswersSoFar.none(Memory.blank(parameters)), Optional.empty());
    }

    /** The fold of a log that is at hand as a list. */
    public static Progress of(List<ActionRecord> actions, List<Answer> oldestFirst) {
        Fold fold = new Fold(Steering.of(actions));
        oldestFirst.forEach(fold);
        return fold.progress();
    }

    /** A long log folded without copying: give it every answer, oldest first, then ask for the progress. */
    public static final class Fold implements Consumer<Answer> {
        private final Progress blank;
        private final Optional<Memory.Fold> memory;
        private final MasteryTable.Fold masteries = new MasteryTable.Fold();
        private final RecentDrills.Fold recent = new RecentDrills.Fold();
        private final long limit;
        private MotorTime motor;
        private long count;
        private @Nullable Answer last;

        /** A fold under what the parent's actions came to. */
        public Fold(Steering steering) {
            this(blank(steering), true);
        }

        private Fold(Progress blank, boolean remembering) {
            this.blank = blank;
            this.memory = remembering ? blank.answers.memory().map(Memory::fold) : Optional.empty();
            this.limit = blank.steering.settings().quick().toMillis();
            this.motor = blank.answers.motor();
        }

        /**
         * A fold of levels, counts and times alone, several times as fast. What it comes to shows what a child has reached but
         * can't choose questions: it has no {@link Progress#memory()}.
         */
        public static Fold ofLevels(Steering steering) {
            return new Fold(blank(steering), false);
        }

        @Override
        public void accept(Answer answer) {
            Optional<Question> asked = answer.question();
            if (asked.isPresent() && blank.counts(answer, asked.get())) {
                double thinkingMillis = motor.thinkingMillis(answer);
                if (memory.isPresent()) {
                    memory.get().take(answer, motor, thinkingMillis);
                }
                Family family = asked.get().family();
                recent.take(answer, masteries.isMet(family));
                masteries.take(answer, family, thinkingMillis, limit);
            }
            motor = motor.after(answer);
            count++;
            last = answer;
        }

        /** What all answers so far come to; the fold must not be used any more afterwards. */
        public Progress progress() {
            AnswersSoFar all = new AnswersSoFar(
                    motor,
                    memory.map(Memory.Fold::memory),
                    masteries.table(),
                    recent.drills(),
                    count,
                    Optional.ofNullable(last));
            return new Progress(blank.steering, blank.openings, all, Optional.empty());
        }
    }

    /** With one more answer, in the drill that is going on if there is one. */
    public Progress after(Answer answer) {
        boolean counts = answer.question().filter(q -> counts(answer, q)).isPresent();
        AnswersSoFar more = counts ? answers.after(answer, steering.settings().quick()) : answers.afterCopy(answer);
        return new Progress(steering, openings, more, drill.map(d -> d.after(answer)));
    }

    /** Whether the question's family was not begun again after the answer. */
    private boolean counts(Answer answer, Question question) {
        return steering.nothingBegunAgain()
                || steering.begunAgain(question.family())
                        .filter(since -> answer.askedAt().isBefore(since))
                        .isEmpty();
    }

    /** With a drill begun. */
    public Progress beginning(DrillSession session) {
        Openings open = openings.isOn(session.localDay()) ? openings : Openings.on(steering, session.localDay());
        return new Progress(steering, open, answers, Optional.of(DrillSoFar.begun(session)));
    }

    /**
     * As it is under the calendar on a day; a drill that begins looks at its own day by itself. Before that, and without a
     * calendar, no date holds anything back.
     *
     * @param localDay days since 1 January 1970
     */
    public Progress on(long localDay) {
        return new Progress(steering, Openings.on(steering, localDay), answers, drill);
    }

    /** With a pause added to the time that the drill has spent in pauses. */
    public Progress pausedFor(Duration pause) {
        return new Progress(steering, openings, answers, drill.map(d -> d.pausedFor(pause)));
    }

    /** The drill that is going on. */
    public Optional<DrillSoFar> drill() {
        return drill;
    }

    /** What the parent's actions come to. */
    public Steering steering() {
        return steering;
    }

    /** How fast the child's hands are. */
    public MotorTime motor() {
        return answers.motor();
    }

    /**
     * What the child remembers, as far as the answers show.
     *
     * @throws java.util.NoSuchElementException if only the levels were folded
     */
    public Memory memory() {
        return answers.memory().orElseThrow();
    }

    /** What the child's last drills were like. */
    public RecentDrills recent() {
        return answers.recent();
    }

    /** How many answers there are, of every purpose. */
    public long answers() {
        return answers.count();
    }

    /** The newest answer. */
    public Optional<Answer> lastAnswer() {
        return answers.last();
    }

    /** The mastery of one trace. */
    public FactMastery mastery(Trace trace) {
        return answers.masteries().of(trace.index());
    }

    /** The mastery of the trace with that index. */
    public FactMastery mastery(int trace) {
        return answers.masteries().of(trace);
    }

    /** Whether any of the family's facts was met here (since it was last begun again). */
    public boolean isMet(Family family) {
        return answers.masteries().isMet(family);
    }

    /**
     * Whether the family is known by trial: all of its facts were asked though it was never taught here, each was right and
     * quick, and no level above {@link Mastery#ACQUIRING} is earned yet.
     */
    public boolean isKnownByTrial(Family family) {
        return !level(family).atLeast(Mastery.ACCURATE)
                && family.traces().stream()
                        .allMatch(t ->
                                mastery(t).isKnownUntaught(steering().settings().quick()));
    }

    /** The family's level: that of its weakest trace; new only if none of its traces was met. */
    public Mastery level(Family family) {
        return answers.masteries().level(family);
    }

    /** Whether the parent's focus still holds: it ends by itself when the family is fluent. */
    public boolean isFocused(Family family) {
        return steering.focused().contains(family) && !level(family).atLeast(Mastery.FLUENT);
    }

    /** Whether the parent has put the family on hold. */
    public boolean isHeld(Family family) {
        return steering.held().contains(family);
    }

    /**
     * The family to introduce next, empty if all were met: what the parent begins again comes first, then what is in
     * focus, each by the parent's order, then that order itself.
     */
    public Optional<Family> nextNew() {
        return openings.nextNew(this);
    }

    /** Whether the parent began the family again and it has not come yet; a family on hold does not come. */
    public boolean isToBeginAgain(Family family) {
        return steering.begunAgain(family).isPresent() && !isHeld(family) && !isMet(family);
    }

    /** Whether nothing may be asked: what was met is all on hold, and nothing new may come. */
    public boolean isAllSetAside() {
        return openings.isAllSetAside(this);
    }

    /** What the calendar says on the day that is looked at. */
    Openings openings() {
        return openings;
    }

    /** The local day on which the family first came, counted from 1 January 1970; beyond all days if it never did. */
    long since(Family family) {
        return answers.masteries().since(family);
    }

    /** See {@link Dates#isBeforeItsDate}. */
    public boolean isBeforeItsDate(Family family) {
        return Dates.isBeforeItsDate(this, family);
    }

    /** See {@link Dates#hasSign}. */
    public boolean hasSign(Trace division) {
        return Dates.hasSign(this, division);
    }

    /** See {@link Dates#signed}. */
    public Prompt signed(Question question) {
        return Dates.signed(this, question);
    }

    /** The families in the order in which they are to be introduced on the day that is looked at; see {@link Openings}. */
    public List<Family> introductionOrder() {
        return openings.order();
    }

    /** How many families have reached {@code level}. */
    public long families(Mastery level) {
        return answers.masteries().families(level);
    }

    /** The local day at an instant, by the zone of the drill that is going on or of the last answer, or by UTC. */
    public long localDay(Instant at) {
        int minutes = 0;
        if (drill.isPresent()) {
            minutes = drill.get().session().zoneOffsetMinutes();
        } else if (answers.last().isPresent()) {
            minutes = answers.last().get().zoneOffsetMinutes();
        }
        return Math.floorDiv(at.getEpochSecond() + minutes * 60L, 86_400L);
    }
}
