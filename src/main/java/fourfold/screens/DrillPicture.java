package fourfold.screens;

import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.drill.Phase.Asking;
import fourfold.drill.Summary;
import fourfold.facts.Child;
import fourfold.facts.Family;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** How a drill looks: almost empty, the question in tall digits, the answer in tall digits beneath. */
final class DrillPicture {
    private final Child child;

    DrillPicture(Child child) {
        this.child = child;
    }

    void draw(Picture picture, Drill drill) {
        Phase phase = drill.phase();
        if (phase instanceof Asking asking) {
            asking(picture, asking);
        } else if (phase instanceof Phase.Right right) {
            right(picture, right);
        } else if (phase instanceof Phase.Meeting meeting) {
            meeting(picture, meeting.family());
        } else if (phase instanceof Phase.Paused paused) {
            paused(picture, paused);
        } else if (phase instanceof Phase.Finished finished) {
            finished(picture, finished.summary());
        }
        foot(picture, drill);
    }

    void notKept(Picture picture, String reason) {
        trouble(picture, "The last answer is not kept yet. It is not your fault.", reason);
        picture.centred(
                picture.height() - 1, "Enter try again   Space go on all the same   Esc stop for today", Ink.QUIET);
    }

    void notKeptAtTheEnd(Picture picture, int answers, String reason) {
        trouble(
                picture,
                "You did well. " + (answers == 1 ? "1 answer is" : answers + " answers are")
                        + " not kept yet. It is not your fault.",
                reason);
        picture.centred(picture.height() - 1, "Enter try again   Esc leave without them", Ink.QUIET);
    }

    private static void trouble(Picture picture, String words, String reason) {
        int line = picture.height() / 2 - 3;
        for (String part : Wrapping.lines(words, picture.width() - 4)) {
            picture.centred(line++, part, Ink.STRONG);
        }
        picture.centred(line++, "Please fetch a grown-up.", Ink.PLAIN);
        line++;
        for (String part : Wrapping.lines(reason, picture.width() - 4)) {
            picture.centred(line++, part, Ink.QUIET);
        }
    }

    /** One quiet line at the top: what is only in memory, or what a grown-up should know. */
    void mark(Picture picture, int answers, String advice) {
        String words = answers == 0 ? advice : answers + (answers == 1 ? " answer" : " answers") + " not kept yet";
        if (!words.isEmpty()) {
            picture.right(0, Wrapping.lines(words, picture.width() - 4).get(0) + " ", Ink.QUIET);
        }
    }

    private static void asking(Picture picture, Asking asking) {
        Tall tall = Tall.on(picture);
        int top = tall.top(picture);
        boolean inView = asking.isInView() && asking.prompt() instanceof Question;
        String line = switch (asking.reason()) {
            case WARMING_UP -> "Type this number.";
            case MEETING -> "Look, then type what it comes to.";
            case PUTTING_RIGHT -> "This one goes like this. Type it once.";
            case SHOWN -> "Here it is. Type it once.";
            case RECALL -> "";
        };
        picture.centred(top - 2, asking.tries() > 0 ? "Nearly. Look once more and type it." : line, Ink.PLAIN);
        String shown = asking.prompt() instanceof Question question
                ? signs(question) + (inView ? "=" + question.expected() : "=")
                : Integer.toString(asking.prompt().expected());
        picture.centredBlock(top, tall.rows(shown, picture), Ink.PLAIN);
        int below = top + tall.height() + 2;
        picture.centredBlock(below, tall.rows(asking.typed(), picture), Ink.STRONG);
        int places = Math.max(2, asking.typed().length());
        picture.centred(below + tall.height(), "─".repeat(tall.width(places)), Ink.QUIET);
        if (asking.reason() == Phase.Reason.PUTTING_RIGHT || asking.reason() == Phase.Reason.SHOWN) {
            asking.question().ifPresent(q -> square(picture, below + tall.height() + 2, q.family()));
        }
    }

    private static String signs(Question question) {
        return question.left() + "" + (question.operation() == Operation.MULTIPLY ? '×' : '÷') + question.right();
    }

    private static void right(Picture picture, Phase.Right right) {
        Tall tall = Tall.on(picture);
        int top = tall.top(picture);
        String shown = right.answer().prompt() instanceof Question question
                ? signs(question) + "=" + question.expected()
                : Integer.toString(right.answer().prompt().expected());
        picture.centredBlock(top, tall.rows(shown, picture), Ink.STRONG);
        if (!(right.answer().prompt() instanceof NumberToCopy)) {
            picture.centred(top + tall.height() + 2, "Right.", Ink.PLAIN);
        }
    }

    /** How tall the digits are: as tall as there is room for. */
    private enum Tall {
        SMALL(BigDigits.Size.SMALL, 1),
        TALL(BigDigits.Size.TALL, 1),
        TALLEST(BigDigits.Size.TALL, 2);

        private final BigDigits.Size size;
        private final int times;

        Tall(BigDigits.Size size, int times) {
            this.size = size;
            this.times = times;
        }

        static Tall on(Picture picture) {
            if (picture.width() >= 130 && picture.height() >= 36) {
                return TALLEST;
            }
            return picture.width() >= 76 && picture.height() >= 22 ? TALL : SMALL;
        }

        int height() {
            return size.rows() * times;
        }

        int width(int places) {
            return BigDigits.width("0".repeat(places), size) * times;
        }

        /** The question's first row: question, answer, and the square of four beneath stand in the middle. */
        int top(Picture picture) {
            return Math.max(3, (picture.height() - 2 * height() - 7) / 2);
        }

