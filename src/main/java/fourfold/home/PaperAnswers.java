package fourfold.home;

import fourfold.facts.Question;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.RecordsFailure;
import fourfold.log.Surface;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** Enters what a child answered on a printed page. Every method may fail with {@link RecordsFailure}. */
public final class PaperAnswers {
    private static final int MINUTES = 5;

    private final Practice practice;
    private final PrintPages pages;

    PaperAnswers(Practice practice, PrintPages pages) {
        this.practice = practice;
        this.pages = pages;
    }

    /** The questions of the page that was last printed for a child and not yet entered; none if there is no such page. */
    public List<Question> open(Child child) {
        return pages.remembered(child);
    }

    /**
     * Keeps all of them as answers of one drill, without times: a page has no clock.
     *
     * @param wrong which of the questions were answered wrongly
     * @return false, and nothing is kept, while the child practises in another window
     */
    public boolean enter(Child child, List<Question> questions, BitSet wrong, Instant at) {
        Optional<DrillSession> free = practice.newSession(child, MINUTES, at);
        if (free.isEmpty()) {
            return false;
        }
        DrillSession session = free.get();
        practice.begin(session);
        for (int i = 0; i < questions.size(); i++) {
            Question question = questions.get(i);
            practice.keep(new Answer(
                    Answer.Place.in(session, i + 1),
                    new Moment(at.truncatedTo(ChronoUnit.MILLIS), session.zoneOffsetMinutes()),
                    Purpose.PAPER,
                    question,
                    new Answer.Typing(wrong.get(i) ? "" : Integer.toString(question.expected()), Answer.Times.NONE, 0),
                    Surface.TERMINAL));
        }
        practice.ended(session, at);
        pages.remember(child, List.of());
        return true;
    }
}
