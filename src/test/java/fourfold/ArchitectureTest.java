// SPDX-License-Identifier: Apache-2.0
package fourfold;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.assignableTo;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import fourfold.screens.HomeEffect;
import fourfold.screens.HomePerformer;
import fourfold.terminal.SessionClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the map of the rooms: who may use whom, and who may touch the world. Each rule is shown to bite. */
class ArchitectureTest {
    /** Each room with the rooms it may use, from the ground up: a room uses only rooms that stand before it. */
    private static final Map<String, List<String>> ROOMS = new LinkedHashMap<>();

    private static final String PURE = "facts log memory progress";

    static {
        room("facts", "");
        room("log", "facts");
        room("memory", "facts log");
        room("progress", "facts log memory");
        room("scheduling", PURE);
        room("drill", PURE + " scheduling");
        room("insight", PURE);
        room("outlook", PURE + " scheduling drill");
        room("words", PURE + " drill insight outlook");
        room("terminal", "log");
        room("store", "facts log");
        room("upkeep", "facts log store");
        room("records", PURE + " insight outlook");
        room("paper", PURE + " insight outlook words");
        room("home", PURE + " scheduling drill insight outlook terminal store upkeep records");
        room("plain", PURE + " scheduling drill insight outlook words terminal home");
        room("screens", PURE + " drill insight words terminal home");
        room("screens.parent", PURE + " drill insight outlook words terminal home screens paper upkeep plain");
        room("screens.child", PURE + " scheduling drill insight words terminal home screens screens.parent");
        room(
                "commands",
                "facts log progress drill insight outlook words terminal upkeep records paper home screens screens.parent"
                        + " screens.child plain");
    }

    private static final String[] WITHOUT_THE_WORLD = {
        "..facts..",
        "..log..",
        "..memory..",
        "..progress..",
        "..scheduling..",
        "..drill..",
        "..insight..",
        "..outlook.."
    };

    /** What reads or writes; records and enums of the home only say what was read. */
    private static final DescribedPredicate<JavaClass> DOORS_OF_THE_HOME = resideInAPackage("fourfold.home")
            .and(DescribedPredicate.describe("are no data", home -> !home.isRecord() && !home.isEnum()));

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("fourfold");

    private static void room(String name, String uses) {
        ROOMS.put(name, uses.isEmpty() ? List.of() : List.of(uses.split(" ")));
    }

    static Stream<String> rooms() {
        return ROOMS.keySet().stream();
    }

    /** A room's own classes: those of a room within it are not its own. */
    private static String[] packages(String room) {
        return new String[] {"fourfold." + room, "fourfold.planted.arrows." + room};
    }

    private static ArchRule arrowsOf(String room) {
        List<String> others = new ArrayList<>();
        for (String other : ROOMS.keySet()) {
            if (!other.equals(room) && !ROOMS.getOrDefault(room, List.of()).contains(other)) {
                others.add("fourfold." + other);
            }
        }
        if (!room.equals("commands")) {
            others.add("fourfold");
        }
        return noClasses()
                .that()
                .resideInAnyPackage(packages(room))
                .should()
                .dependOnClassesThat(resideInAnyPackage(others.toArray(String[]::new)));
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomUsesOnlyTheRoomsTheMapAllows(String room) {
        arrowsOf(room).allowEmptyShould(true).check(PROGRAM);
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void anArrowPlantedAgainstTheMapIsCaught(String room) {
        JavaClasses planted = new ClassFileImporter().importPackages("fourfold.planted.arrows." + room);
        assertFalse(planted.isEmpty(), "nothing planted in " + room);
        assertThrows(AssertionError.class, () -> arrowsOf(room).check(planted));
    }

    @Test
    void theMapHasNoWayBack() {
        List<String> before = new ArrayList<>();
        ROOMS.forEach((room, uses) -> {
            assertTrue(before.containsAll(uses), room + " uses a room above it");
            before.add(room);
        });
    }

    /** The table of rooms in DEVELOPERS.md, and a tour of at most 15 lines in each room. */
    @Test
    void everyRoomIsOnTheMapAndHasATour() throws IOException {
        TreeSet<String> folders = new TreeSet<>();
        Path main = Path.of("src/main/java/fourfold");
        try (Stream<Path> all = Files.walk(main)) {
            for (Path file : all.filter(f -> f.toString().endsWith(".java")).toList()) {
                Path folder = main.relativize(file.getParent());
                folders.add(folder.toString().replace(folder.getFileSystem().getSeparator(), "."));
            }
        }
        folders.remove("");
        assertEquals(new TreeSet<>(ROOMS.keySet()), folders);
        String papers = Files.readString(Path.of("DEVELOPERS.md"));
        for (String room : ROOMS.keySet()) {
            assertTrue(papers.contains("| `" + room + "` |"), room + " is not in DEVELOPERS.md's table");
            List<String> tour = Files.readString(
                            main.resolve(room.replace('.', '/')).resolve("package-info.java"))
                    .lines()
                    .dropWhile(line -> !line.startsWith("/**"))
                    .takeWhile(line -> !line.startsWith("@"))
                    .toList();
            assertTrue(tour.size() >= 4 && tour.size() <= 15, room + ": a tour of " + tour.size() + " lines");
        }
    }

    /** A file of the program fits in a reader's head; what grows longer has a part with a name of its own. */
    @Test
    void noFileOfTheProgramHasMoreThanThreeHundredLines(@TempDir Path planted) throws IOException {
        assertEquals(List.of(), tooLong(Path.of("src/main/java")));
        Files.writeString(planted.resolve("Fits.java"), "// SPDX-License-Identifier: X\n" + "\n".repeat(300));
        Files.writeString(planted.resolve("TooLong.java"), "\n".repeat(301));
        assertEquals(List.of("TooLong.java has 301 lines"), tooLong(planted));
    }

    private static List<String> tooLong(Path folder) throws IOException {
        List<String> found = new ArrayList<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(f -> f.toString().endsWith(".java")).toList()) {
                long lines = Files.readAllLines(file).stream()
                        .filter(line -> !line.startsWith("// SPDX-"))
                        .count();
                if (lines > 300) {
                    found.add(file.getFileName() + " has " + lines + " lines");
                }
            }
        }
        return found;
    }

