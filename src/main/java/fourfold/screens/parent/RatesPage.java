// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.facts.Operation;
import fourfold.insight.DrillRates;
import fourfold.insight.Trend;
import fourfold.log.Child;
import fourfold.plain.RatesText;
import fourfold.progress.Rates;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Digits and facts correct a minute, drill by drill, the newest first. */
record RatesPage(Words words, Child child, List<DrillRates.OfDrill> drills, int first) implements KeyPage, Speaking {
    /** With the drills in which there was anything to count. */
    static RatesPage of(Words words, Child child, DrillRates rates) {
        List<DrillRates.OfDrill> drills = rates.drills().stream()
                .filter(d -> d.products().isPresent() || d.quotients().isPresent())
                .toList();
        return new RatesPage(words, child, drills, 0);
    }

    @Override
    public List<String> said() {
        return RatesText.sentences(words, child.name(), drills).lines().toList();
    }

    @Override
    public String keys() {
        return words.say("rates.foot");
    }

    @Override
    public boolean isOnlyRead() {
        return true;
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(picture.height() >= 22 ? 1 : 0, words.say("rates.title", child.name()), Ink.STRONG);
        int y = top(picture.height());
        if (drills.isEmpty()) {
            picture.centred(y + 2, words.say("rates.none"), Ink.PLAIN);
        } else {
            List<String> foot = foot(picture.width());
            int bottom = picture.height() - 2 - foot.size();
            rows(picture, y);
            for (int i = 0; i < foot.size(); i++) {
                picture.centred(bottom + i, foot.get(i), Ink.PLAIN);
            }
        }
        Footer.draw(picture, List.of(keys().split("   ")));
    }

    private void rows(Picture picture, int top) {
        int x = Math.max(0, (picture.width() - 48) / 2);
        String form = "%-14s%-18s%s";
        picture.text(
                x,
                top,
                String.format(form, words.say("rates.head"), words.say("rates.products"), words.say("rates.quotients")),
                Ink.QUIET);
        picture.text(x + 14, top + 1, words.say("rates.unit"), Ink.QUIET);
        int room = room(picture.width(), picture.height());
        int from = Math.min(first, last(picture.width(), picture.height()));
        for (int i = 0; i < Math.min(room, drills.size() - from); i++) {
            DrillRates.OfDrill drill = drills.get(drills.size() - 1 - from - i);
            picture.text(
                    x,
                    top + 2 + i,
                    String.format(
                            form,
                            words.shortDate(LocalDate.ofEpochDay(drill.localDay())),
                            told(drill.products()),
                            told(drill.quotients())));
        }
    }

    private String told(Optional<Rates> rates) {
        return rates.map(words::rates).orElse("    –");
    }

    private static int top(int height) {
        return height >= 22 ? 3 : 1;
    }

    /** How many drills there is room for. */
    private int room(int columns, int height) {
        return Math.max(1, height - 5 - foot(columns).size() - top(height));
    }

    private int last(int columns, int height) {
        return Math.max(0, drills.size() - room(columns, height));
    }

    private List<String> foot(int columns) {
        int width = Math.min(76, columns - 2);
        List<String> lines = new ArrayList<>();
        for (Operation operation : Operation.values()) {
            String name = words.say(operation == Operation.MULTIPLY ? "rates.products" : "rates.quotients");
            String trend = DrillRates.digitsTrend(drills, operation)
                    .map(this::told)
                    .orElseGet(() -> words.say("rates.notrend"));
            lines.addAll(Wrapping.lines(name + ". " + trend, width));
        }
        for (DrillRates.Range range : DrillRates.WRITTEN) {
            lines.addAll(Wrapping.lines(
                    words.say(
                            "rates.range",
                            range.low(),
                            range.high(),
                            range.grades().first(),
                            range.grades().last()),
                    width));
        }
        lines.addAll(Wrapping.lines(words.say("rates.source"), width));
        return lines;
    }

    private String told(Trend trend) {
        return words.say(
                "rates.trend",
                words.change(trend.slope()),
                words.change(trend.interval().low()),
                words.change(trend.interval().high()));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return key.key().closes()
                ? PageResult.of(this, PageEffect.BACK)
                : PageResult.of(new RatesPage(
                        words, child, drills, key.key().scrolled(first, last(key.columns(), key.rows()))));
    }
}
