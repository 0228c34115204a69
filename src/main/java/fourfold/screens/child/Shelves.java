// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.facts.MissingFactor;
import fourfold.facts.NumberToCopy;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.screens.TallDigits;
import fourfold.terminal.Ink;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.List;

/**
 * The fixed places of a drill on a sheet of one size: a shelf for the question with what is typed behind it, a shelf
 * beneath for the right fact in the same columns, a line for what is said, and room for a picture. Whatever comes, nothing
 * moves from its place and nothing changes its size. All rows count from the top.
 */
final class Shelves {
    /** Places kept free for what is typed behind a question. */
    private static final int TYPED = 2;

    /** The widest answer that must fit behind the longest question. */
    private static final int WIDEST_ANSWER = 3;

    /** As tall as the tallest array. */
    private static final int TALLEST_PICTURE = 10;

    private final Picture picture;
    private final Words words;
    private final TallDigits tall;
    private final int told;
    private final int question;
    private final int sentence;

    Shelves(Picture picture, Words words) {
        this.picture = picture;
        this.words = words;
        tall = TallDigits.on(picture);
        int spare = Math.max(0, picture.height() - 5 - fixed() - 5);
        int above = Math.max(0, (spare - (TALLEST_PICTURE - 5)) / 3);
        told = picture.height() >= 18 ? 1 + above : 0;
        question = told + 1 + Math.min(1, spare);
        sentence = question + 2 * (tall.height() + 1) + Math.min(2, above);
    }

    /** Both shelves, each with the line on which it rests. */
    private int fixed() {
        return 2 * (tall.height() + 1);
    }

    /** The row of what is said above the question. */
    int told() {
        return told;
    }

    /** The row of what is said beneath the shelves. */
    int sentence() {
        return sentence;
    }

    /** The first row for a picture. */
    int room() {
        return sentence + 2;
    }

    /** How many rows there are for it. */
    int roomRows() {
        return Math.max(0, picture.height() - 2 - room());
    }

    /** The first row of the upper shelf. */
    int top() {
        return question;
    }

    private int lower() {
        return question + tall.height() + 1;
    }

    /** The question with what is typed behind it, or a number with what is typed beneath it. */
    void ask(Prompt prompt, String typed, Ink digits, Ink answer) {
        write(question, prompt, typed, digits, answer);
        rule(prompt, prompt instanceof NumberToCopy ? lower() : question);
    }

    /** The right fact on the lower shelf: its answer to be typed over, or as far as it is typed. */
    void right(Prompt prompt, String typed) {
        String shown = typed.isEmpty() ? Integer.toString(prompt.expected()) : typed;
        write(lower(), prompt, shown, Ink.PLAIN, typed.isEmpty() ? Ink.QUIET : Ink.STRONG);
        rule(prompt, lower());
    }

    /** The line on which an answer rests. */
    private void rule(Prompt prompt, int shelf) {
        picture.text(answerAt(prompt), shelf + tall.height(), "─".repeat(tall.width(TYPED)), Ink.QUIET);
    }

    private void write(int y, Prompt prompt, String typed, Ink digits, Ink answer) {
        int left = left(prompt);
        if (prompt instanceof NumberToCopy) {
            draw(left, y, Integer.toString(prompt.expected()), digits);
            draw(left, lower(), typed, answer);
            return;
        }
        String before = before(prompt);
        draw(left, y, before, digits);
        if (prompt instanceof MissingFactor hidden) {
            String inside = typed.isEmpty() ? "?" : typed;
            draw(answerAt(prompt) + inset(inside), y, inside, answer);
            int after = before.length() + Math.max(TYPED, inside.length());
            draw(left + tall.step() * after, y, "=" + hidden.product(), digits);
        } else {
            draw(answerAt(prompt), y, typed, answer);
        }
    }

    /** A single sign stands in the middle of a place that other signs follow, or there would be a hole before them. */
    private int inset(String inside) {
        return inside.length() < TYPED ? tall.step() * (TYPED - inside.length()) / 2 : 0;
    }

    /** As many signs as fit whole. */
    private void draw(int x, int y, String text, Ink ink) {
        int fitting = text.length();
        while (fitting > 0 && x + tall.width(fitting) > picture.width()) {
            fitting--;
        }
        List<String> rows = tall.rows(text.substring(0, fitting), picture);
        for (int i = 0; i < rows.size(); i++) {
            picture.text(x, y + i, rows.get(i), ink);
        }
    }

    /** Where what is typed begins. */
    private int answerAt(Prompt prompt) {
        return left(prompt)
                + tall.step()
                        * (prompt instanceof NumberToCopy ? 0 : before(prompt).length());
    }

    /** What stands before the place of the answer. */
    private String before(Prompt prompt) {
        if (prompt instanceof MissingFactor hidden) {
            return hidden.known() + "" + words.sign(Operation.MULTIPLY);
        }
        Question question = (Question) prompt;
        return question.left() + "" + words.sign(question.operation()) + question.right() + "=";
    }

    /** The first column: question and answer stand in the middle, and the widest answer still fits. */
    private int left(Prompt prompt) {
        if (prompt instanceof NumberToCopy) {
            return (picture.width() - tall.width(TYPED)) / 2;
        }
        int places = before(prompt).length() + TYPED;
        if (prompt instanceof MissingFactor hidden) {
            places += 1 + Integer.toString(hidden.product()).length();
            return Math.max(0, (picture.width() - tall.width(places)) / 2);
        }
        int middle = (picture.width() - tall.width(places)) / 2;
        return Math.max(0, Math.min(middle, picture.width() - 1 - tall.width(places + WIDEST_ANSWER - TYPED)));
    }
}
