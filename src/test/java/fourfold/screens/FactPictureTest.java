// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.drill.Depiction;
import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.facts.Question;
import fourfold.screens.child.LessonPictures;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Guards against a picture that shows another number than its fact, or that has no room on a small screen. */
class FactPictureTest {
    private static final Words WORDS = Words.english();

    private static String drawn(FactPicture picture) {
        return String.join(
                        "\n",
                        picture.rows(56, 11).stream().map(String::stripTrailing).toList())
                .stripIndent();
    }

    @Test
    void jumpsForwardsForAProduct() {
        assertEquals("""
                     +8      +8      +8
                  ┌──────►┌──────►┌──────►
                  ┴───────┴───────┴───────┴
                  0       8      16      24""", drawn(FactPicture.of(Depiction.JUMPS, Question.product(3, 8))));
    }

    @Test
    void jumpsBackwardsForAQuotient() {
        assertEquals("""
                     −8      −8      −8
                  ◄──────┐◄──────┐◄──────┐
                  ┴───────┴───────┴───────┴
                  0       8      16      24""", drawn(FactPicture.of(Depiction.JUMPS, Question.quotient(Family.of(3, 8), 8))));
    }

    @Test
    void aBarInEqualParts() {
        assertEquals("""
                 ───────── 24 ──────────
                ┌───────┬───────┬───────┐
                │   8   │   8   │   8   │
                └───────┴───────┴───────┘""", drawn(FactPicture.of(Depiction.BAR, Question.quotient(Family.of(3, 8), 3))));
    }

    @Test
    void aPictureGrowsByOneGroupAndStaysWhereItIs() {
        assertEquals("""
                     +8
                  ┌──────►
                  ┴───────┴───────┴───────┴
                  0       8""", drawn(FactPicture.of(Depiction.JUMPS, Family.of(3, 8), 1)));
        assertEquals("● ● ● ●\n● ● ● ●\n", drawn(FactPicture.of(Depiction.ARRAY, Family.of(3, 4), 2)));
        assertEquals(
                "2 rows of 4 make 8",
                FactPicture.of(Depiction.ARRAY, Family.of(3, 4), 2).words(WORDS));
    }

    /** Two dots in one cell read as half as many rows as the text says. */
    @Test
    void whereDotsCannotBeCountedAnotherPictureOfTheFactIsDrawn() {
        FactPicture ten = FactPicture.of(Depiction.ARRAY, Question.product(10, 10));
        assertEquals(ten, ten.fitted(56, 10));
        assertEquals(10, ten.rows(56, 10).size());
        assertEquals("10 jumps of 10 reach 100", ten.fitted(56, 5).words(WORDS));
        FactPicture apart = FactPicture.of(Depiction.ARRAY, Question.quotient(Family.of(7, 9), 7));
        assertEquals("63 in 7 equal parts: 9 in each", apart.fitted(56, 5).words(WORDS));
    }

    /** Every one of the 200 facts, in each picture, on the smallest screen on which pictures are promised. */
    @ParameterizedTest
    @EnumSource(Depiction.class)
    void everyFactHasEveryPictureOnASmallScreen(Depiction depiction) {
        for (Question question : Families.questions()) {
            FactPicture picture = FactPicture.of(depiction, question).fitted(56, 5);
            List<String> rows = picture.rows(56, 5);
            assertFalse(rows.isEmpty(), question + " has no room");
            assertTrue(rows.stream().allMatch(r -> Picture.columns(r) <= 56), question.toString());
            assertEquals(question.family().product(), counted(picture.depiction(), rows, picture), question.toString());
            List<Integer> numbers = Pattern.compile("\\d+")
                    .matcher(picture.words(WORDS))
                    .results()
                    .map(m -> Integer.valueOf(m.group()))
                    .toList();
            assertTrue(numbers.contains(question.family().product()), picture.words(WORDS));
            boolean apart = question.operation() == Operation.DIVIDE;
            assertEquals(apart, picture.split());
            assertTrue(numbers.contains(question.expected()), question + ": " + picture.words(WORDS));
        }
    }

    /** What a child counts in the picture. */
    private static int counted(Depiction depiction, List<String> rows, FactPicture picture) {
        return switch (depiction) {
            case ARRAY ->
                (int) rows.stream()
                        .flatMapToInt(String::chars)
                        .filter(c -> c == '●')
                        .count();
            case JUMPS -> {
                String arcs = rows.get(1);
                yield (int) arcs.chars().filter(c -> c == '►' || c == '◄').count() * picture.each();
            }
            case BAR ->
                Pattern.compile("\\d+")
                        .matcher(rows.get(2))
                        .results()
                        .mapToInt(m -> Integer.parseInt(m.group()))
                        .sum();
        };
    }

    /** On a screen of 60 × 20 and of 80 × 24 the whole picture of every family is there when it is introduced. */
    @ParameterizedTest
    @CsvSource({"60, 20", "80, 24"})
    void everyFamilyIsIntroducedWithItsWholePicture(int columns, int rows) {
        for (Family family : Families.all()) {
            for (Depiction depiction : Depiction.values()) {
                Picture picture = new Picture(columns, rows, true);
                LessonPictures.meeting(picture, family, depiction);
                String shown = picture.toString();
                // Title, square of four, words, hint and keys leave nine rows of twenty.
                FactPicture drawn =
                        FactPicture.of(depiction, family, family.low()).fitted(columns - 4, rows - 11);
                assertTrue(shown.contains(drawn.words(WORDS)), shown);
                assertTrue(shown.contains("Say it aloud. Then press Enter to cover it."), shown);
                if (drawn.depiction() == Depiction.ARRAY) {
                    long dots = shown.chars().filter(c -> c == '●').count();
                    assertEquals(family.product(), dots, shown);
                }
            }
        }
    }
}
