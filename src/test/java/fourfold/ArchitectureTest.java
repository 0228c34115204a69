package fourfold;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Holds the map of the parts: who may use whom, and who may touch the world. Each rule is shown to bite. */
class ArchitectureTest {
    private static final String[] PURE = {
        "..facts..", "..memory..", "..progress..", "..scheduling..", "..drill..", "..outlook.."
    };

    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("fourfold");

    /** Every rule of the map, by the name of the planted class that breaks it. */
    enum Rule {
        ARROWS_RUN_ONE_WAY(layeredArchitecture()
                .consideringOnlyDependenciesInLayers()
                .withOptionalLayers(true)
                .layer("main")
                .definedBy("fourfold", "fourfold.planted")
                .layer("facts")
                .definedBy("..facts..")
                .layer("memory")
                .definedBy("..memory..")
                .layer("progress")
                .definedBy("..progress..")
                .layer("scheduling")
                .definedBy("..scheduling..")
                .layer("drill")
                .definedBy("..drill..")
                .layer("outlook")
                .definedBy("..outlook..")
                .layer("store")
                .definedBy("..store..")
                .layer("screens")
                .definedBy("..screens..")
                .layer("export")
                .definedBy("..export..")
                .layer("commands")
                .definedBy("..commands..")
                .whereLayer("facts")
                .mayNotAccessAnyLayer()
                .whereLayer("memory")
                .mayOnlyAccessLayers("facts")
                .whereLayer("progress")
                .mayOnlyAccessLayers("facts", "memory")
                .whereLayer("scheduling")
                .mayOnlyAccessLayers("facts", "memory", "progress")
                .whereLayer("drill")
                .mayOnlyAccessLayers("facts", "memory", "progress", "scheduling")
                .whereLayer("outlook")
                .mayOnlyAccessLayers("facts", "memory", "progress", "scheduling", "drill")
                .whereLayer("store")
                .mayOnlyAccessLayers("facts")
                .whereLayer("screens")
                .mayOnlyAccessLayers("facts", "memory", "progress", "scheduling", "drill")
                .whereLayer("export")
                .mayOnlyAccessLayers("facts", "memory", "progress")
                .whereLayer("commands")
                .mayOnlyBeAccessedByLayers("main")),
        NO_CIRCLES(slices().matching("fourfold..(*)").should().beFreeOfCycles().allowEmptyShould(true)),
        EVERY_CLASS_HAS_ITS_PART(classes()
                .should()
                .resideInAnyPackage(
                        "fourfold",
                        "..facts..",
                        "..memory..",
                        "..progress..",
                        "..scheduling..",
                        "..drill..",
                        "..outlook..",
                        "..store..",
                        "..screens..",
                        "..export..",
                        "..commands..")),
        PURE_PARTS_TOUCH_NOTHING(noClasses()
                .that()
                .resideInAnyPackage(PURE)
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
        PURE_PARTS_HAVE_NO_CLOCK_AND_NO_DICE(noClasses()
                .that()
                .resideInAnyPackage(PURE)
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
        ONLY_THE_STORE_SPEAKS_SQL(noClasses()
                .that(com.tngtech.archunit.base.DescribedPredicate.not(resideInAPackage("..store..")))
                .should()
                .dependOnClassesThat(
                        resideInAnyPackage("java.sql..", "javax.sql..", "org.flywaydb..", "org.sqlite.."))),
        ONLY_SCREENS_DRAW(noClasses()
                .that(com.tngtech.archunit.base.DescribedPredicate.not(
                        resideInAnyPackage("..screens..", "..commands..")))
                .should()
                .dependOnClassesThat(resideInAPackage("com.googlecode.lanterna.."))),
        ONLY_COMMANDS_READ_OPTIONS(noClasses()
                .that(com.tngtech.archunit.base.DescribedPredicate.not(resideInAPackage("..commands..")))
                .should()
                .dependOnClassesThat(resideInAPackage("picocli.."))),
        NO_NETWORK(noClasses()
                .should()
                .dependOnClassesThat(resideInAnyPackage("java.net..", "javax.net..", "java.rmi.."))
                .orShould()
                .dependOnClassesThat()
                .haveSimpleNameEndingWith("SocketChannel")),
        ONLY_MAIN_USES_THE_COMMANDS(noClasses()
                .that(com.tngtech.archunit.base.DescribedPredicate.not(resideInAPackage("..commands..")))
                .and()
                .doNotHaveFullyQualifiedName("fourfold.Main")
                .should()
                .dependOnClassesThat(resideInAPackage("..commands.."))),
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
    void theProgramKeepsTheMap(Rule rule) {
        rule.rule.check(PROGRAM);
    }

    @ParameterizedTest
    @EnumSource(Rule.class)
    void aPlantedViolationIsCaught(Rule rule) {
        String planted = "fourfold.planted." + rule.name().toLowerCase(java.util.Locale.ROOT);
        JavaClasses violation = new ClassFileImporter().importPackages(planted);
        assertTrue(Stream.of(violation).anyMatch(c -> c.size() > 0), "nothing planted in " + planted);
        assertThrows(AssertionError.class, () -> rule.rule.check(violation));
    }
}
