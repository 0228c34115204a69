package fourfold.commands;

import fourfold.export.AnswersCsv;
import fourfold.facts.Answer;
import fourfold.scheduling.Scheduler;
import fourfold.simulation.SchoolYear;
import fourfold.simulation.SimulatedLearner;
import fourfold.simulation.SimulatedLearnerKind;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** Writes the invented family that the demo shows: three simulated children at different stages. */
@Command(
        name = "demo-data",
        hidden = true,
        mixinStandardHelpOptions = true,
        description = "Write the invented family of the demo into a folder.")
final class DemoDataCommand implements Callable<Integer> {
    /** The Friday of every child's last drill; the demo moves all of them to yesterday. */
    private static final LocalDate LAST_DAY = LocalDate.of(2026, 3, 27);

    @ParentCommand
    private App app;

    @Parameters(index = "0", paramLabel = "FOLDER", description = "The folder to write family.csv and README.md into.")
    private Path folder;

    @Option(names = "--seed", defaultValue = "2023", description = "Decides the children. Default: 2023.")
    private long seed;

    /** One invented child. */
    private record Invented(String name, String kind, int weeks, String stage) {}

    private static final List<Invented> FAMILY = List.of(
            new Invented("Pip", "forgetful", 10, "about ten weeks in: the easy tables sit, the middle ones grow"),
            new Invented(
                    "Juno", "activation", 23, "about twenty-three weeks in: most families are open, many are fluent"),
            new Invented("Bo", "predictive", 1, "has just begun"));

    @Override
    public Integer call() throws IOException {
        Files.createDirectories(folder);
        try (Writer writer = Files.newBufferedWriter(folder.resolve("family.csv"), StandardCharsets.UTF_8)) {
            AnswersCsv.Sheet sheet = new AnswersCsv.Sheet(writer);
            for (int i = 0; i < FAMILY.size(); i++) {
                Invented child = FAMILY.get(i);
                for (Answer answer : answers(child, seed + i)) {
                    sheet.write(answer, child.name());
                }
            }
            sheet.flush();
        }
        Files.writeString(folder.resolve("README.md"), readMe(), StandardCharsets.UTF_8);
        return ExitCode.DONE;
    }

    private List<Answer> answers(Invented child, long childSeed) {
        SimulatedLearner learner = SimulatedLearnerKind.all().stream()
                .filter(k -> k.name().equals(child.kind()))
                .findFirst()
                .orElseThrow()
                .create(childSeed);
        Scheduler scheduler = app.world().scheduler();
        List<Answer> answers = new ArrayList<>();
        new SchoolYear(learner, scheduler, childSeed, answers::add).run(4 * child.weeks(), true, (slot, next) -> {});
        long newest = answers.get(answers.size() - 1).localDay();
        return answers.stream()
                .map(a -> moved(a, LAST_DAY.toEpochDay() - newest))
                .toList();
    }

    private static Answer moved(Answer a, long days) {
        Instant at = a.askedAt().plus(Duration.ofDays(days));
        return a.askedAt(at);
    }

    private String readMe() {
        StringBuilder text = new StringBuilder("# The invented family\n\n");
        text.append(
                        "`family.csv` holds the answers of three children who do not exist. They are simulated children, run\n")
                .append("through the real drill. `fourfold --demo` opens a throw-away copy of them.\n\n");
        for (int i = 0; i < FAMILY.size(); i++) {
            Invented child = FAMILY.get(i);
            text.append("- ")
                    .append(child.name())
                    .append(": ")
                    .append(child.stage())
                    .append(" (kind `");
            text.append(child.kind()).append("`, seed ").append(seed + i).append(").\n");
        }
        text.append("\nThe last drill of each is on ")
                .append(LAST_DAY.atStartOfDay(ZoneOffset.UTC).toLocalDate());
        text.append(". Made with `fourfold demo-data demo-data --seed ")
                .append(seed)
                .append("`;\n");
        text.append("run it again after a change to the scheduler or the simulated children.\n");
        return text.toString();
    }
}
