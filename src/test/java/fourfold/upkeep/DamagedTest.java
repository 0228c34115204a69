// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import fourfold.facts.Family;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.store.Invented;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import fourfold.upkeep.RowCounts.Kind;
import fourfold.words.InEnglish;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Guards against damage that goes unnoticed, that is made worse, or that costs more than what was destroyed. */
class DamagedTest {
    private static final int DAMAGES = 200;
    private static final int PAGE = 4096;
    private static final Child ANA = Invented.child(1, "Ana");
    private static final Child BO = Invented.child(2, "Bo");

    @TempDir
    private Path folder = Path.of("");

    private Path file = Path.of("");
    private byte[] whole = new byte[0];
    private final List<Answer> given = new ArrayList<>();

    @BeforeEach
    void fill() throws IOException {
        file = MadeOnce.EMPTY.at(folder.resolve("fourfold.db"));
        try (Store store = Store.open(file)) {
            store.add(ANA);
            store.add(BO);
            for (int n = 0; n < 40; n++) {
                DrillSession session = Invented.session(n % 3 == 0 ? BO : ANA, n);
                List<Answer> answers = new ArrayList<>();
                for (int p = 1; p <= 40; p++) {
                    answers.add(Invented.answer(session, p));
                }
                store.keepAll(List.of(session), answers);
                given.addAll(answers);
                store.keep(Invented.action(ANA, n, new ParentAction.Focus(Family.of(6, 7))));
            }
        }
        whole = Files.readAllBytes(file);
    }

    /** What one random damage does to the bytes. */
    private byte[] damage(SplittableRandom random, int number) {
        byte[] bytes = whole.clone();
        int pages = bytes.length / PAGE;
        switch (number % 4) {
            case 0 -> bytes = Arrays.copyOf(bytes, random.nextInt(bytes.length));
            case 1 -> {
                int page = random.nextInt(pages);
                Arrays.fill(
                        bytes, page * PAGE, (page + 1 + random.nextInt(Math.min(4, pages - page))) * PAGE, (byte) 0);
            }
            case 2 -> {
                for (int flips = 1 + random.nextInt(20); flips > 0; flips--) {
                    bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
                }
            }
            default -> {
                byte[] noise = new byte[512];
                random.nextBytes(noise);
                System.arraycopy(noise, 0, bytes, random.nextInt(bytes.length / 512) * 512, 512);
            }
        }
        return bytes;
    }

    @Test
    void twoHundredRandomDamagesAreToldOrHarmlessAndNeverMadeWorse() throws IOException {
        Backups.of(file).ofDay(LocalDate.parse("2026-03-02"));
        SplittableRandom random = new SplittableRandom(200);
        int told = 0;
        int refusedAtOnce = 0;
        for (int number = 0; number < DAMAGES; number++) {
            byte[] bytes = damage(random, number);
            Files.write(file, bytes);
            List<String> found = InEnglish.problems(Verification.of(file));
            boolean sound = found.isEmpty();
            told += sound ? 0 : 1;
            if (sound) {
                // Unseen are only places that hold nothing, and values of children, drills and actions that stay
                // possible.
                try (Store store = Store.open(file)) {
                    List<Answer> there = new ArrayList<>(store.answers(ANA.id()));
                    there.addAll(store.answers(BO.id()));
                    assertEquals(whoeverGave(given), whoeverGave(there), "damage " + number);
                }
                continue;
            }
            String message = InEnglish.failure(this::openReadAndBackUp, "" + found);
            assertEquals(1, message.lines().count(), message);
            // Opening looks at every page, not at each entry of an index; reading and the day's backup meet the rest.
            assertTrue(
                    message.contains("the last good one is 2026-03-02; fourfold restore")
                            || !message.startsWith("could not open"),
                    message);
            refusedAtOnce += message.startsWith("could not open") ? 1 : 0;
            assertArrayEquals(bytes, Files.readAllBytes(file), "damage " + number + " was written to");
        }
        assertTrue(told > DAMAGES * 8 / 10, told + " of " + DAMAGES + " told");
        assertTrue(refusedAtOnce > told * 9 / 10, refusedAtOnce + " of " + told + " told when opening");
    }

