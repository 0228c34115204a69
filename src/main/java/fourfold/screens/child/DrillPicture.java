// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Reason;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.log.Child;
import fourfold.log.Purpose;
import fourfold.progress.Settings;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;

/** How a drill looks: almost empty, the question in tall digits, the answer in tall digits beneath. */
final class DrillPicture {
    private final Child child;
    private final Words words;
    private final DrillKeys keys;

    DrillPicture(Child child, Words words, Settings settings) {
        this.child = child;
        this.words = words;
        this.keys = new DrillKeys(words, settings);
    }

    void draw(Picture picture, Drill drill) {
        Phase phase = drill.phase();
        if (phase instanceof Phase.Ready) {
            greeting(picture);
        } else if (phase instanceof Asking asking) {
            asking(picture, drill, asking);
        } else if (phase instanceof Phase.Right right) {
            right(picture, drill, right);
        } else if (phase instanceof Phase.Meeting meeting) {
            new LessonPicture(words).meeting(picture, meeting, keys.ready());
        } else if (phase instanceof Phase.Paused paused) {
            waiting(picture, "pause.title", paused.byItself() ? "pause.away" : "pause.still");
        } else if (phase instanceof Phase.HandsOff) {
            waiting(picture, "handsoff.title", "handsoff.ask");
        } else if (phase instanceof Phase.OneMinute minute) {
            oneMinute(picture, minute.operation());
        }
        foot(picture, drill);
    }

    void notKept(Picture picture, String reason) {
        trouble(picture, words.say("trouble.notkept"), reason);
        picture.centred(picture.height() - 1, words.say("trouble.foot"), Ink.QUIET);
    }

    void notKeptAtTheEnd(Picture picture, int answers, String reason) {
        trouble(picture, words.counted("trouble.atend", answers, answers), reason);
        picture.centred(picture.height() - 1, words.say("trouble.foot.end"), Ink.QUIET);
    }

    private void trouble(Picture picture, String told, String reason) {
        int line = picture.height() / 2 - 3;
        for (String part : Wrapping.lines(told, picture.width() - 4)) {
            picture.centred(line++, part, Ink.STRONG);
        }
        picture.centred(line++, words.say("trouble.grownup"), Ink.PLAIN);
        line++;
        for (String part : Wrapping.lines(reason, picture.width() - 4)) {
            picture.centred(line++, part, Ink.QUIET);
        }
    }

    /** One quiet line at the top: what is only in memory, or what a grown-up should know. */
    void mark(Picture picture, int answers, String advice) {
        String told =
                answers == 0 ? advice : words.say("drill.notkept", words.counted("count.answers", answers, answers));
        if (!told.isEmpty()) {
            picture.right(0, Wrapping.lines(told, picture.width() - 4).get(0) + " ", Ink.QUIET);
        }
    }

    private void asking(Picture picture, Drill drill, Asking asking) {
        Shelves shelves = new Shelves(picture, words);
        if (asking.question().isPresent() && asking.isInView()) {
            new LessonPicture(words).inView(picture, shelves, asking);
            return;
        }
        picture.centred(shelves.told(), told(asking), Ink.PLAIN);
        shelves.ask(asking.prompt(), asking.typed(), Ink.PLAIN, Ink.STRONG);
        if (asking.reason() == Reason.WARMING_UP) {
            LanternPicture.draw(picture, shelves, copied(drill));
        }
    }

    private String told(Asking asking) {
        return switch (asking.reason()) {
            case WARMING_UP -> words.say(asking.tries() > 0 ? "drill.once.more" : "drill.copy");
            case NO_HURRY -> words.say("drill.nohurry");
            case COVERED -> words.say(covered(asking.question().orElseThrow()));
            default -> "";
        };
    }

    private static String covered(Question question) {
        if (question.operation() == Operation.DIVIDE) {
            return "drill.covered.undone";
        }
        return question.left() > question.right() ? "drill.covered.turned" : "drill.covered";
    }

    /** How many numbers to copy are done. */
    private static int copied(Drill drill) {
        return (int) drill.progress().drill().orElseThrow().answers().stream()
                .filter(a -> a.purpose() == Purpose.COPY && a.isCorrect())
                .count();
    }

