// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.records.AnswersCsv;
import fourfold.store.Store;
import fourfold.upkeep.ShownFile;
import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Makes the file that {@link Demo} copies, once, in the build: to read its answers takes longer than to show them. */
final class DemoFile {
    /** Where the build puts it. */
    static final String RESOURCE = "/demo-data/family.db";

    private static final int MINUTES = 8;

    private DemoFile() {}

    /**
     * Makes it.
     *
     * @param arguments the answers as CSV, and the file to be made in place of what was there
     */
    public static void main(String[] arguments) throws IOException {
        Path made = Path.of(arguments[1]);
        Files.deleteIfExists(made);
        make(Path.of(arguments[0]), Files.createFile(made));
    }

    /** The same bytes, whenever and wherever it is made. */
    static void make(Path csv, Path made) throws IOException {
        Path folder = Files.createTempDirectory("fourfold-demo");
        Path file = folder.resolve("demo.db");
        try (Store store = Store.open(file)) {
            fill(store, csv);
            ShownFile.write(store, made);
        } finally {
            Files.deleteIfExists(file);
            Files.deleteIfExists(folder);
        }
    }

    private static void fill(Store store, Path csv) throws IOException {
        Map<String, Child> children = new LinkedHashMap<>();
        try (Reader reader = Files.newBufferedReader(csv, StandardCharsets.UTF_8)) {
            List<Answer> answers = AnswersCsv.read(
                    reader,
                    name -> children.computeIfAbsent(name, DemoFile::child).id());
            store.takeIn(List.copyOf(children.values()), drills(answers), answers);
        }
    }

    private static Child child(String name) {
        return new Child(UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)), name, Instant.EPOCH);
    }

    private static List<DrillSession> drills(List<Answer> answers) {
        Map<UUID, DrillSession> drills = new LinkedHashMap<>();
        for (Answer a : answers) {
            drills.computeIfAbsent(
                    a.drill(),
                    id -> new DrillSession(
                            id, a.child(), a.askedAt(), a.zoneOffsetMinutes(), Duration.ofMinutes(MINUTES), 0));
        }
        return new ArrayList<>(drills.values());
    }
}