    private static Set<Answer> whoeverGave(List<Answer> answers) {
        return answers.stream()
                .map(a -> a.in(new Answer.Place(ANA.id(), a.drill(), a.position())))
                .collect(Collectors.toSet());
    }

    /** One bit of each byte of a page of answers, so that a value becomes another that is possible too. */
    @Test
    void aBitAnywhereInAnAnswerIsToldAndCostsThatAnswerAlone() throws IOException {
        int page = pageOfAnswers() * PAGE;
        SplittableRandom random = new SplittableRandom(8);
        int told = 0;
        for (int number = 0; number < 60; number++) {
            byte[] bytes = whole.clone();
            // The last quarter of a full leaf page holds rows and nothing else (sqlite.org/fileformat2.html, section
            // 1.6).
            bytes[page + PAGE - 1 - random.nextInt(PAGE / 4)] ^= (byte) (1 << random.nextInt(8));
            Files.write(file, bytes);
            List<String> found = InEnglish.problems(Verification.of(file));
            assertFalse(found.isEmpty(), "damage " + number);
            told += found.stream().anyMatch(f -> f.contains("is not as it was kept")) ? 1 : 0;
            Path fresh = folder.resolve("bit-" + number + ".db");
            Salvage salvage = Salvage.of(file, List.of(), fresh, n -> "Salvaged " + n);
            assertTrue(salvage.saved().of(Kind.ANSWER) >= given.size() - 1, salvage.toString());
            try (Store store = Store.open(fresh)) {
                Set<Answer> saved = whoeverGave(store.answers(ANA.id()));
                saved.addAll(whoeverGave(store.answers(BO.id())));
                assertTrue(whoeverGave(given).containsAll(saved), "salvage made an answer up");
            }
        }
        assertTrue(told > 30, told + " told by the checksum");
    }

    /** A page, from 0, that is a full leaf of the table of answers. */
    private int pageOfAnswers() {
        for (int page = 5; page * PAGE < whole.length; page++) {
            int cells = ((whole[page * PAGE + 3] & 0xff) << 8) | (whole[page * PAGE + 4] & 0xff);
            if (whole[page * PAGE] == 13 && cells > 60 && cells < 120 && page > pageOfChildren()) {
                return page;
            }
        }
        throw new AssertionError("no page holds answers");
    }

    private void openReadAndBackUp() {
        try (Store store = Store.open(file)) {
            store.answers(ANA.id());
            store.answers(BO.id());
        }
        Backups.of(file).ofDay(LocalDate.parse("2026-03-03"));
    }

    @Test
    void salvageSavesAllThatIsNotDestroyedAndInventsNothing() throws IOException {
        Set<Answer> all = new HashSet<>(given);
        SplittableRandom random = new SplittableRandom(21);
        for (int number = 0; number < 5; number++) {
            byte[] bytes = whole.clone();
            int page = number == 0 ? 0 : random.nextInt(bytes.length / PAGE);
            Arrays.fill(bytes, page * PAGE, (page + 1) * PAGE, (byte) 0);
            Files.write(file, bytes);
            Path fresh = folder.resolve("salvaged-" + number + ".db");
            Salvage salvage = Salvage.of(file, List.of(), fresh, n -> "Salvaged " + n);
            assertArrayEquals(bytes, Files.readAllBytes(file), "salvage changed the damaged file");
            List<Answer> saved = new ArrayList<>();
            try (Store store = Store.open(fresh)) {
                store.allChildren().forEach(c -> saved.addAll(store.answers(c.id())));
            }
            assertEquals(salvage.saved().of(Kind.ANSWER), saved.size());
            long strange = saved.stream().filter(a -> !all.contains(a)).count();
            boolean nameless = salvage.saved().of(Kind.CHILD) < 2 || page == pageOfChildren();
            assertTrue(nameless || strange == 0, strange + " answers nobody gave");
            // A page holds at most about 115 answers, or the heads of about fifty drills.
            assertTrue(saved.size() + salvage.lost() >= given.size() - 120, saved.size() + " saved, page " + page);
        }
    }