    /** The answer stays where it was typed. */
    private void right(Picture picture, Drill drill, Phase.Right right) {
        Shelves shelves = new Shelves(picture, words);
        Prompt prompt = right.answer().prompt();
        String typed = right.answer().typed();
        if (prompt instanceof NumberToCopy) {
            shelves.ask(prompt, typed, Ink.PLAIN, Ink.STRONG);
            LanternPicture.draw(picture, shelves, copied(drill));
            return;
        }
        shelves.ask(prompt, typed, Ink.STRONG, Ink.STRONG);
        picture.centred(shelves.told(), words.say("drill.right"), Ink.PLAIN);
    }

    private void greeting(Picture picture) {
        int y = picture.height() / 2 - 3;
        picture.centred(y, words.say("minutes.hello", Words.isolated(child.name())), Ink.STRONG);
        picture.centred(y + 2, words.say("minutes.how", keys.ready()), Ink.PLAIN);
        picture.centred(y + 3, words.say("minutes.pause", keys.pause()), Ink.PLAIN);
        picture.centred(y + 5, words.say("minute.begin", keys.ready()), Ink.PLAIN);
    }

    private void waiting(Picture picture, String title, String line) {
        int y = picture.height() / 2 - 5;
        picture.centred(y, words.say(title), Ink.STRONG);
        picture.centred(y + 2, words.say(line), Ink.PLAIN);
        picture.centred(y + 4, words.say("pause.on", keys.ready()), Ink.PLAIN);
        picture.centred(y + 5, words.say("pause.stop", keys.pause()), Ink.PLAIN);
        picture.centred(y + 7, words.say("pause.keys"), Ink.QUIET);
        picture.centred(y + 8, words.say("pause.keys.ready", keys.ready()), Ink.QUIET);
        picture.centred(y + 9, words.say("pause.keys.erase", keys.erase(), keys.pause()), Ink.QUIET);
    }

    private void oneMinute(Picture picture, Operation operation) {
        int y = picture.height() / 2 - 4;
        picture.centred(y, words.say("minute.title"), Ink.STRONG);
        picture.centred(
                y + 2, words.say(operation == Operation.MULTIPLY ? "minute.products" : "minute.quotients"), Ink.PLAIN);
        picture.centred(y + 3, words.say("minute.how"), Ink.PLAIN);
        picture.centred(y + 5, words.say("minute.begin", keys.ready()), Ink.PLAIN);
        picture.centred(y + 6, words.say("minute.leave", keys.pause()), Ink.PLAIN);
    }

    /** One quiet line: the name, the keys, and a mark for each minute practised. */
    private void foot(Picture picture, Drill drill) {
        if (drill.isFinished()) {
            return;
        }
        int y = picture.height() - 1;
        String name = " " + child.name();
        String minutes = "▪".repeat(minutesPractised(drill)) + " ";
        picture.text(0, y, name, Ink.QUIET);
        picture.right(y, minutes, Ink.QUIET);
        boolean waits = drill.phase().isAtRest() || drill.phase() instanceof Phase.OneMinute;
        if (!waits) {
            int room = picture.width() - 2 * Math.max(Picture.columns(name), Picture.columns(minutes)) - 2;
            picture.centred(y, keysFor(drill.phase(), room), Ink.QUIET);
        }
    }

    /** As many of the keys as there is room for; pause is always among them. */
    private String keysFor(Phase phase, int room) {
        List<String> told = new ArrayList<>();
        if (phase instanceof Asking asking && !asking.typed().isEmpty()) {
            told.add(words.say("drill.foot.ready", keys.ready()));
            told.add(words.say("drill.foot.erase", keys.erase()));
        } else if (phase instanceof Asking asking && !asking.isInView()) {
            told.add(words.say("drill.foot.showme", keys.ready()));
        }
        told.add(words.say("drill.foot.pause", keys.pause()));
        told.add(words.say("drill.foot.keys"));
        while (told.size() > 2 && Picture.columns(String.join("   ", told)) > room) {
            told.remove(told.size() == 3 ? 2 : 1);
        }
        return String.join("   ", told);
    }

    /** Whole minutes practised up to the last answer; never what is left. */
    private static int minutesPractised(Drill drill) {
        return drill.progress()
                .drill()
                .flatMap(d -> d.last().map(a -> (int) d.practised(a.askedAt()).toMinutes()))
                .orElse(0);
    }
}
