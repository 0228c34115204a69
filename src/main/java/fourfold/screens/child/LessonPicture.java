// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Phase.Asking;
import fourfold.drill.Phase.Meeting;
import fourfold.drill.Phase.Reason;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.progress.Hint;
import fourfold.progress.WrongAnswer;
import fourfold.screens.FactPicture;
import fourfold.screens.SquareOfFour;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.MixupWords;
import fourfold.words.Words;
import java.util.List;
import java.util.Optional;

/** Where something is taught: a new family with its growing picture, and a fact in view that is typed once. */
final class LessonPicture {
    private final Words words;

    LessonPicture(Words words) {
        this.words = words;
    }

    /**
     * A family's picture and facts.
     *
     * @param ready the name of the key that goes on
     */
    void meeting(Picture picture, Meeting meeting, String ready) {
        Family family = meeting.family();
        int last = picture.height() - 2;
        int top = picture.height() >= 22 ? 1 : 0;
        int square = SquareOfFour.rows(words, meeting.facts()).size();
        int y = top + 2 + square + 1;
        int room = last - y - 3;
        picture.centred(top, words.say("meet.title", family.low(), family.high(), family.product()), Ink.STRONG);
        SquareOfFour.draw(picture, top + 2, words, meeting.facts());
        meeting.depiction()
                .map(d -> FactPicture.of(d, family, meeting.grown()).fitted(picture.width() - 4, room))
                .ifPresent(drawn -> {
                    picture.centred(y, drawn.words(words), Ink.PLAIN);
                    block(picture, y + 1, room, drawn);
                });
        if (meeting.isWhole()) {
            meeting.hint().ifPresent(h -> picture.centred(last - 2, way(h), Ink.STRONG));
        }
        picture.centred(last - 1, words.say(meeting.isWhole() ? "meet.whole" : "meet.more", ready), Ink.PLAIN);
    }

    /** Draws a picture so that it stays where it is while it grows. */
    private static void block(Picture picture, int y, int room, FactPicture drawn) {
        List<String> rows = drawn.rows(picture.width() - 4, room);
        int widest = drawn.whole().rows(picture.width() - 4, Integer.MAX_VALUE).stream()
                .mapToInt(Picture::columns)
                .max()
                .orElse(0);
        int x = Math.max(0, (picture.width() - widest) / 2);
        for (int i = 0; i < rows.size(); i++) {
            picture.text(x, y + i, rows.get(i), Ink.STEP_4);
        }
    }

    /** The child's own answer where it was typed, the right fact beneath it to be typed over, and why in one line. */
    void inView(Picture picture, Shelves shelves, Asking asking) {
        Question question = asking.question().orElseThrow();
        String own = asking.help()
                .mixup()
                .map(WrongAnswer::typed)
                .map(String::valueOf)
                .orElse("");
        picture.centred(shelves.told(), told(asking), Ink.PLAIN);
        shelves.ask(asking.prompt(), own, Ink.QUIET, Ink.QUIET);
        shelves.right(asking.prompt(), asking.typed());
        picture.centred(shelves.sentence(), why(asking), Ink.PLAIN);
        Optional<FactPicture> drawn = asking.help()
                .depiction()
                .map(d -> FactPicture.of(d, question).fitted(picture.width() - 4, shelves.roomRows()))
                .filter(d -> !d.rows(picture.width() - 4, shelves.roomRows()).isEmpty());
        if (drawn.isEmpty()) {
            List<Prompt> facts = asking.help().facts();
            if (shelves.roomRows() >= 3 && !facts.isEmpty()) {
                SquareOfFour.draw(picture, shelves.room(), words, facts);
            }
            return;
        }
        picture.centred(shelves.room() - 1, drawn.get().words(words), Ink.QUIET);
        block(picture, shelves.room(), shelves.roomRows(), drawn.get());
        int free = shelves.room()
                + drawn.get().rows(picture.width() - 4, shelves.roomRows()).size();
        if (free < picture.height() - 2) {
            asking.help().hint().ifPresent(h -> picture.centred(free, way(h), Ink.QUIET));
        }
    }

    private String way(Hint hint) {
        return words.hint(hint, question -> words.fact(question.fact()));
    }

    private String told(Asking asking) {
        if (asking.tries() > 0) {
            return words.say("drill.once.more");
        }
        if (asking.prompt() instanceof MissingFactor hidden) {
            return words.say("drill.putright.factor", hidden.expected());
        }
        return words.say(asking.reason() == Reason.SHOWN ? "drill.shown" : "drill.putright");
    }

    private String why(Asking asking) {
        return asking.reason() == Reason.SHOWN
                ? words.say("drill.shown.why")
                : asking.help()
                        .mixup()
                        .map(m -> MixupWords.told(words, m, q -> asked(asking.prompt(), q)))
                        .orElse("");
    }

    /** A question in the form in which the child was asked it. */
    private String asked(Prompt prompt, Question question) {
        boolean hidden =
                prompt instanceof MissingFactor factor && factor.quotient().equals(question);
        return hidden ? words.shown(prompt) : words.asked(question);
    }
}
