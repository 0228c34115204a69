package fourfold.screens;

import fourfold.facts.Child;
import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.progress.Progress;
import fourfold.progress.Standing;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** One family in numbers, with the parent's keys. */
final class FamilyPage implements Page {
    private final Child child;
    private final Family family;
    private final Moments moments;
    private final Steers steers;
    private boolean askReset;

    FamilyPage(Records records, Child child, Family family, Moments moments) {
        this.child = child;
        this.family = family;
        this.moments = moments;
        this.steers = new Steers(records, child);
    }

    @Override
    public void draw(Picture picture) {
        Progress progress = steers.progress();
        int top = picture.height() >= 22 ? 2 : 0;
        picture.centred(
                top,
                child.name() + "   the family of " + family.low() + ", " + family.high() + " and " + family.product()
                        + "   " + progress.level(family).word(),
                Ink.STRONG);
        DrillPicture.square(picture, top + 2, family);
        int y = top + 6;
        int x = Math.max(0, (picture.width() - 58) / 2);
        picture.text(
                x,
                y,
                String.format("%-15s%-10s%-11s%-11s%s", "", "level", "right", "thinking", "last asked"),
                Ink.QUIET);
        for (Trace trace : family.traces()) {
            y++;
            picture.text(x, y, row(progress, trace));
        }
        y += 2;
        for (String line : Wrapping.lines(words(progress), Math.min(66, picture.width() - 4))) {
            picture.centred(y++, line, Ink.PLAIN);
        }
        String told = askReset ? "Begin this family again? No answer is deleted.   y yes   n no" : steers.told();
        picture.centred(picture.height() - 2, told, Ink.STRONG);
        Footer.draw(picture, List.of("f focus", "h hold", "r reset", "u undo", "Esc back"));
    }

    private String row(Progress progress, Trace trace) {
        Standing standing = progress.standing(trace);
        String facts = trace.questions().stream().map(Question::toString).collect(Collectors.joining(", "));
        String right = standing.asked() == 0 ? "–" : standing.right() + " of " + standing.asked();
        String thinking = standing.medianThinking().map(FamilyPage::seconds).orElse("–");
        String last = standing.lastDay().map(this::day).orElse("–");
        return String.format("%-15s%-10s%-11s%-11s%s", facts, standing.level().word(), right, thinking, last);
    }

    private String day(long day) {
        long ago = steers.progress().localDay(moments.now()) - day;
        if (ago <= 0) {
            return "today";
        }
        return ago == 1
                ? "yesterday"
                : ago < 60 ? ago + " days ago" : LocalDate.ofEpochDay(day).toString();
    }

    private String words(Progress progress) {
        String state = switch (progress.level(family)) {
            case NEW -> "Not met yet. It comes when its turn is there; focus brings it next.";
            case ACQUIRING -> "Still being learned. A few calm repeats away from the screen help.";
            case ACCURATE -> "Mostly right, still worked out. It needs time and practice to become quick.";
            case FLUENT -> "Right and quick. Now it only has to last.";
            case LASTING -> "Right and quick, and it has lasted.";
        };
        return progress.isHeld(family)
                ? state + " On hold: it is left out for now."
                : progress.isFocused(family) ? state + " In focus: it is practised more, until fluent." : state;
    }

    static String seconds(Duration time) {
        return String.format(Locale.ROOT, "%.1f s", time.toMillis() / 1000.0);
    }

    @Override
    public Move on(Key key, Instant at) {
        if (key.kind() == Key.Kind.ESCAPE && !askReset) {
            return Move.BACK;
        }
        try {
            act(key, at);
        } catch (Records.NotKept e) {
            steers.say(e.line());
        }
        return Move.STAY;
    }

    private void act(Key key, Instant at) {
        String name = family.low() + " × " + family.high();
        if (askReset) {
            askReset = false;
            if (key.is('y')) {
                steers.reset(List.of(family), name, at);
            } else {
                steers.say("Nothing was changed.");
            }
        } else if (key.is('f')) {
            steers.focus(List.of(family), name, at);
        } else if (key.is('h')) {
            steers.hold(List.of(family), name, at);
        } else if (key.is('r')) {
            askReset = true;
        } else if (key.is('u')) {
            steers.undo(at);
        }
    }
}
