// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import fourfold.commands.Practised;
import fourfold.commands.Sample;
import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.log.RecordsFailure;
import fourfold.log.Surface;
import fourfold.scheduling.LastingGain;
import fourfold.screens.HomeEffect;
import fourfold.screens.parent.OpenParents;
import fourfold.terminal.Key;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.SessionClock;
import fourfold.words.Words;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Guards against a page that changes in place, or that reads or writes at a key which asks for nothing: every page, from
 * a real file, is told everything it can be told.
 */
class PagesTest {
    private static final List<String> KEYS = Stream.concat(
                    Stream.of("Enter", "Esc", "Up", "Down", "Left", "Right", "Backspace", "Space"),
                    "abcdefghijklmnopqrstuvwxyz0123456789?+-.*/".chars().mapToObj(Character::toString))
            .toList();

    @TempDir
    private static Path folder;

    private static Instant now = Instant.EPOCH;
    private static Home home;

    @BeforeAll
    static void aFamily() {
        Path file = folder.resolve("family.db");
        now = Sample.fill(file);
        home = open(file);
        home.children().add("Ben", now);
        // A page to print, so that there are answers to enter.
        new Walk(home).press("4 1 m 3 Enter Enter");
    }

    private static Home open(Path file) {
        PrintWriter nowhere = new PrintWriter(Writer.nullWriter());
        Environment world = new Environment(
                new BufferedReader(Reader.nullReader()),
                nowhere,
                nowhere,
                nowhere,
                Map.of("FOURFOLD_LANGUAGE", "en"),
                folder,
                "Linux",
                true,
                () -> new SessionClock(now, ZoneId.of("Europe/Berlin"), () -> 0L));
        return Home.open(world, Optional.of(file), false);
    }

    @AfterAll
    static void closed() {
        home.close();
    }

    private static Key key(String name) {
        return switch (name) {
            case "Enter" -> Key.of(Key.Kind.ENTER);
            case "Esc" -> Key.of(Key.Kind.ESCAPE);
            case "Backspace" -> Key.of(Key.Kind.ERASE);
            case "Space" -> new Key(Key.Kind.LETTER, ' ');
            default -> {
                if (name.length() > 1) {
                    yield Key.of(Key.Kind.valueOf(name.toUpperCase(Locale.ROOT)));
                }
                char c = name.charAt(0);
                yield new Key(Character.isDigit(c) ? Key.Kind.DIGIT : Key.Kind.LETTER, c);
            }
        };
    }

    /** Everything a page can be told, by name. */
    private static Map<String, PageEvent> events(int columns, int rows) {
        Map<String, PageEvent> events = new LinkedHashMap<>();
        KEYS.forEach(k -> events.put(k, new PageEvent.Pressed(key(k), now, columns, rows)));
        for (PageEvent event : List.of(
                new PageEvent.Tick(now),
                new PageEvent.Painted(now),
                new PageEvent.Interrupted(now),
                new PageEvent.Opened(now),
                new PageEvent.Returned(now),
                new PageEvent.Leave(now))) {
            events.put(event.getClass().getSimpleName(), event);
        }
        return events;
    }

    /** Does what the loop of pages does, without a terminal and at once. */
    private static final class Walk {
        private final Home home;
        private final Deque<Page> pages = new ArrayDeque<>();

        Walk(Home home) {
            this.home = home;
            begin();
        }

        private void begin() {
            pages.clear();
            pages.push(new HomePage.Open(new PageContext(Words.english(), new LastingGain(), Surface.TERMINAL))
                    .first(home));
        }

        Page page() {
            return pages.element();
        }

        Walk press(String keys) {
            for (String name : keys.split(" ")) {
                if (!name.isEmpty()) {
                    tell(new PageEvent.Pressed(key(name), now, 80, 24));
                }
            }
            return this;
        }

        void tell(PageEvent event) {
            PageResult result = pages.pop().on(event);
            pages.push(result.next());
            result.effects().forEach(this::perform);
        }

