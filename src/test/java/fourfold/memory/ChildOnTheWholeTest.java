// SPDX-License-Identifier: Apache-2.0
package fourfold.memory;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Question;
import fourfold.facts.Trace;
import fourfold.log.Answer;
import fourfold.log.Moment;
import fourfold.log.Purpose;
import fourfold.log.Surface;
import java.time.Duration;
import java.time.Instant;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against a wrong picture of the child as a whole: second tries, what is known already, hands, what is due. */
class ChildOnTheWholeTest {
    private static final Parameters USUAL = Parameters.usual();
    private static final MotorTime HANDS = MotorTime.unknown();
    private static final Question ASKED = Question.product(7, 8);

    private static Memory with(Memory memory, Question question, Purpose purpose, Instant at, boolean right, double s) {
        String typed = Integer.toString(question.expected() + (right ? 0 : 1));
        return memory.after(Given.answer(question, at, typed, s, purpose), HANDS);
    }

    /** Each outcome moves the share by a twentieth of the way, from 0.8; only within the hour and after an error. */
    @ParameterizedTest
    @CsvSource({
        "false, AGAIN, true, 60, 0.81",
        "false, AGAIN, false, 60, 0.76",
        "false, AGAIN, false, 3599, 0.76",
        "false, AGAIN, false, 3600, 0.8",
        "true, AGAIN, false, 60, 0.8",
        "false, PRACTISE, false, 60, 0.8"
    })
    void onlyASecondTryAfterAnErrorTellsHowSecondTriesGo(
            boolean first, Purpose purpose, boolean second, int gap, double share) {
        Memory memory = with(Memory.blank(USUAL), ASKED, Purpose.PRACTISE, Given.START, first, 1);
        assertEquals(0.8, memory.chanceRightAgain(), 1e-12);
        memory = with(memory, ASKED, purpose, Given.START.plusSeconds(gap), second, 1);
        assertEquals(share, memory.chanceRightAgain(), 1e-12);
    }

    /** What was never met is forecast as what is known of the child untaught: one probe moves all families' chances. */
    @ParameterizedTest
    @ValueSource(booleans = {true, false})
    void whatWasNeverMetIsKnownAsProbesSay(boolean right) {
        Memory blank = Memory.blank(USUAL);
        Memory memory = with(blank, ASKED, Purpose.PROBE, Given.START, right, 1);
        Family other = Family.of(3, 4);
        Instant later = Given.START.plusSeconds(60);
        double chance = memory.forecast(Trace.product(other), later).chanceRightWithin(Duration.ofSeconds(3));
        assertEquals(memory.chanceKnown(other), chance, 1e-12);
        assertEquals(right, chance > blank.chanceKnown(other));
    }

    /** Slow hands leave less of the three seconds to think in, and half of them at least. */
    @ParameterizedTest
    @CsvSource({"600, 2.4", "1000, 2.0", "1400, 1.6", "2500, 1.5"})
    void theHandsHaveTheirTimeAndHalfTheLimitIsLeftForThinking(long firstKey, double seconds) {
        MotorTime hands = HANDS;
        for (int i = 0; i < 6; i++) {
            hands = hands.after(Given.copy(42, Given.START.plusSeconds(i), firstKey, firstKey + 400));
        }
        Memory memory = Memory.blank(USUAL).after(Given.right(ASKED, Given.START.plusSeconds(60), 0.5), hands);
        Instant later = Given.START.plus(Duration.ofDays(3));
        assertEquals(
                memory.forecast(ASKED.trace(), later).chanceRightWithin(seconds),
                memory.chanceQuick(ASKED.traceIndex(), later.toEpochMilli()),
                1e-9);
    }

    @Test
    void whatWasWrittenOnPaperSaysNothingOfTheHands() {
        MotorTime slow = HANDS;
        for (int i = 0; i < 6; i++) {
            slow = slow.after(Given.copy(42, Given.START.plusSeconds(i), 1_400, 2_000));
        }
        Memory typed = Memory.blank(USUAL).after(Given.right(ASKED, Given.START.plusSeconds(60), 0.5), HANDS);
        Answer here = Given.right(ASKED, Given.START.plusSeconds(120), 0.5);
        Answer paper = new Answer(
                new Answer.Place(here.child(), here.drill(), 2),
                new Moment(here.askedAt(), 0),
                Purpose.PAPER,
                ASKED,
                new Answer.Typing("56", new Answer.Times(java.util.Optional.empty(), java.util.Optional.empty()), 0),
                Surface.TERMINAL);
        Instant later = Given.START.plus(Duration.ofDays(3));
        Memory after = typed.after(paper, slow);
        double enough = 3 - HANDS.firstKey(56, Surface.TERMINAL).toMillis() / 1000.0;
        assertEquals(
                after.forecast(ASKED.trace(), later).chanceRightWithin(enough),
                after.chanceQuick(ASKED.traceIndex(), later.toEpochMilli()),
                1e-9);
    }

