// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Effect;
import fourfold.home.Home;
import fourfold.home.Keeping;
import fourfold.home.Practice;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What a drill on the screen has to do with the file. The page goes on hearing keys meanwhile. */
sealed interface DrillEffect extends HomeEffect {
    /**
     * What came of it.
     *
     * @param state what is kept and what is not
     * @param ending the picture of the drill's end, if it was asked for
     * @param advice what a grown-up should know of the drill's end
     */
    record Came(Keeping.State state, Optional<SummaryPicture> ending, Optional<String> advice) implements Outcome {}

    /** Does it, on the file's thread. */
    Came perform(Practice practice, Home home);

    @Override
    default Outcome perform(Home home) {
        return perform(home.practice(), home);
    }

    @Override
    default boolean holdsKeys() {
        return false;
    }

    private static Came done(Practice practice) {
        return new Came(practice.keeping().state(), Optional.empty(), Optional.empty());
    }

    /** Keeps this; nothing more than before, if the list is empty. */
    record Keep(List<Effect> effects, Instant at) implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            practice.keeping().keep(effects, at);
            return done(practice);
        }

        /** How many answers are among it. */
        int answers() {
            return Keeping.answers(effects);
        }
    }

    /** Keeps the last there is to keep, and reads what the picture of the end shows. */
    record KeepLast(List<Effect> effects, Instant at, Words words, Child child, Progress progress)
            implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            Keeping keeping = practice.keeping();
            if (!keeping.keep(effects, at) && keeping.isGoingOn()) {
                keeping.tryNow(at);
            }
            return new Came(keeping.state(), Optional.of(ending(home)), Optional.empty());
        }

        /** With the child's stairs and minutes; without them if they can't be read. */
        private SummaryPicture ending(Home home) {
            SummaryPicture without = SummaryPicture.without(words, child, progress);
            try {
                SummaryPicture whole = without.with(
                        home.records().lifetime(child), home.records().timings(child));
                return home.settings().isStill() ? whole.still() : whole;
            } catch (RecordsFailure e) {
                return without;
            }
        }
    }

    /** Tries again to keep what is not kept. */
    record TryAgain(Instant at) implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            practice.keeping().tryNow(at);
            return done(practice);
        }
    }

    /** The child goes on though something is not kept. */
    record GoOn() implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            practice.keeping().goOn();
            return done(practice);
        }
    }

    /** The drill is over and all of it is kept: the time for the day's backup. */
    record End(DrillSession session, Words words, Instant at) implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            Optional<String> advice = practice.ended(session, at).map(words::failure);
            return new Came(practice.keeping().state(), Optional.empty(), advice);
        }
    }

    /** A last try; what the disk does not take even now is lost, and is said to be. */
    record GiveUp(Words words, Instant at) implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            Keeping keeping = practice.keeping();
            if (keeping.isBehind() && !keeping.tryNow(at)) {
                practice.lost(words.lost(keeping.answers(), keeping.failure()));
            }
            return done(practice);
        }
    }

    /** The program is ending with this drill: all of it is kept and the day's backup made; or what is lost is said. */
    record Leave(DrillSession session, Words words, Instant at) implements DrillEffect {
        @Override
        public Came perform(Practice practice, Home home) {
            Came came = new GiveUp(words, at).perform(practice, home);
            if (!practice.keeping().isBehind()) {
                practice.ended(session, at);
            }
            return came;
        }
    }
}
