// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Purpose;
import fourfold.progress.Dates;
import fourfold.progress.FactMastery;
import fourfold.progress.RecentDrills;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.progress.Steering;
import java.time.Duration;
import java.util.Comparator;
import java.util.Optional;

/**
 * How new families join: asked first where they may be known, as hard ones as may be; taught otherwise, when the child can
 * carry more.
 */
final class NewFamilies {
    /** A handful of families makes practice possible; until then nothing else can be asked. Our own choice. */
    private static final int FEWEST = 3;

    /** With fewer families neighbours cannot be kept apart. Our own choice. */
    static final int HANDFUL = 12;

    /** A new family needs so much of the drill to be asked again in it. Our own choice. */
    static final Duration ROOM = Duration.ofSeconds(150);

    /** What is only tried needs so much of the drill, for its inverse. Our own choice. */
    private static final Duration ROOM_TO_TRY = Duration.ofSeconds(45);

    /** After so many questions of a first day, most of them right, one more family may come. Our own choice. */
    private static final int ENOUGH_TO_TELL = 12;

    /** No lesson after so many errors in a row. */
    private static final int MOST_ERRORS = 2;

    /**
     * Asked before it is taught from this chance on: a question costs a few seconds, a lesson not needed costs half a minute
     * and a place in the drill's limit. Our own choice.
     */
    private static final double WORTH_ASKING = 0.25;

    private static final double AS_LIKELY_AS_NOT = 0.5;

    /** How likely a family must be known to be asked untaught: at first, after one miss in the drill, and after two. */
    private static final double[] PLAUSIBLE = {0.6, 0.8, Ending.SURE};

    private final ChoiceContext here;
    private final Rails rails;
    private final Rules rules;
    private final Lessons lessons;
    private final int misses;

    NewFamilies(ChoiceContext here, Rails rails, Rules rules) {
        this.here = here;
        this.rails = rails;
        this.rules = rules;
        this.lessons = Lessons.of(here.drill);
        this.misses = Math.min(missesUntaught(), PLAUSIBLE.length - 1);
    }

    /** How many families were asked untaught in this drill and not known, or not quickly. */
    private int missesUntaught() {
        Duration quick = here.progress.steering().settings().quick();
        int count = 0;
        for (int f = 0; f < Families.COUNT; f++) {
            FactMastery product = here.progress.mastery(f);
            boolean firstAsked = product.asked() > 0 && product.asked() == here.asked.times(f);
            boolean slow = firstAsked
                    && product.asked() == 1
                    && product.medianThinking()
                            .filter(t -> t.compareTo(quick) > 0)
                            .isPresent();
            count += here.isFamilyMet(f) ? (slow ? 1 : 0) : here.asked.errors(f);
        }
        return count;
    }

    /** The family just asked untaught and not known, if it is the one to be taught next. */
    Optional<Turn> teach() {
        Optional<Answer> last = here.drill.last();
        if (last.isEmpty() || last.get().purpose() != Purpose.INTRODUCE || !mayTeach()) {
            return Optional.empty();
        }
        Family family = last.get().question().orElseThrow().family();
        boolean next = here.progress.nextNew().filter(family::equals).isPresent();
        return next ? Optional.of(lesson(family)) : Optional.empty();
    }

    /**
     * The hardest family never taught that may well be known. A right answer makes harder ones plausible, a miss steps
     * down.
     */
    Optional<Turn> climb(int weak) {
        if (!carriesMore(0, weak) || here.left.compareTo(ROOM_TO_TRY) <= 0 || here.asked.errorsInARow() > 0) {
            return Optional.empty();
        }
        Family hardest = null;
        double least = 2;
        for (Family family : Dates.askedUntaught(here.progress)) {
            int f = family.index();
            if (!here.isFamilyMet(f) && here.asked.times(f) == 0 && mayCome(f)) {
                double chance = here.memory.chanceKnown(family);
                if (chance >= PLAUSIBLE[misses] && chance < least) {
                    least = chance;
                    hardest = family;
                }
            }
        }
        return hardest == null ? Optional.empty() : Optional.of(probe(hardest));
    }

    private boolean mayCome(int family) {
        if (here.familiesMet() >= FEWEST && !rails.hasRoomForAnInverse(family)) {
            return false;
        }
        // Among a handful of families all are neighbours; waiting for others between them would be waiting for ever.
        return here.familiesMet() < HANDFUL ? rails.bears(family) : rails.allows(family);
    }

    /**
     * A new family, if the child can carry one more.
     *
     * @param waiting how many traces are due
     * @param weak how many traces are weak
     */
    Optional<Turn> join(int waiting, int weak) {
        boolean carries = here.familiesMet() < FEWEST || carriesMore(waiting, weak) || waitedLong();
        return carries ? next() : Optional.empty();
    }

    /** Whether a lesson was given only just now: a drill does not end with one. */
    boolean hasJustTaught() {
        return lessons.sinceLast(here.now).compareTo(rules.afterLesson()) < 0;
    }

    /** The family that comes next, if the parent asked for it. */
    Optional<Turn> wished() {
        return isWished() ? next() : Optional.empty();
    }

    /** The family that comes next, if one may be taught. */
    Optional<Turn> next() {
        return mayTeach() ? theNext() : Optional.empty();
    }