        List<String> rows(String text, Picture picture) {
            List<String> rows = BigDigits.rows(text, size, picture.unicode());
            return times == 1 ? rows : Doubling.of(rows);
        }
    }

    private static void meeting(Picture picture, Family family) {
        boolean roomy = picture.height() >= 16 + family.low();
        picture.centred(
                1, "A new family: " + family.low() + ", " + family.high() + " and " + family.product(), Ink.STRONG);
        square(picture, 3, family);
        if (roomy || picture.height() >= family.low() + 11) {
            int y = 8;
            picture.centred(
                    y - 1,
                    family.low() + (family.low() == 1 ? " row of " : " rows of ") + family.high() + " make "
                            + family.product(),
                    Ink.PLAIN);
            String row = "● ".repeat(family.high()).strip();
            for (int i = 0; i < family.low() && y + i < picture.height() - 2; i++) {
                picture.centred(y + i, row, Ink.LASTING);
            }
        }
        picture.centred(picture.height() - 2, "Look at it. Then press Enter.", Ink.PLAIN);
    }

    /** The square of four: turn-around sideways, inverse up and down. */
    static void square(Picture picture, int y, Family family) {
        List<String> rows = squareRows(family);
        for (int i = 0; i < rows.size(); i++) {
            picture.centred(y + i, rows.get(i), Ink.QUIET);
        }
    }

    static List<String> squareRows(Family family) {
        List<String> facts = family.facts().stream().map(Object::toString).toList();
        if (family.isSquare()) {
            return List.of(facts.get(0), "↕", facts.get(1));
        }
        int wide = facts.stream().mapToInt(String::length).max().orElse(0);
        String gap = " ".repeat(wide / 2);
        List<String> rows = new ArrayList<>();
        rows.add(padded(facts.get(0), wide) + "  ↔  " + padded(facts.get(1), wide));
        rows.add(gap + "↕" + " ".repeat(wide - 1 - gap.length() + 5 + gap.length()) + "↕"
                + " ".repeat(wide - 1 - gap.length()));
        rows.add(padded(facts.get(2), wide) + "  ↔  " + padded(facts.get(3), wide));
        return rows;
    }

    private static String padded(String text, int width) {
        int before = (width - text.length()) / 2;
        return " ".repeat(before) + text + " ".repeat(width - text.length() - before);
    }

    private static void paused(Picture picture, Phase.Paused paused) {
        int y = picture.height() / 2 - 3;
        picture.centred(y, "Pause", Ink.STRONG);
        picture.centred(
                y + 2,
                paused.byItself() ? "Are you still there? Take your time." : "The clock stands still.",
                Ink.PLAIN);
        picture.centred(y + 4, "Enter: go on", Ink.PLAIN);
        picture.centred(y + 5, "Esc: stop for today", Ink.PLAIN);
    }

    private void finished(Picture picture, Summary summary) {
        List<String> lines = new ArrayList<>();
        lines.add("You practised " + minutes(summary) + ".");
        lines.add(
                summary.asked() == 0
                        ? "No questions this time."
                        : summary.right() + " of " + summary.asked() + " answers came right from memory.");
        if (!summary.met().isEmpty()) {
            lines.add("New: " + names(summary.met()));
        }
        if (!summary.firmer().isEmpty()) {
            lines.add("Firmer than before: " + names(summary.firmer()));
        }
        lines.add("");
        lines.add("Everything is kept. See you next time.");
        int y = Math.max(2, picture.height() / 2 - lines.size());
        picture.centred(y, "Well done, " + child.name() + ".", Ink.STRONG);
        int line = y + 2;
        for (String text : lines) {
            for (String part : text.isEmpty() ? List.of("") : Wrapping.lines(text, picture.width() - 4)) {
                picture.centred(line++, part, Ink.PLAIN);
            }
        }
        picture.centred(picture.height() - 2, "Press Enter.", Ink.PLAIN);
    }

    private static String minutes(Summary summary) {
        long minutes = summary.practised().plusSeconds(30).toMinutes();
        return minutes < 1 ? "less than a minute" : minutes == 1 ? "1 minute" : minutes + " minutes";
    }

    private static String names(List<Family> families) {
        return families.stream().map(f -> f.low() + " × " + f.high()).collect(Collectors.joining(", "));
    }

    /** One quiet line: the name, how to pause, and a mark for each minute practised. */
    private void foot(Picture picture, Drill drill) {
        if (drill.isFinished()) {
            return;
        }
        int y = picture.height() - 1;
        picture.text(0, y, " " + child.name(), Ink.QUIET);
        boolean showMe = drill.phase() instanceof Asking asking
                && !asking.isInView()
                && asking.typed().isEmpty();
        boolean typed =
                drill.phase() instanceof Asking asking && !asking.typed().isEmpty();
        String keys = typed ? "Enter ready   Esc pause" : showMe ? "Enter show me   Esc pause" : "Esc pause";
        if (!(drill.phase() instanceof Phase.Paused)) {
            picture.centred(y, keys, Ink.QUIET);
        }
        picture.right(y, "▪".repeat(minutesPractised(drill)) + " ", Ink.QUIET);
    }

    /** Whole minutes practised up to the last answer; never what is left. */
    private static int minutesPractised(Drill drill) {
        return drill.progress()
                .drill()
                .flatMap(d -> d.last().map(a -> (int) d.practised(a.askedAt()).toMinutes()))
                .orElse(0);
    }
}