    @Test
    void aBackupTellsWhoseAnswersTheyAreWhenThatIsDestroyed() throws IOException {
        Backup backup = Backups.of(file).ofDay(LocalDate.parse("2026-03-02")).orElseThrow();
        byte[] bytes = whole.clone();
        Arrays.fill(bytes, pageOfChildren() * PAGE, (pageOfChildren() + 1) * PAGE, (byte) 0);
        Files.write(file, bytes);
        Path alone = folder.resolve("alone.db");
        Salvage.of(file, List.of(), alone, n -> "Salvaged " + n);
        try (Store store = Store.open(alone)) {
            assertEquals(
                    List.of("Salvaged 2", "Salvaged 1"),
                    store.children().stream().map(Child::name).toList());
        }
        Path helped = folder.resolve("helped.db");
        RowCounts all = new RowCounts(Map.of(Kind.CHILD, 2, Kind.DRILL, 40, Kind.ANSWER, 1600, Kind.ACTION, 40));
        assertEquals(new Salvage(all, 0), Salvage.of(file, List.of(backup.file()), helped, n -> "Salvaged " + n));
        try (Store store = Store.open(helped)) {
            assertEquals(List.of(ANA, BO), store.children());
            assertEquals(List.of(), Verification.of(helped));
        }
    }

    /** The page, from 0, that holds the two children: the one in which both names stand. */
    private int pageOfChildren() {
        for (int page = 0; page * PAGE < whole.length; page++) {
            String text = new String(whole, page * PAGE, PAGE, java.nio.charset.StandardCharsets.ISO_8859_1);
            if (text.contains(ANA.id() + "Ana") && text.contains(BO.id() + "Bo")) {
                return page;
            }
        }
        throw new AssertionError("no page holds the children");
    }

    @Test
    void impossibleValuesAndAMissingAnswerAreTold() throws Exception {
        change(
                "PRAGMA ignore_check_constraints = 1",
                "UPDATE answer SET left_number = 77, operation = 1, right_number = 4, purpose = 2, checksum = NULL"
                        + " WHERE drill_nr = 2 AND position = 3");
        assertTold("the code 1, 77, 4 stands for nothing");
        Files.write(file, whole);
        change("DELETE FROM answer WHERE drill_nr = 2 AND position = 3");
        assertTold("has no answer at position 3");
        Files.write(file, whole);
        change("UPDATE answer SET asked_at = asked_at - 100000, checksum = NULL WHERE drill_nr = 2 AND position = 3");
        assertTold("was asked before what it follows");
        Files.write(file, whole);
        change("PRAGMA foreign_keys = 0", "DELETE FROM drill WHERE nr = 2");
        assertTold("belongs to a missing row of the table drill");
        Files.write(file, whole);
        assertEquals(List.of(), Verification.of(file));
    }

    private void change(String... statements) throws Exception {
        org.sqlite.SQLiteDataSource source = new org.sqlite.SQLiteDataSource();
        source.setUrl("jdbc:sqlite:" + file);
        try (java.sql.Connection connection = source.getConnection();
                java.sql.Statement statement = connection.createStatement()) {
            for (String sql : statements) {
                statement.execute(sql);
            }
        }
    }

    private void assertTold(String part) {
        List<String> findings = InEnglish.problems(Verification.of(file));
        assertFalse(findings.isEmpty());
        assertTrue(findings.stream().anyMatch(f -> f.contains(part)), findings.toString());
    }
}
