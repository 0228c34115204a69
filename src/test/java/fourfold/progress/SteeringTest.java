// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Player;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ActionRecord;
import fourfold.log.ParentAction;
import fourfold.scheduling.LastingGain;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Guards against an action that is lost, doubled or cannot be taken back. */
class SteeringTest {
    private static final Instant START = Instant.parse("2026-03-02T08:00:00Z");
    private static final Family SIX_SEVEN = Family.of(6, 7);

    private final List<ActionRecord> acts = new ArrayList<>();

    private UUID then(ParentAction action) {
        UUID id = new UUID(9, acts.size() + 1L);
        acts.add(new ActionRecord(id, new UUID(1, 1), START.plusSeconds(acts.size()), 0, action));
        return id;
    }

    @Test
    void focusAndHoldShutEachOtherOut() {
        then(new ParentAction.Focus(SIX_SEVEN));
        assertEquals(Set.of(SIX_SEVEN), Steering.of(acts).focused());
        then(new ParentAction.Hold(SIX_SEVEN));
        assertEquals(Set.of(), Steering.of(acts).focused());
        assertEquals(Set.of(SIX_SEVEN), Steering.of(acts).held());
        then(new ParentAction.Release(SIX_SEVEN));
        assertEquals(Steering.NONE, Steering.of(acts));
    }

    @Test
    void anUndoneActNeverWasAndUndoingTheUndoBringsItBack() {
        UUID focus = then(new ParentAction.Focus(SIX_SEVEN));
        UUID undo = then(new ParentAction.Undo(focus));
        assertEquals(Steering.NONE, Steering.of(acts));
        then(new ParentAction.Undo(undo));
        assertEquals(Set.of(SIX_SEVEN), Steering.of(acts).focused());
    }

    @Test
    void actsAreReadInTheOrderOfTheirTimesWhateverOrderTheyComeIn() {
        then(new ParentAction.Focus(SIX_SEVEN));
        then(new ParentAction.Hold(SIX_SEVEN));
        List<ActionRecord> backwards = new ArrayList<>(acts);
        Collections.reverse(backwards);
        assertEquals(Steering.of(acts), Steering.of(backwards));
    }

    @Test
    void aTableOpenedByHandComesFirstAndAClosedOneBringsNothing() {
        then(new ParentAction.OpenTable(7));
        assertTrue(Steering.of(acts).introductionOrder().get(0).contains(7));
        then(new ParentAction.CloseTable(7));
        List<Family> order = Steering.of(acts).introductionOrder();
        assertFalse(order.contains(Family.of(7, 7)), "only the table of 7 would bring 7 x 7");
        assertTrue(order.contains(Family.of(2, 7)), "the table of 2 brings 2 x 7");
        assertEquals(54, order.size());
    }

    @Test
    void everyOrderIntroducesEachFamilyOnce() {
        then(new ParentAction.Order(Families.EASY_FIRST));
        assertEquals(55, Set.copyOf(Steering.of(acts).introductionOrder()).size());
    }

    @Test
    void aSettingOutsideItsLimitsCountsAsNotChosen() {
        assertEquals(Settings.USUAL, Settings.of(Map.of("minutes", "90", "quick", "soon", "unknown", "1")));
        then(new ParentAction.Choose("minutes", "6"));
        then(new ParentAction.Choose("quick", "5"));
        Settings settings = Steering.of(acts).settings();
        assertEquals(6, settings.minutes());
        assertEquals(Duration.ofSeconds(5), settings.quick());
        assertThrows(IllegalArgumentException.class, () -> Settings.USUAL.with("minutes", "11"));
    }

    @Test
    void aResetLeavesEarlierAnswersOutOfTheLevelAndItsUndoBringsThemBack() {
        Player player = new Player(new LastingGain(), Progress.blank(Steering.NONE), START.minus(Duration.ofDays(3)));
        player.drill(5, 1, (prompt, purpose, position) -> new Player.Reply(Integer.toString(prompt.expected()), 1000));
        Family met = Families.all().stream()
                .filter(f -> Progress.of(List.of(), player.log()).isMet(f))
                .findFirst()
                .orElseThrow();
        UUID reset = then(new ParentAction.Reset(met));
        assertEquals(Mastery.NEW, Progress.of(acts, player.log()).level(met));
        then(new ParentAction.Undo(reset));
        assertEquals(Mastery.ACQUIRING, Progress.of(acts, player.log()).level(met));
    }

    @ParameterizedTest
    @CsvSource({
        "'', 8, 3, 20, 2, 4, false, true, false, false",
        "minutes=5, 5, 3, 20, 2, 4, false, true, false, false",
        "quick=2, 8, 2, 20, 2, 4, false, true, false, false",
        "calm=60, 8, 3, 60, 2, 4, false, true, false, false",
        "new=0, 8, 3, 20, 0, 4, false, true, false, false",
        "days=7, 8, 3, 20, 2, 7, false, true, false, false",
        "timing=minute, 8, 3, 20, 2, 4, true, true, false, false",
        "pictures=no, 8, 3, 20, 2, 4, false, false, false, false",
        "divisions=later, 8, 3, 20, 2, 4, false, true, true, false",
        "missing=yes, 8, 3, 20, 2, 4, false, true, false, true"
    })
    void oneChoiceChangesOneSettingAndTheRestIsAsUsual(
            String choice,
            int minutes,
            int quick,
            int calm,
            int newInDrill,
            int days,
            boolean timings,
            boolean pictures,
            boolean divisionsLater,
            boolean missingFactors) {
        if (!choice.isEmpty()) {
            String[] chosen = choice.split("=");
            then(new ParentAction.Choose(chosen[0], chosen[1]));
        }
        Settings settings = Steering.of(acts).settings();
        assertEquals(minutes, settings.minutes());
        assertEquals(Duration.ofSeconds(quick), settings.quick());
        assertEquals(Duration.ofSeconds(calm), settings.calm());
        assertEquals(newInDrill, settings.newInDrill());
        assertEquals(days, settings.days());
        assertEquals(timings, settings.timings());
        assertEquals(pictures, settings.pictures());
        assertEquals(divisionsLater, settings.divisionsLater());
        assertEquals(missingFactors, settings.missingFactors());
    }

    @Test
    void whatIsHeldIsNotIntroducedAndWhatTwoClosedTablesWouldBringIsNotEither() {
        then(new ParentAction.Hold(SIX_SEVEN));
        assertFalse(Steering.of(acts).introductionOrder().contains(SIX_SEVEN));
        assertEquals(54, Steering.of(acts).introductionOrder().size());
        then(new ParentAction.Release(SIX_SEVEN));
        then(new ParentAction.CloseTable(6));
        assertTrue(Steering.of(acts).introductionOrder().contains(SIX_SEVEN));
        then(new ParentAction.CloseTable(7));
        assertFalse(Steering.of(acts).introductionOrder().contains(SIX_SEVEN));
        assertEquals(52, Steering.of(acts).introductionOrder().size());
    }
}
