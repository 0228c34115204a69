// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.home.PracticeRecords;
import fourfold.home.Standing;
import fourfold.insight.AwayChoice;
import fourfold.insight.DrillRates;
import fourfold.insight.Grid;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.outlook.Outlook;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.terminal.Page;
import fourfold.words.Words;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/** Reads what one of the parent's pages shows of a child, and makes the page. */
record OpenPage(What what, Words words, Child child, Instant at) implements HomeEffect {
    /** The pages, as they stand in the list of all. */
    enum What {
        PLAN,
        AWAY,
        PRINT,
        PAPER,
        RATES,
        DRILLS,
        HISTORY,
        SETTINGS,
        CHILDREN,
        GATE,
        ALOUD,
        CAUTIONS,
        GUIDE,
        CARE,
        TOGETHER,
        HOUSEHOLD,
        CALENDAR;

        /** Its name in texts. */
        String key() {
            return "more." + name().toLowerCase(Locale.ROOT);
        }
    }

    @Override
    public Outcome perform(Home home) {
        return what == What.HOUSEHOLD ? new HouseholdPage.Open(words).perform(home) : made(home, page(home));
    }

    /** The page that was made, in sentences if it has them and the household wants them. */
    static Made made(Home home, Page page) {
        return new Made(
                page instanceof Speaking speaking && home.settings().isInSentences()
                        ? new SpokenPage(speaking, 0)
                        : page);
    }

    private Page page(Home home) {
        PracticeRecords records = home.records();
        return switch (what) {
            case PLAN -> plan(home);
            case AWAY -> {
                SteeringKeys steers = new SteeringKeys(words, child, records.standing(child));
                yield new AwayPage(steers, AwayChoice.of(steers.progress(), Grid.of(steers.progress(), at)));
            }
            case PRINT -> new PrintPage(words, child);
            case PAPER ->
                new PaperPage(
                        words, child, home.moments().zone(), home.paperAnswers().pages(child), 0, "");
            case ALOUD -> AloudPage.of(words, child, records.progress(child), at);
            case RATES -> {
                DrillRates rates = new DrillRates();
                records.read(child, rates);
                yield RatesPage.of(words, child, rates);
            }
            case DRILLS -> new DrillsPage(words, child, home.moments().zone(), records.drills(child), 0);
            case HISTORY -> HistoryPage.of(words, child, records.actions(child));
            case SETTINGS -> new SettingsPage(new SteeringKeys(words, child, records.standing(child)), 0);
            case CHILDREN -> new ChildrenPage(words, home.children().all());
            case GATE -> new GateSettingPage(words, home.gate().isSet());
            case CAUTIONS -> new CautionsPage(words);
            case GUIDE -> GuidePage.of(words);
            case TOGETHER, HOUSEHOLD ->
                new TogetherPage(words, home.moments().zone(), home.together().state(), Optional.empty(), "");
            case CALENDAR -> CalendarPage.of(new SteeringKeys(words, child, records.standing(child)), records.today());
            case CARE -> CarePage.of(words, home.moments().zone(), home.care().state());
        };
    }

    private Page plan(Home home) {
        Progress progress = home.records().progress(child);
        Weeks weeks = Weeks.of(
                home.records().sessions(child),
                progress.localDay(at),
                progress.steering().settings().days());
        return PlanPage.of(words, child, progress, weeks, home.lookAhead().begin(child, at, Outlook.RUNS));
    }

    /** Reads the grid of a child and the levels of a week ago, under what the parent has chosen today. */
    record OfGrid(Words words, Child child, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            Standing standing = home.records().standing(child);
            Progress lastWeek = home.records().levelsAt(child, at.minus(Duration.ofDays(7)));
            return made(home, GridPage.of(new SteeringKeys(words, child, standing), lastWeek, at));
        }
    }
}