        private void perform(PageEffect effect) {
            if (effect instanceof HomeEffect wanted) {
                PageEffect.Outcome outcome;
                try {
                    outcome = wanted.perform(home);
                } catch (RecordsFailure e) {
                    outcome = new HomeEffect.Failed(e);
                }
                tell(new PageEvent.Done(outcome, now));
            } else if (effect instanceof PageEffect.Open open) {
                pages.push(open.page());
                tell(new PageEvent.Opened(now));
            } else if (effect instanceof PageEffect.Replace replace) {
                pages.pop();
                pages.push(replace.page());
                tell(new PageEvent.Opened(now));
            } else if (effect instanceof PageEffect.Back && pages.size() > 1) {
                pages.pop();
                tell(new PageEvent.Returned(now));
            } else if (effect instanceof PageEffect.Back
                    || effect instanceof PageEffect.First
                    || effect instanceof PageEffect.LeaveProgram) {
                begin();
            }
        }
    }

    private static String drawn(Page page) {
        Picture picture = new Picture(80, 24, true);
        page.draw(picture);
        return picture.toString();
    }

    /** A page and an effect as they can be compared: a drill, which is compared nowhere else, by its phase. */
    private static Object comparable(Page page) {
        return page instanceof DrillPage drill
                ? List.of(
                        drill.drill().phase(),
                        drill.waiting().map(d -> (Object) d.phase()).orElse("none"),
                        drill.pauseMeant(),
                        drill.mood(),
                        drill.file(),
                        drill.sign(),
                        drill.advice())
                : page;
    }

    private static Object comparable(PageEffect effect) {
        return effect instanceof DrillEffect.KeepLast last ? List.of("last", last.effects(), last.at()) : effect;
    }

    /** Tells a page twice: the same follows. */
    private static PageResult toldTwice(Page page, PageEvent event) {
        PageResult once = page.on(event);
        PageResult again = page.on(event);
        String told = page.getClass().getSimpleName() + " " + event;
        assertEquals(comparable(once.next()), comparable(again.next()), told);
        assertEquals(
                once.effects().stream().map(PagesTest::comparable).toList(),
                again.effects().stream().map(PagesTest::comparable).toList(),
                told);
        return once;
    }