    private static Memory random(long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        Memory.Fold fold = Memory.blank(USUAL).fold();
        Instant at = Given.START;
        for (int i = 0; i < 150; i++) {
            at = at.plusSeconds(i % 20 == 19 ? 90_000 : dice.nextInt(3, 12));
            Question question = Families.questions().get(dice.nextInt(200));
            double thinking = 0.4 + dice.nextDouble() * 4;
            fold.take(
                    dice.nextInt(4) == 0 ? Given.wrong(question, at, thinking) : Given.right(question, at, thinking),
                    HANDS);
        }
        return fold.memory();
    }

    /** A hidden factor asks the same division in another form: 7 × ? = 56 for 56 ÷ 7. */
    @Test
    void aDivisionAskedAsAProductWithAHiddenFactorIsRememberedAsTheDivision() {
        Question quotient = Question.quotient(new Family(7, 8), 7);
        Instant later = Given.START.plus(Duration.ofDays(3));
        Memory nothing = Memory.blank(USUAL);
        Memory plain = nothing.after(Given.right(quotient, Given.START, 1.2), HANDS);
        Duration first = HANDS.firstKey(8, Surface.TERMINAL).plusMillis(1200);
        Duration whole = HANDS.whole(8, Surface.TERMINAL).plusMillis(1200);
        Memory hidden = nothing.after(
                Given.timed(new MissingFactor(quotient), Given.START, "8", Purpose.PRACTISE, first, whole), HANDS);
        double forecast = plain.forecast(quotient.trace(), later).activation();
        assertEquals(forecast, hidden.forecast(quotient.trace(), later).activation(), 0);
        assertTrue(forecast > nothing.forecast(quotient.trace(), later).activation() + 1);
    }

    @Property(tries = 20)
    void oneByOneOrAllAtOnceTheForecastsAreTheSame(@ForAll long seed) {
        Memory memory = random(seed);
        long later = Given.START.plus(Duration.ofDays(12)).toEpochMilli();
        double[] all = memory.activations(later);
        double[] chances = memory.chancesQuick(later);
        Memory.Fold fold = memory.fold();
        for (Trace trace : Families.traces()) {
            int i = trace.index();
            Forecast forecast = memory.forecast(trace, Instant.ofEpochMilli(later));
            assertEquals(forecast.activation(), all[i], 1e-12);
            assertEquals(forecast.activation(), memory.activation(i, later), 0);
            assertEquals(memory.chanceQuick(i, later), fold.chance(i, later), 0);
            assertEquals(memory.chanceQuick(i, later), chances[i], 1e-12);
            assertEquals(
                    memory.forecastAfterPractice(i, later, later + 1_000_000).activation(),
                    memory.activationAfterPractice(i, later, later + 1_000_000),
                    0);
        }
    }

    /** The chance of one who is neither slower nor surer than others, by the equations. */
    @Property(tries = 100)
    void theActivationForAChanceHasThatChanceOnAFactLikeMostOthers(
            @ForAll @DoubleRange(min = 0.4, max = 0.95) double chance) {
        double activation = Memory.blank(USUAL).activationFor(chance);
        double enough = 3 - HANDS.firstKey(56, Surface.TERMINAL).toMillis() / 1000.0;
        double plain = new Recall(enough, Speed.usual(USUAL).ordinary(), USUAL).chance(activation);
        assertEquals(chance, Correction.usual().chance(plain, 1, Offset.unknown(0)), 0.003);
    }

    @Test
    void noChanceIsSoLowOrSoHighThatTheActivationLeavesItsEnds() {
        assertEquals(-8, Memory.blank(USUAL).activationFor(1e-9), 0.002);
        assertEquals(4, Memory.blank(USUAL).activationFor(1 - 1e-9), 0.002);
    }

    @Test
    void whatWasLastAskedWhenIsTold() {
        Memory memory = Memory.blank(USUAL).after(Given.right(ASKED, Given.START, 1), HANDS);
        assertEquals(Given.START.toEpochMilli(), memory.lastAsked(ASKED.traceIndex()));
        assertEquals(0, memory.lastAsked(0));
    }

    @Test
    void aFamilyBegunAgainNoLongerSpeaksForItsKin() {
        Memory.Fold fold = Memory.blank(USUAL).fold();
        for (int i = 0; i < 5; i++) {
            fold.take(Given.wrong(ASKED, Given.START.plus(Duration.ofHours(i)), 4), HANDS);
        }
        Instant later = Given.START.plus(Duration.ofDays(1));
        Question kin = Question.product(6, 8);
        Trace trace = kin.trace();
        double forgetful = fold.memory().after(Given.shown(kin, later), HANDS).rate(trace);
        double usual = Memory.blank(USUAL).after(Given.shown(kin, later), HANDS).rate(trace);
        assertTrue(forgetful > usual + 0.001);
        assertEquals(
                usual,
                fold.without(Family.of(7, 8))
                        .memory()
                        .after(Given.shown(kin, later), HANDS)
                        .rate(trace),
                1e-12);
    }
}
