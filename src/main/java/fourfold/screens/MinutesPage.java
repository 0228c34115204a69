package fourfold.screens;

import fourfold.drill.Drill;
import fourfold.facts.Child;
import fourfold.facts.Surface;
import fourfold.progress.Progress;
import fourfold.scheduling.Scheduler;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** How many minutes today? Enter begins. */
final class MinutesPage implements Page {
    private static final int SHORTEST = 5;
    private static final int LONGEST = 10;

    private final Records records;
    private final Scheduler scheduler;
    private final Moments moments;
    private final Surface surface;
    private final Child child;
    private final Progress progress;
    private int minutes;
    private String trouble = "";

    MinutesPage(Records records, Scheduler scheduler, Moments moments, Surface surface, Child child) {
        this.records = records;
        this.scheduler = scheduler;
        this.moments = moments;
        this.surface = surface;
        this.child = child;
        this.progress = records.progress(child);
        this.trouble = ClockAdvice.of(progress, moments.now()).orElse("");
        this.minutes = progress.steering().settings().minutes();
    }

    @Override
    public void draw(Picture picture) {
        int y = picture.height() / 2 - 5;
        picture.centred(y, "Hello " + child.name() + ".", Ink.STRONG);
        picture.centred(y + 2, "How many minutes today?", Ink.PLAIN);
        List<String> choices = new ArrayList<>();
        for (int m = SHORTEST; m <= LONGEST; m++) {
            choices.add(m == minutes ? "[" + m + "]" : " " + m + " ");
        }
        picture.centred(y + 4, String.join(" ", choices), Ink.STRONG);
        picture.centred(y + 7, "Type each answer, then press Enter.", Ink.PLAIN);
        picture.centred(y + 8, "You can stop the clock with Esc at any time.", Ink.PLAIN);
        int line = y + 10;
        for (String part : Wrapping.lines(trouble, picture.width() - 4)) {
            picture.centred(line++, part, Ink.STRONG);
        }
        picture.centred(picture.height() - 1, "← → minutes   Enter begin   Esc back", Ink.QUIET);
    }

    @Override
    public Move on(Key key, Instant at) {
        switch (key.kind()) {
            case LEFT, DOWN -> minutes = Math.max(SHORTEST, minutes - 1);
            case RIGHT, UP -> minutes = Math.min(LONGEST, minutes + 1);
            case DIGIT -> minutes = key.digit() == 0 || key.digit() == 1 ? LONGEST : Math.max(SHORTEST, key.digit());
            case ESCAPE -> {
                return Move.BACK;
            }
            case ENTER -> {
                return begin(at);
            }
            default -> {
                return Move.STAY;
            }
        }
        return Move.STAY;
    }

    private Move begin(Instant at) {
        try {
            Drill drill = Drill.ready(progress, records.newSitting(child, minutes, at), scheduler, surface);
            return new Move.Replace(new DrillPage(records, child, drill, moments.now()));
        } catch (Records.NotKept e) {
            trouble = e.line();
            return Move.STAY;
        }
    }
}
