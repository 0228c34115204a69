// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.Home;
import fourfold.insight.TableCount;
import fourfold.insight.Weeks;
import fourfold.log.Child;
import fourfold.outlook.Projection;
import fourfold.outlook.YearAhead;
import fourfold.plain.PlanText;
import fourfold.progress.Progress;
import fourfold.screens.HomeEffect;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.ActionWords;
import fourfold.words.AheadWords;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The plan: days planned, when all may be fluent and what would help, how earlier forecasts came true, and how far the tables
 * have come. The look ahead is worked out a run at a time beside the keys, and no further once the page is closed.
 */
record PlanPage(Words words, Child child, Progress progress, Weeks weeks, YearAhead ahead, ScrolledText text)
        implements Speaking {
    /** The page as it opens, with nothing worked out yet. */
    static PlanPage of(Words words, Child child, Progress progress, Weeks weeks, YearAhead ahead) {
        return new PlanPage(words, child, progress, weeks, ahead, ScrolledText.of(List.of())).with(ahead);
    }

    private PlanPage with(YearAhead next) {
        List<String> lines = new ArrayList<>();
        lines.add(words.say("plan.title", child.name()));
        lines.add("");
        lines.add(words.counted(
                "plan.days",
                weeks.planned(),
                weeks.planned(),
                progress.steering().settings().minutes(),
                words.number(weeks.usualDays())));
        List<String> acts = ActionWords.inForce(words, progress);
        if (!acts.isEmpty()) {
            lines.add(String.join(" ", acts));
        }
        lines.addAll(AheadWords.told(words, next));
        lines.addAll(List.of("", words.say("plan.tables")));
        for (TableCount table : TableCount.of(progress)) {
            lines.add(words.say(
                    "plan.table", table.table(), table.families(), table.met(), table.accurate(), table.fluent()));
        }
        return new PlanPage(words, child, progress, weeks, next, text.with(lines));
    }

    @Override
    public List<String> said() {
        return PlanText.sentences(
                        words,
                        child.name(),
                        weeks,
                        ActionWords.inForce(words, progress),
                        TableCount.of(progress),
                        Optional.of(ahead),
                        true)
                .lines()
                .toList();
    }

    @Override
    public String keys() {
        return words.say("plan.foot");
    }

    @Override
    public boolean isOnlyRead() {
        return true;
    }

    @Override
    public PageResult on(PageEvent event) {
        if (event instanceof PageEvent.Pressed key) {
            return key.key().kind() == Key.Kind.ESCAPE
                    ? PageResult.of(this, PageEffect.BACK)
                    : PageResult.of(new PlanPage(words, child, progress, weeks, ahead, text.moved(key)));
        }
        if (event instanceof PageEvent.Opened && !ahead.isDone()) {
            return PageResult.of(this, new Further(ahead));
        }
        if (event instanceof PageEvent.Done done && done.outcome() instanceof Gone gone) {
            return gone(gone.ahead(), done.at());
        }
        return PageResult.of(this);
    }

    private PageResult gone(YearAhead next, Instant at) {
        List<PageEffect> effects = new ArrayList<>();
        if (!next.isDone()) {
            effects.add(new Further(next));
        }
        if (ahead.projection().isEmpty()) {
            next.projection().ifPresent(p -> effects.add(new Remember(child, p, at)));
        }
        return new PageResult(with(next), effects);
    }

    /** Plays one run more. */
    record Further(YearAhead ahead) implements PageEffect.Calculation {
        @Override
        public Outcome result() {
            return new Gone(ahead.step());
        }
    }

    /** One run more was played. */
    record Gone(YearAhead ahead) implements PageEffect.Outcome {}

    /** Remembers what it came to for a printed page; if that fails, it is on the screen all the same. */
    record Remember(Child child, Projection projection, Instant at) implements HomeEffect {
        @Override
        public Outcome perform(Home home) {
            home.lookAhead().remember(child, projection, at);
            return new Kept();
        }

        @Override
        public boolean holdsKeys() {
            return false;
        }
    }

    @Override
    public void draw(Picture picture) {
        text.draw(picture, keys());
    }
}