    /** Of four numbers side by side two can change places, and neither compiler nor reader sees it. */
    private static ArchCondition<JavaClass> haveAtMostThreeNumbersOfOneType() {
        return new ArchCondition<>("have at most three numbers of one type") {
            @Override
            public void check(JavaClass record, ConditionEvents events) {
                for (String type : List.of("int", "long", "double")) {
                    long numbers = record.getFields().stream()
                            .filter(f -> !f.getModifiers().contains(JavaModifier.STATIC))
                            .filter(f -> f.getRawType().getName().equals(type))
                            .count();
                    events.add(new SimpleConditionEvent(record, numbers <= 3, record.getName() + ": " + numbers));
                }
            }
        };
    }

    /** Every other rule, by the name of the planted class that breaks it. */
    enum Rule {
        NO_CIRCLES(slices().matching("fourfold..(*)").should().beFreeOfCycles().allowEmptyShould(true)),
        PURE_ROOMS_TOUCH_NOTHING(noClasses()
                .that()
                .resideInAnyPackage(WITHOUT_THE_WORLD)
                .should()
                .dependOnClassesThat(resideInAnyPackage(
                        "java.io..",
                        "java.nio.file..",
                        "java.nio.channels..",
                        "java.sql..",
                        "java.net..",
                        "java.util.concurrent..",
                        "com.googlecode.lanterna..",
                        "picocli..",
                        "org.flywaydb..",
                        "org.sqlite.."))),
        PURE_ROOMS_HAVE_NO_CLOCK_AND_NO_DICE(noClasses()
                .that()
                .resideInAnyPackage(WITHOUT_THE_WORLD)
                .should()
                .callMethod(Instant.class, "now")
                .orShould()
                .callMethod(LocalDate.class, "now")
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(Clock.class, "systemUTC")
                .orShould()
                .callMethod(UUID.class, "randomUUID")
                .orShould()
                .callMethod(Math.class, "random")
                .orShould()
                .callConstructor(Random.class)
                .orShould()
                .callConstructor(java.util.SplittableRandom.class)),
        ONLY_STORE_AND_UPKEEP_SPEAK_SQL(noClasses()
                .that(not(resideInAnyPackage("..store..", "..upkeep..")))
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("java.sql..", "javax.sql..", "org.flywaydb..", "org.sqlite.."))),
        ONLY_TERMINAL_AND_SCREENS_DRAW(noClasses()
                .that(not(resideInAnyPackage("..terminal..", "..screens..")))
                .should()
                .dependOnClassesThat(resideInAPackage("com.googlecode.lanterna.."))),
        PAGES_ASK_AND_DO_NOT_DO(noClasses()
                .that(resideInAPackage("..screens.."))
                .and(not(assignableTo(HomeEffect.class)))
                .and(not(assignableTo(HomePerformer.class)))
                .should()
                .dependOnClassesThat(DOORS_OF_THE_HOME)
                .orShould()
                .dependOnClassesThat(assignableTo(SessionClock.class))),
        ONLY_COMMANDS_READ_OPTIONS(noClasses()
                .that(not(resideInAPackage("..commands..")))
                .should()
                .dependOnClassesThat(resideInAPackage("picocli.."))),
        NO_NETWORK(noClasses()
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.net..", "javax.net..", "java.rmi.."))
                .orShould()
                .dependOnClassesThat()
                .haveSimpleNameEndingWith("SocketChannel")),
        NUMBERS_DO_NOT_CHANGE_PLACES_UNSEEN(classes()
                .that()
                .areRecords()
                .should(haveAtMostThreeNumbersOfOneType())
                .allowEmptyShould(true)),
        NAMES_ARE_THE_TRADES(noClasses()
                .should()
                .haveSimpleNameEndingWith("Manager")
                .orShould()
                .haveSimpleNameEndingWith("Helper")
                .orShould()
                .haveSimpleNameEndingWith("Util")
                .orShould()
                .haveSimpleNameEndingWith("Utils")
                .orShould()
                .haveSimpleNameEndingWith("Impl")
                .orShould()
                .haveSimpleNameEndingWith("Service")
                .orShould()
                .haveSimpleNameEndingWith("Processor")
                .orShould()
                .haveSimpleNameEndingWith("Dto")
                .orShould()
                .haveSimpleNameStartingWith("Abstract"));

        // A rule is not marked immutable by its library; nothing here changes one.
        @SuppressWarnings("ImmutableEnumChecker")
        private final ArchRule rule;

        Rule(ArchRule rule) {
            this.rule = rule;
        }
    }

    @ParameterizedTest
    @EnumSource(Rule.class)
    void theProgramKeepsTheRule(Rule rule) {
        rule.rule.check(PROGRAM);
    }

    @ParameterizedTest
    @EnumSource(Rule.class)
    void aPlantedViolationIsCaught(Rule rule) {
        String planted = "fourfold.planted." + rule.name().toLowerCase(Locale.ROOT);
        JavaClasses violation = new ClassFileImporter().importPackages(planted);
        assertFalse(violation.isEmpty(), "nothing planted in " + planted);
        assertThrows(AssertionError.class, () -> rule.rule.check(violation));
    }
}
