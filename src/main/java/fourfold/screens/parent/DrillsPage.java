package fourfold.screens.parent;

import fourfold.home.PastDrill;
import fourfold.log.Child;
import fourfold.screens.PageContext;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.words.Words;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** The drills of a child, newest first. */
final class DrillsPage implements MutablePage {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private final Words words;
    private final Child child;
    private final SessionClock moments;
    private final List<PastDrill> drills;
    private int first;

    DrillsPage(PageContext context, Child child, SessionClock moments) {
        this.words = context.words();
        this.child = child;
        this.moments = moments;
        this.drills = context.home().records().drills(child);
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("drills.title", child.name()), Ink.STRONG);
        int room = picture.height() - 6;
        first = Math.max(0, Math.min(first, drills.size() - room));
        int x = Math.max(0, (picture.width() - 54) / 2);
        picture.text(
                x,
                3,
                String.format(
                        "%-26s%-12s%s",
                        words.say("drills.when"), words.say("drills.planned"), words.say("drills.right")),
                Ink.QUIET);
        for (int i = first; i < Math.min(drills.size(), first + room); i++) {
            picture.text(x, 4 + i - first, line(drills.get(i)));
        }
        if (drills.isEmpty()) {
            picture.centred(5, words.say("drills.none"), Ink.PLAIN);
        }
        picture.centred(picture.height() - 1, words.say("drills.foot"), Ink.QUIET);
    }

    private String line(PastDrill drill) {
        ZonedDateTime began = drill.session().startedAt().atZone(moments.zone());
        return String.format(
                "%-26s%-12s%s",
                words.namedDate(began.toLocalDate()) + "  " + CLOCK.format(began),
                words.say("drills.minutes", drill.session().planned().toMinutes()),
                words.say("drills.of", drill.right(), drill.asked()));
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