    /** The same when there is nothing else to ask, however short a time after the last. */
    Optional<Turn> nextAtLast() {
        return hasRoom() && here.asked.errorsInARow() < MOST_ERRORS && lessons.count() < mostLessons()
                ? theNext()
                : Optional.empty();
    }

    private Optional<Turn> theNext() {
        Optional<Family> next = here.progress.nextNew().filter(f -> mayCome(f.index()) || here.familiesMet() == 0);
        if (next.isEmpty()) {
            return Optional.empty();
        }
        int f = next.get().index();
        double enough = here.asked.errorsInARow() == 0 ? WORTH_ASKING : PLAUSIBLE[misses];
        boolean ask = here.asked.times(f) == 0 && here.memory.chanceKnown(next.get()) >= enough;
        return Optional.of(ask ? probe(next.get()) : lesson(next.get()));
    }

    /** While few families are met and nothing else is left: one that follows a rule, the most likely first. After two misses only a sure one. */
    Optional<Turn> byRule() {
        if (here.familiesMet() >= Rails.FEW || here.left.isNegative()) {
            return Optional.empty();
        }
        // An inverse that is owed needs something before it, so there it may be less than sure.
        boolean sure = misses == PLAUSIBLE.length - 1 && !here.asked.isAnyOwed();
        double enough = sure ? PLAUSIBLE[misses] : AS_LIKELY_AS_NOT;
        return here.progress.introductionOrder().stream()
                .filter(f -> f.contains(1) || f.contains(10))
                .filter(f -> here.memory.chanceKnown(f) >= enough)
                .filter(f -> !here.isFamilyMet(f.index()) && here.asked.times(f.index()) == 0)
                .filter(f -> mayCome(f.index()))
                .max(Comparator.comparingDouble(here.memory::chanceKnown))
                .map(NewFamilies::probe);
    }

    private static Turn probe(Family family) {
        return new Turn(Question.product(family.low(), family.high()), Purpose.PROBE);
    }

    private static Turn lesson(Family family) {
        return new Turn(Question.product(family.low(), family.high()), Purpose.INTRODUCE);
    }

    private boolean hasRoom() {
        return here.left.compareTo(ROOM) > 0;
    }

    private boolean mayTeach() {
        return hasRoom() && here.asked.errorsInARow() < MOST_ERRORS && isPaced();
    }

    private boolean carriesMore(int waiting, int weak) {
        double load = here.progress.recent().load();
        return weak <= load && here.unsure() < rules.unsureShare() * load && waiting <= rules.mostWaiting();
    }

    /** Who was right long enough gets a new family after some drills, whatever is weak: quickness may never come. */
    private boolean waitedLong() {
        RecentDrills recent = here.progress.recent();
        return !isAnyNewToday()
                && recent.wellInARow() >= rules.wellInARow()
                && recent.sinceNew()
                        >= (recent.load() >= rules.muchCarried() ? rules.shortWait() : rules.longestWait());
    }

    /**
     * Whether the parent asked for the family that comes next: begun again, in focus, of a table opened by hand, or the
     * first of one that was taught at home.
     */
    private boolean isWished() {
        Steering steering = here.progress.steering();
        return here.progress
                .nextNew()
                .filter(f -> here.progress.isToBeginAgain(f)
                        || steering.focused().contains(f)
                        || steering.opened().stream().anyMatch(f::contains)
                        || (here.familiesMet() >= FEWEST && Dates.isFirstOfANewTable(here.progress, f)))
                .isPresent();
    }

    /** Whether fewer families than the limit were taught in this drill, and the last of them long enough ago. */
    private boolean isPaced() {
        Duration since = lessons.sinceLast(here.now);
        return lessons.count() < mostLessons()
                && (since.compareTo(rules.newEvery()) >= 0 || here.familiesMet() < FEWEST);
    }

    /** What the parent chose is kept. Where nothing was chosen the first families come together, to have something between. */
    private int mostLessons() {
        // What the parent begins again is not new: where nothing new is wanted, one of it comes all the same.
        boolean again =
                here.progress.nextNew().filter(here.progress::isToBeginAgain).isPresent();
        int most = Math.max(here.progress.steering().settings().newInDrill(), again ? 1 : 0);
        if (!isFirstDay()) {
            return most;
        }
        boolean well = here.asked.turns() >= ENOUGH_TO_TELL && !here.isTimeToBeGentle();
        return Math.max(well ? FEWEST + 1 : FEWEST, most);
    }

    /** Whether all families that were met were taught in this drill, and the parent has not said how many may be. */
    private boolean isFirstDay() {
        Settings settings = here.progress.steering().settings();
        return here.familiesMet() <= lessons.count() && !settings.chosen().containsKey(Setting.NEW);
    }

    private boolean isAnyNewToday() {
        for (Family family : Families.all()) {
            if (here.isFamilyMet(family.index()) && isNewToday(family)) {
                return true;
            }
        }
        return false;
    }

    private boolean isNewToday(Family family) {
        for (Trace trace : family.traces()) {
            if (here.progress.mastery(trace).asked() > here.asked.times(trace.index())) {
                return false;
            }
        }
        return true;
    }
}
