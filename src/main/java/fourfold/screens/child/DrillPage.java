// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Drill;
import fourfold.drill.Phase;
import fourfold.log.Child;
import fourfold.terminal.Ink;
import fourfold.terminal.Page;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.WaitSign;
import fourfold.words.Words;
import java.time.Instant;
import java.util.Optional;

/**
 * The drill on the screen. Every event goes to the drill; what it says must be kept is kept first, on the file's thread,
 * and only then does the new state count and is drawn. Until then the old picture stands and keys belong to no question.
 * When the disk does not take it the child is told, and may go on: a quiet mark then shows how many answers are only in
 * memory, and at the end a grown-up is told whether they are lost.
 *
 * @param drill the drill as far as it counts
 * @param waiting the drill that counts once all is kept
 * @param pauseMeant when a pause was asked for meanwhile
 * @param counted since when the drill counts as it is
 * @param file what is known of the file
 * @param sign what is shown while the file is waited for
 * @param ending the picture of the drill's end
 * @param advice what a grown-up should know; empty for nothing
 * @param note why the last key did nothing; empty if it did something
 */
public record DrillPage(
        Words words,
        Child child,
        Drill drill,
        Optional<Drill> waiting,
        Optional<Instant> pauseMeant,
        Instant counted,
        Mood mood,
        DrillFile file,
        WaitSign sign,
        SummaryPicture ending,
        String advice,
        String note)
        implements Page {
    /** What the page is about. */
    enum Mood {
        /** The child is greeted; Enter begins. */
        GREETING,
        /** The child practises, or sees the end. */
        PRACTISING,
        /** The disk did not take it, and the child is asked what to do. */
        REFUSED,
        /** The page closes when all is done. */
        LEAVING
    }

    /** A drill that is ready; it begins when the page is opened. */
    public DrillPage(Words words, Child child, Drill ready, Instant at) {
        this(
                words,
                child,
                ready,
                Optional.empty(),
                Optional.empty(),
                at,
                Mood.PRACTISING,
                DrillFile.FRESH,
                new WaitSign(words.say("drill.moment")),
                SummaryPicture.without(words, child, ready.progress()),
                "",
                "");
    }

    /** The same with a greeting before it, which says how to answer: it begins with Enter. */
    public DrillPage greeting() {
        return new DrillPage(
                words, child, drill, waiting, pauseMeant, counted, Mood.GREETING, file, sign, ending, advice, note);
    }

    @Override
    public void draw(Picture picture) {
        DrillPicture drawing =
                new DrillPicture(child, words, drill.progress().steering().settings());
        if (mood == Mood.REFUSED) {
            drawing.notKept(picture, reason());
        } else if (drill.isFinished() && file.isBehind()) {
            drawing.notKeptAtTheEnd(picture, file.answersBehind(), reason());
        } else {
            if (drill.phase() instanceof Phase.Finished finished) {
                ending.draw(picture, finished.summary());
            } else {
                drawing.draw(picture, drill);
            }
            drawing.mark(picture, file.answersBehind(), advice);
        }
        picture.centred(picture.height() - 2, sign.shown().isEmpty() ? note : sign.shown(), Ink.PLAIN);
    }

    /** Why the disk did not take it, in one line. */
    private String reason() {
        return file.state().failure().map(words::failure).orElse("");
    }

    @Override
    public PageResult on(PageEvent event) {
        return DrillTurn.of(this, event);
    }
}
