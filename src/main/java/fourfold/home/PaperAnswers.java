// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.facts.Prompt;
import fourfold.insight.PageKind;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.RecordsFailure;
import fourfold.log.Surface;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/**
 * Enters what a child answered away from the keys: on a printed page, or aloud. Only what was marked is kept. Every method
 * may fail with {@link RecordsFailure}.
 */
public final class PaperAnswers {
    private static final int MINUTES = 5;
    private static final int MOST_MINUTES = 30;

    private final Store store;
    private final SessionClock moments;
    private final Practice practice;
    private final PageRegister register;

    PaperAnswers(Store store, SessionClock moments, Practice practice, PageRegister register) {
        this.store = store;
        this.moments = moments;
        this.practice = practice;
        this.register = register;
    }

    /** The child's pages that wait to be entered and those that were, the newest first. */
    public List<NumberedPage> pages(Child child) {
        return register.pages(child);
    }

    /**
     * What was marked on a page.
     *
     * @param marks one for each of its questions, in order
     * @param day on which it was done
     * @param time of the whole page, if somebody looked at a clock
     */
    public record Filled(List<Mark> marks, LocalDate day, Optional<Duration> time) {
        public Filled {
            marks = List.copyOf(marks);
        }

        /** How many questions were done. */
        public int done() {
            return (int) marks.stream().filter(m -> m != Mark.OPEN).count();
        }

        /** How many were right. */
        public int right() {
            return (int) marks.stream()
                    .filter(m -> m == Mark.RIGHT || m == Mark.SLOW)
                    .count();
        }
    }

    /**
     * Keeps what was marked on a page as the answers of one drill; nothing marked keeps nothing. Cards were said aloud,
     * other pages written.
     *
     * @return the page as it is now; empty, and nothing is kept, while the child practises in another window
     */
    public Optional<NumberedPage> enter(Child child, NumberedPage page, Filled filled, Instant now) {
        if (filled.done() == 0) {
            return Optional.of(page);
        }
        Instant at = filled.day().equals(LocalDate.ofInstant(now, moments.zone()))
                ? now
                : filled.day().atTime(LocalTime.NOON).atZone(moments.zone()).toInstant();
        boolean aloud = page.kind() == PageKind.CARDS;
        Optional<UUID> drill = aloud
                ? keepAloud(child, page.prompts(), filled.marks(), at)
                : keepPaper(child, page.prompts(), filled, at);
        return drill.map(id -> {
            NumberedPage entered = page.enteredAs(List.of(id));
            register.keep(child, entered);
            return entered;
        });
    }

    private Optional<UUID> keepPaper(Child child, List<Prompt> prompts, Filled filled, Instant at) {
        Optional<Duration> share = filled.time().map(t -> t.dividedBy(filled.done()));
        long minutes = filled.time().map(t -> t.plusSeconds(59).toMinutes()).orElse((long) MINUTES);
        Answer.Times times = new Answer.Times(Optional.empty(), share);
        return keep(
                child,
                prompts,
                filled.marks(),
                at,
                new Given(
                        Purpose.PAPER, Surface.PAPER, (int) Math.max(1, Math.min(MOST_MINUTES, minutes)), m -> times));
    }

    /**
     * Keeps what a child said aloud as the answers of one drill; nothing marked keeps nothing.
     *
     * @return the drill; empty, and nothing is kept, while the child practises in another window
     */
    public Optional<UUID> keepAloud(Child child, List<Prompt> prompts, List<Mark> marks, Instant at) {
        return keep(child, prompts, marks, at, new Given(Purpose.ALOUD, Surface.ALOUD, MINUTES, PaperAnswers::heard));
    }

    private static Answer.Times heard(Mark mark) {
        return switch (mark) {
            case RIGHT -> Answer.Times.heard(Answer.Pace.QUICK);
            case SLOW -> Answer.Times.heard(Answer.Pace.SLOW);
            default -> Answer.Times.NONE;
        };
    }

    /** How answers were given, in how many minutes, and what is known of their times. */
    private record Given(Purpose purpose, Surface surface, int minutes, Function<Mark, Answer.Times> times) {}

    private Optional<UUID> keep(Child child, List<Prompt> prompts, List<Mark> marks, Instant at, Given given) {
        Optional<DrillSession> free = practice.newSession(child, given.minutes(), at);
        if (free.isEmpty()) {
            return Optional.empty();
        }
        DrillSession session = free.get();
        List<Answer> answers = new ArrayList<>();
        for (int i = 0; i < prompts.size(); i++) {
            Mark mark = marks.get(i);
            if (mark != Mark.OPEN) {
                String digits = mark == Mark.WRONG
                        ? ""
                        : Integer.toString(prompts.get(i).expected());
                answers.add(new Answer(
                        Answer.Place.in(session, answers.size() + 1),
                        new Moment(at.truncatedTo(ChronoUnit.MILLIS), session.zoneOffsetMinutes()),
                        given.purpose(),
                        prompts.get(i),
                        new Answer.Typing(digits, given.times().apply(mark), 0),
                        given.surface()));
            }
        }
        store.keepAll(List.of(session), answers);
        practice.ended(session, at);
        return Optional.of(session.id());
    }

    /**
     * Takes back what was entered of a page: its drill is removed for good, here and wherever this file is merged, and the
     * page waits again. Of a page that was entered twice one drill is taken back at a time, the other computer's first.
     */
    public NumberedPage takeBack(Child child, NumberedPage page, Instant at) {
        int last = page.entered().size() - 1;
        if (last < 0) {
            return page;
        }
        takeBack(page.entered().get(last), at);
        NumberedPage left = page.enteredAs(page.entered().subList(0, last));
        register.keep(child, left);
        return left;
    }

    /** Takes back what was just kept of a child who answered aloud. */
    public void takeBack(UUID drill, Instant at) {
        store.removeDrill(drill, at);
    }
}
