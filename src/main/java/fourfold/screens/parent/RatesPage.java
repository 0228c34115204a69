package fourfold.screens.parent;

import fourfold.facts.Operation;
import fourfold.insight.DrillRates;
import fourfold.insight.Trend;
import fourfold.log.Child;
import fourfold.progress.Rates;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Digits and facts correct a minute, drill by drill, the newest first. */
final class RatesPage implements MutablePage {
    private final Words words;
    private final Child child;
    private final List<DrillRates.OfDrill> drills;
    private int first;

    RatesPage(PageContext context, Child child) {
        this.words = context.words();
        this.child = child;
        DrillRates rates = new DrillRates();
        context.home().records().read(child, rates);
        this.drills = rates.drills().stream()
                .filter(d -> d.products().isPresent() || d.quotients().isPresent())
                .toList();
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(picture.height() >= 22 ? 1 : 0, words.say("rates.title", child.name()), Ink.STRONG);
        int y = picture.height() >= 22 ? 3 : 1;
        if (drills.isEmpty()) {
            picture.centred(y + 2, words.say("rates.none"), Ink.PLAIN);
        } else {
            List<String> foot = foot(Math.min(76, picture.width() - 2));
            int bottom = picture.height() - 2 - foot.size();
            rows(picture, y, bottom - 1);
            for (int i = 0; i < foot.size(); i++) {
                picture.centred(bottom + i, foot.get(i), Ink.PLAIN);
            }
        }
        Footer.draw(picture, List.of(words.say("rates.foot").split("   ")));
    }

    private void rows(Picture picture, int top, int bottom) {
        int x = Math.max(0, (picture.width() - 48) / 2);
        String form = "%-14s%-18s%s";
        picture.text(
                x,
                top,
                String.format(form, words.say("rates.head"), words.say("rates.products"), words.say("rates.quotients")),
                Ink.QUIET);
        picture.text(x + 14, top + 1, words.say("rates.unit"), Ink.QUIET);
        int room = Math.max(1, bottom - top - 2);
        first = Math.max(0, Math.min(first, drills.size() - room));
        for (int i = 0; i < Math.min(room, drills.size() - first); i++) {
            DrillRates.OfDrill drill = drills.get(drills.size() - 1 - first - i);
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

    private List<String> foot(int width) {
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
                    words.say("rates.range", range.low(), range.high(), range.fromGrade(), range.toGrade()), width));
        }
        lines.addAll(Wrapping.lines(words.say("rates.source"), width));
        return lines;
    }

    private String told(Trend trend) {
        return words.say(
                "rates.trend", words.change(trend.slope()), words.change(trend.low()), words.change(trend.high()));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> first--;
            case DOWN -> first++;
            case ESCAPE, ENTER -> {
                return Navigation.BACK;
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }
}