    /** Each page, the keys from the first page to it, and all that makes it ask something of the home. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "HomePage        | ''               | Enter 1 2 4 Returned",
                "NamePage        | 3                | ''",
                "MinutesPage     | 1                | Enter Space +",
                "DrillPage       | 1 Enter          | Leave",
                "ParentPage      | 4                | Enter 1 2",
                "GridPage        | 4 1              | Enter c f h k o p s u w y Returned",
                "FamilyPage      | 4 1 Enter        | f h u",
                "MorePage        | 4 1 m            | Enter 1 2 3 4 5 6 7 8 9 0",
                "PlanPage        | 4 1 p            | Opened",
                "AwayPage        | 4 1 w            | f u",
                "PrintPage       | 4 1 m 3          | Enter 1 2 3 4 5 6 7 8 9 0",
                "PrintChoicePage | 4 1 m 3 1        | Enter",
                "PaperPage       | 4 1 m 4          | Returned",
                "PaperEntryPage  | 4 1 m 4 Enter    | ''",
                "PaperEntryPage  | 4 1 m 4 Enter x  | Enter",
                "AloudPage       | 4 1 m Up Up Up Up Up Up Up Enter | ''",
                "AloudPage       | 4 1 m Up Up Up Up Up Up Up Enter Right | Enter Esc",
                "RatesPage       | 4 1 m 5          | ''",
                "DrillsPage      | 4 1 m 6          | ''",
                "HistoryPage     | 4 1 m 7          | ''",
                "SettingsPage    | 4 1 s            | Left Right u Returned",
                "OrderPage       | 4 1 s Up Enter   | Enter",
                "ChildrenPage    | 4 1 m 9          | p",
                "GateSettingPage | 4 1 m 0          | ''",
                "CautionsPage    | 4 1 m Up Up Up Up Up Up Enter | ''",
                "HouseholdPage   | 4 1 m Up Up Enter   | Right",
                "CarePage        | 4 1 m Up Up Up Up Enter | Enter 1 2",
                "CarePage        | 4 1 m Up Up Up Up Enter 4 a | Enter",
                "CarePage        | 4 1 m Up Up Up Up Enter 3 | ''",
                "TogetherPage    | 4 1 m Up Up Up Enter   | ''",
                "TogetherPage    | 4 1 m Up Up Up Enter n | Enter",
                "NotePage        | 4 1 n            | ''",
                "CalendarPage    | 4 1 m Up Enter   | Left Right b u",
                "YearPage        | 4 1 y            | p",
                "GuidePage       | ?                | ''"
            })
    void whatFollowsIsAFunctionAndOnlySomeKeysAskTheHome(String name, String way, String asks) {
        Page page = new Walk(home).press(way).page();
        assertEquals(name, page.getClass().getSimpleName());
        assertTableHolds(page, asks);
    }

    @Test
    void atTheGateOnlyEnterAsksTheHome() {
        home.gate().set("1234", now);
        PageEffect.Outcome opened = new OpenParents(Words.english(), now).perform(home);
        home.gate().remove();
        assertTrue(opened instanceof HomeEffect.Made made
                && made.page().getClass().getSimpleName().equals("GatePage"));
        assertTableHolds(((HomeEffect.Made) opened).page(), "Enter");
    }

    private static void assertTableHolds(Page page, String asks) {
        String before = drawn(page);
        TreeSet<String> asked = new TreeSet<>();
        for (int rows : new int[] {14, 24}) {
            events(40 + rows, rows).forEach((name, event) -> {
                PageResult result = toldTwice(page, event);
                if (result.effects().stream().anyMatch(e -> e instanceof PageEffect.Outside)) {
                    asked.add(name);
                }
            });
        }
        assertEquals(before, drawn(page), "a page has changed in place");
        assertEquals(
                Stream.of(asks.split(" ")).filter(k -> !k.isEmpty()).collect(Collectors.toCollection(TreeSet::new)),
                asked);
    }

    @Test
    void aDrillFromTheCommandLineGreetsAndBeginsWithEnter() {
        Page ready = new Walk(home).press("1 Enter").page();
        DrillPage page = (DrillPage) ready;
        fourfold.drill.Drill drill = fourfold.drill.Drill.ready(
                page.drill().progress(), page.drill().session(), new LastingGain(), Surface.TERMINAL);
        Page greeting = new DrillPage(Words.english(), page.child(), drill, now).greeting();
        greeting = greeting.on(new PageEvent.Opened(now)).next();
        greeting = greeting.on(new PageEvent.Interrupted(now)).next();
        greeting = greeting.on(new PageEvent.Pressed(key("7"), now, 80, 24)).next();
        assertTrue(drawn(greeting).contains("Type each answer, then press Enter."), drawn(greeting));
        assertTrue(drawn(greeting).contains("Press Enter to go on."), drawn(greeting));
        assertTrue(
                greeting.on(new PageEvent.Pressed(key("Enter"), now, 80, 24)).effects().stream()
                        .anyMatch(DrillEffect.Keep.class::isInstance),
                "the drill begins, and that is kept");
    }

    /** Pages far from the first one, and states that no table names. */
    @Test
    void whereverAWalkAtRandomLeadsWhatFollowsIsAFunction() throws IOException {
        Home other = open(Practised.once(Files.createDirectory(folder.resolve("other"))));
        SplittableRandom dice = new SplittableRandom(4);
        TreeSet<String> seen = new TreeSet<>();
        List<PageEvent> all = new ArrayList<>(events(80, 24).values());
        for (int walks = 0; walks < 20; walks++) {
            Walk walk = new Walk(other).press(dice.nextBoolean() ? "3" : "");
            for (int i = 0; i < 60; i++) {
                PageEvent event = all.get(dice.nextInt(all.size()));
                seen.add(walk.page().getClass().getSimpleName());
                if (!(event instanceof PageEvent.Leave)) {
                    Page page = walk.page();
                    String before = drawn(page);
                    toldTwice(page, event);
                    assertEquals(before, drawn(page), "a page has changed in place");
                    walk.tell(event);
                }
            }
        }
        other.close();
        assertTrue(seen.size() >= 12, seen.toString());
    }

    /** A new page is to be entered in the table. */
    @Test
    void noPageIsForgotten() {
        long pages = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests()).importPackages("fourfold.screens").stream()
                        .filter(c -> c.isAssignableTo(Page.class) && c.isRecord())
                        .count();
        assertEquals(32, pages);
    }
}
