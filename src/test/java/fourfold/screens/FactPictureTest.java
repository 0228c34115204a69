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
                  ┌──────▸┌──────▸┌──────▸
                  ┴───────┴───────┴───────┴
                  0       8      16      24""", drawn(FactPicture.of(Depiction.JUMPS, Question.product(3, 8))));
    }

    @Test
    void jumpsBackwardsForAQuotient() {
        assertEquals("""
                     −8      −8      −8
                  ◂──────┐◂──────┐◂──────┐
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
                  ┌──────▸
                  ┴───────┴───────┴───────┴
                  0       8""", drawn(FactPicture.of(Depiction.JUMPS, Family.of(3, 8), 1)));
        assertEquals("● ● ● ●\n● ● ● ●\n", drawn(FactPicture.of(Depiction.ARRAY, Family.of(3, 4), 2)));
        assertEquals(
                "2 rows of 4 make 8",
                FactPicture.of(Depiction.ARRAY, Family.of(3, 4), 2).words(WORDS));
    }

    @Test
    void dotsArePackedTwoRowsToALineWhereThereIsLessRoom() {
        assertEquals(
                List.of(": : :", ": : :", "· · ·"),
                FactPicture.of(Depiction.ARRAY, Question.product(5, 3)).rows(56, 3));
        assertEquals(
                List.of(),
                FactPicture.of(Depiction.ARRAY, Question.product(5, 3)).rows(56, 2));
    }

    /** Every one of the 200 facts, in each picture, on the smallest screen on which pictures are promised. */
    @ParameterizedTest
    @EnumSource(Depiction.class)
    void everyFactHasEveryPictureOnASmallScreen(Depiction depiction) {
        for (Question question : Families.questions()) {
            FactPicture picture = FactPicture.of(depiction, question);
            List<String> rows = picture.rows(56, 5);
            assertFalse(rows.isEmpty(), question + " has no room");
            assertTrue(rows.stream().allMatch(r -> Picture.columns(r) <= 56), question.toString());
            assertEquals(question.family().product(), counted(depiction, rows, picture), question.toString());
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
                rows.stream()
                        .mapToInt(r -> r.chars()
                                .map(c -> c == ':' ? 2 : c == ' ' ? 0 : 1)
                                .sum())
                        .sum();
            case JUMPS -> {
                String arcs = rows.get(1);
                yield (int) arcs.chars().filter(c -> c == '▸' || c == '◂').count() * picture.each();
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
                String words = FactPicture.of(depiction, family, family.low()).words(WORDS);
                assertTrue(shown.contains(words), shown);
                assertTrue(shown.contains("Look at it. Then press Enter."), shown);
                if (depiction == Depiction.ARRAY) {
                    long dots = shown.chars().filter(c -> c == '●').count()
                            + 2
                                    * shown.lines()
                                            .filter(l -> l.strip().matches("(: )*:"))
                                            .mapToLong(l -> l.chars()
                                                    .filter(c -> c == ':')
                                                    .count())
                                            .sum()
                            + shown.lines()
                                    .filter(l -> l.strip().matches("(· )*·"))
                                    .mapToLong(
                                            l -> l.chars().filter(c -> c == '·').count())
                                    .sum();
                    assertEquals(family.product(), dots, shown);
                }
            }
        }
    }
}
