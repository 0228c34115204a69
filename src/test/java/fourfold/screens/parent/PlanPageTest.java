// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.insight.Weeks;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.outlook.Basis;
import fourfold.outlook.PracticeDays;
import fourfold.outlook.YearAhead;
import fourfold.progress.Progress;
import fourfold.scheduling.LastingGain;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.TwoStrengthKind;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

/** Guards against a plan that keeps keys waiting, goes on after it was closed, or never says what it came to. */
class PlanPageTest {
    private static final Instant NOW = Instant.parse("2025-10-01T10:00:00Z");

    private static PlanPage page(int weeks) {
        List<Answer> answers = new ArrayList<>();
        new SchoolYear(new TwoStrengthKind().create(3), new LastingGain(), 3, answers::add).run(weeks);
        long today = NOW.getEpochSecond() / 86_400;
        YearAhead ahead = YearAhead.of(new Basis(
                new UUID(1, 1), List.of(), answers, today, today + 1, Map.of(today, PracticeDays.aWeek(3)), 1));
        Progress progress = Progress.of(List.of(), answers);
        return PlanPage.of(
                Words.english(), new Child(new UUID(1, 1), "Mina", NOW), progress, new Weeks(List.of(), 3), ahead);
    }

    private static String drawn(Page page) {
        Picture picture = new Picture(80, 40, true);
        page.draw(picture);
        return picture.toString().replaceAll("\\s+", " ");
    }

    /** The page when it has no further step to ask for; more than a hundred would be no end. */
    private static WorkedOut workedOut(Page page) {
        PageResult result = page.on(new PageEvent.Opened(NOW));
        int steps = 0;
        while (!result.effects().isEmpty()) {
            assertTrue(steps < 100, "it never ends");
            PageEffect.Calculation next = result.effects().stream()
                    .filter(PageEffect.Calculation.class::isInstance)
                    .map(PageEffect.Calculation.class::cast)
                    .findFirst()
                    .orElseThrow();
            assertFalse(next.holdsKeys());
            result = result.next().on(new PageEvent.Done(next.result(), NOW));
            steps++;
        }
        return new WorkedOut(result.next(), steps);
    }

    private record WorkedOut(Page page, int steps) {}

    @Test
    void itEndsThoughTheLastChangeThatIsTriedHelpsAndTheRestNeedNoTrial() {
        for (int weeks = 3; weeks <= 5; weeks++) {
            assertFalse(drawn(workedOut(page(weeks)).page()).contains("Working out"));
        }
    }

    @Test
    void itIsWorkedOutStepByStepBesideTheKeysUntilItIsSaid() {
        Page page = page(2);
        assertTrue(drawn(page).contains("Working out when all 55 families may be fluent."), drawn(page));
        WorkedOut worked = workedOut(page);
        int steps = worked.steps();
        page = worked.page();
        // As things are, four to six days a week, a focus, one to four tables fewer: each played once and begun once.
        assertEquals(17, steps);
        assertTrue(drawn(page).contains("not within this school year"), drawn(page));
        assertTrue(drawn(page).contains("Neither more days, nor a focus, nor fewer tables"), drawn(page));
        assertTrue(drawn(page).contains("not a promise and not a grade"), drawn(page));
    }
}
