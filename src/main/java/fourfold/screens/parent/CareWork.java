// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.RecordsCare;
import fourfold.log.Problem;
import fourfold.log.RecordsFailure;
import fourfold.screens.HomeEffect;
import fourfold.terminal.PageEffect;
import fourfold.upkeep.Backup;
import fourfold.upkeep.Difference;
import fourfold.upkeep.Merge;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the page of {@link CarePage} asks to be done with the records. */
final class CareWork {
    private CareWork() {}

    /**
     * What came of it.
     *
     * @param lines what is told
     * @param next what is asked next; empty for the list of all that can be done
     * @param state how the records are now, if that has changed
     */
    record Told(List<String> lines, Optional<CarePage.Step> next, Optional<RecordsCare.State> state)
            implements PageEffect.Outcome {
        static Told of(RecordsCare.State state, String... lines) {
            return new Told(List.of(lines), Optional.empty(), Optional.of(state));
        }

        static Told asking(CarePage.Step next, List<String> lines) {
            return new Told(lines, Optional.of(next), Optional.empty());
        }
    }

    /** Makes a backup. */
    record BackUp(Words words, LocalDate today, SoFar soFar) implements SoFar.Told {
        @Override
        public Outcome perform(Home home) {
            Backup made = home.care().backUp(today, soFar);
            return Told.of(home.care().state(), words.say("care.backup.done", made.name()));
        }
    }

    /** Looks into every corner of the file. */
    record Check(Words words, SoFar soFar) implements SoFar.Told {
        private static final int MOST = 3;

        @Override
        public Outcome perform(Home home) {
            List<Problem> found = home.care().check(soFar);
            List<String> lines = new ArrayList<>();
            lines.add(found.isEmpty() ? words.say("care.check.well") : words.say("care.check.wrong", found.size()));
            found.stream().limit(MOST).map(words::problem).forEach(lines::add);
            return new Told(lines, Optional.empty(), Optional.of(home.care().state()));
        }
    }

    /** Looks what going back to a backup or a copy would bring and cost. */
    record Compare(Words words, String name, SoFar soFar) implements SoFar.Told {
        @Override
        public Outcome perform(Home home) {
            Path backup = Home.path(name);
            Difference difference = home.care().difference(backup, soFar);
            List<String> lines = new ArrayList<>();
            lines.add(words.say("care.restore.from", backup));
            lines.add(words.say("care.restore.gained", CarePage.counts(words, difference.gained())));
            lines.add(difference
                    .lost()
                    .map(lost -> words.say("care.restore.lost", CarePage.counts(words, lost)))
                    .orElseGet(() -> words.say("care.restore.unknown")));
            lines.add(words.say("care.restore.aside"));
            return Told.asking(new CarePage.Step.Sure(new GoBack(words, backup)), lines);
        }
    }

    /** Goes back to it. */
    record GoBack(Words words, Path backup) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            try {
                Optional<Path> aside = home.care().goBackTo(backup);
                List<String> lines = new ArrayList<>(List.of(words.say("care.restore.done")));
                aside.ifPresent(a -> lines.add(words.say("command.restore.aside", a)));
                return Told.asking(new CarePage.Step.Anew(), lines);
            } catch (RecordsFailure e) {
                return home.isReplaced()
                        ? Told.asking(new CarePage.Step.Anew(), List.of(words.failure(e)))
                        : new Failed(e);
            }
        }
    }

    /** Lays a copy on a stick. */
    record CopyTo(Words words, String name, SoFar soFar) implements SoFar.Told {
        @Override
        public Outcome perform(Home home) {
            Backup made = home.care().copyTo(Home.path(name), soFar);
            return Told.asking(
                    new CarePage.Step.Shown(),
                    List.of(words.say("care.move.done", made.file()), words.say("care.move.then")));
        }
    }

    /** Writes all answers to a table. */
    record WriteOut(Words words, String name) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            Path table = Home.path(name);
            try {
                home.care().writeOut(table);
                return Told.of(home.care().state(), words.say("care.export.done", table));
            } catch (IOException e) {
                return Told.of(home.care().state(), words.notWritten(table, e));
            }
        }
    }

    /** Takes in another file: first tried, with all that is still to be settled, then done. */
    record Take(
            Words words,
            String name,
            Set<String> same,
            Map<String, String> apart,
            Instant at,
            boolean sure,
            SoFar soFar)
            implements SoFar.Told {
        Take {
            same = Set.copyOf(same);
            apart = Map.copyOf(apart);
        }

        static Take of(Words words, String name, Instant at) {
            return new Take(words, name, Set.of(), Map.of(), at, false, new SoFar());
        }

        Take same(String child) {
            Set<String> more = new HashSet<>(same);
            more.add(child);
            return new Take(words, name, more, apart, at, sure, new SoFar());
        }

        /** The other child gets a number behind the name. */
        Take apart(String child) {
            Map<String, String> more = new HashMap<>(apart);
            more.put(child, child + " 2");
            return new Take(words, name, same, more, at, sure, new SoFar());
        }

        @Override
        public Outcome perform(Home home) {
            Path from = Home.path(name);
            Merge.Said said = new Merge.Said(same, apart, at, home.moments().zoneOffsetMinutes(at));
            if (sure) {
                Optional<Path> folder = home.mergeFile().merge(from, said);
                return Told.of(
                        home.care().state(),
                        words.say("care.merge.done", folder.map(Path::toString).orElse("")));
            }
            Merge preview = home.mergeFile().preview(from, said, soFar);
            if (!preview.unsettled().isEmpty()) {
                String child = preview.unsettled().get(0).name();
                return Told.asking(
                        new CarePage.Step.SameChild(this, child), List.of(words.say("command.merge.clash", child)));
            }
            List<String> lines = new ArrayList<>();
            lines.add(words.say("care.merge.new", from, CarePage.counts(words, preview.came())));
            preview.removed().forEach(child -> lines.add(words.say("command.merge.removed", child, from)));
            preview.leftOut().forEach(child -> lines.add(words.say("care.merge.leftout", child)));
            return Told.asking(
                    new CarePage.Step.Sure(new Take(words, name, same, apart, at, true, new SoFar())), lines);
        }
    }
}
