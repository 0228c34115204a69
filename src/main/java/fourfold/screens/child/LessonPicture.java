package fourfold.screens.child;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.Reason;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.progress.Hint;
import fourfold.screens.FactPicture;
import fourfold.screens.SquareOfFour;
import fourfold.screens.TallDigits;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where something is taught: a new family with its growing picture, and a fact in view that is typed once. */
final class LessonPicture {
    private final Words words;
    private final DrillKeys keys;

    LessonPicture(Words words, DrillKeys keys) {
        this.words = words;
        this.keys = keys;
    }

    void meeting(Picture picture, Meeting meeting) {
        Family family = meeting.family();
        int last = picture.height() - 2;
        int tall = meeting.depiction()
                .map(depiction -> FactPicture.of(depiction, family, family.low())
                        .rows(picture.width() - 4, picture.height())
                        .size())
                .orElse(0);
        int top = Math.max(picture.height() >= 22 ? 1 : 0, (picture.height() - tall - 14) / 2);
        picture.centred(top, words.say("meet.title", family.low(), family.high(), family.product()), Ink.STRONG);
        SquareOfFour.draw(picture, top + 2, words, family);
        int y = top + 2 + SquareOfFour.rows(words, family).size() + 1;
        meeting.depiction().ifPresent(depiction -> {
            FactPicture drawn = FactPicture.of(depiction, family, meeting.grown());
            picture.centred(y, drawn.words(words), Ink.PLAIN);
            List<String> rows = drawn.rows(picture.width() - 4, last - y - 2);
            block(picture, y + 1 + (last - y - 3 > rows.size() + 1 ? 1 : 0), rows, drawn);
        });
        if (meeting.isWhole()) {
            meeting.hint().ifPresent(h -> picture.centred(last - 1, way(h), Ink.STRONG));
        }
        picture.centred(last, words.say(meeting.isWhole() ? "meet.whole" : "meet.more", keys.ready()), Ink.PLAIN);
    }

    /** Draws a picture so that it stays where it is while it grows. */
    private static void block(Picture picture, int y, List<String> rows, FactPicture drawn) {
        List<String> whole = new FactPicture(
                        drawn.depiction(), drawn.split(), drawn.groups(), drawn.each(), drawn.groups())
                .rows(picture.width() - 4, Integer.MAX_VALUE);
        int widest = whole.stream().mapToInt(Picture::columns).max().orElse(0);
        int x = Math.max(0, (picture.width() - widest) / 2);
        for (int i = 0; i < rows.size(); i++) {
            picture.text(x, y + i, rows.get(i), Ink.STEP_4);
        }
    }

    /** A fact in view, the line that says what to do above it, what is typed and the fact's picture beneath. */
    void inView(Picture picture, Asking asking, String fact) {
        Question question = asking.question().orElseThrow();
        TallDigits tall = TallDigits.besidePicture(picture);
        List<String> told = told(asking);
        int used = told.size() + 1 + tall.height() + 1 + tall.height() + 1;
        int room = picture.height() - 2 - used - 3;
        Optional<FactPicture> drawn = asking.help().depiction().map(d -> FactPicture.of(d, question));
        List<String> rows =
                drawn.map(d -> d.rows(picture.width() - 4, Math.max(0, room))).orElse(List.of());
        int beneath = rows.isEmpty() ? 4 : rows.size() + 3;
        int y = Math.max(0, (picture.height() - 1 - used - beneath) / 2);
        for (String line : told) {
            picture.centred(y++, line, Ink.PLAIN);
        }
        picture.centredBlock(y + 1, tall.rows(fact, picture), Ink.PLAIN);
        int below = y + 1 + tall.height() + 1;
        picture.centredBlock(below, tall.rows(asking.typed(), picture), Ink.STRONG);
        int places = Math.max(2, asking.typed().length());
        int line = below + tall.height();
        picture.centred(line, "─".repeat(tall.width(places)), Ink.QUIET);
        if (drawn.isPresent() && !rows.isEmpty()) {
            picture.centred(line + 1, drawn.get().words(words), Ink.QUIET);
            block(picture, line + 3, rows, drawn.get());
            int free = line + 4 + rows.size();
            if (free < picture.height() - 1) {
                asking.help().hint().ifPresent(h -> picture.centred(free, way(h), Ink.QUIET));
            }
        } else if (picture.height() - 2 - line > 4) {
            SquareOfFour.draw(picture, line + 2, words, question.family());
        }
    }

    private String way(Hint hint) {
        return words.hint(hint, question -> words.fact(question.fact()));
    }

    private List<String> told(Asking asking) {
        List<String> lines = new ArrayList<>();
        if (asking.tries() > 0) {
            lines.add(words.say("drill.nearly"));
            return lines;
        }
        asking.help().mixup().flatMap(m -> words.mixup(m, words::asked)).ifPresent(lines::add);
        if (asking.reason() == Reason.MEETING) {
            lines.add(words.say(meetingLine(asking.question().orElseThrow())));
        } else if (asking.prompt() instanceof MissingFactor hidden) {
            lines.add(words.say("drill.putright.factor", hidden.expected()));
        } else {
            lines.add(words.say(asking.reason() == Reason.SHOWN ? "drill.shown" : "drill.putright"));
        }
        return lines;
    }

    private static String meetingLine(Question question) {
        if (question.operation() == Operation.DIVIDE) {
            return "drill.undone";
        }
        return question.left() > question.right() ? "drill.turned" : "drill.look";
    }
}
