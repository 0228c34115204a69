// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.api.io.TempDir;

/** Guards the seam for kinds of children from elsewhere: a service file on the class path is enough. */
class PluggedKindTest {
    @TempDir
    Path folder;

    /** As if a folder or jar with a service file had been put on the class path. */
    private <T> T withTinyOnTheClassPath(Supplier<T> task) throws IOException {
        Path services = Files.createDirectories(folder.resolve("META-INF/services"));
        Files.writeString(services.resolve(SimulatedLearnerKind.class.getName()), TinyKind.class.getName());
        Thread here = Thread.currentThread();
        ClassLoader before = here.getContextClassLoader();
        try (URLClassLoader more = new URLClassLoader(new URL[] {folder.toUri().toURL()}, before)) {
            here.setContextClassLoader(more);
            return task.get();
        } finally {
            here.setContextClassLoader(before);
        }
    }

    @Test
    void aKindFromElsewhereIsFoundByNameAndLivesByItsOwnCalendar() throws IOException {
        List<SimulatedLearnerKind> found = withTinyOnTheClassPath(() -> SimulatedLearnerKind.named(List.of("tiny")));
        List<Policy> policies = List.of(Policies.named("none"), Policies.named("boxes"), Policies.named("ours"));
        BenchmarkTable table = new BenchmarkTable(new Benchmark(found, policies, List.of(1L, 2L))
                .tasks().stream().map(Benchmark.Task::run).toList());
        assertAll(
                () -> assertEquals(List.of("tiny"), table.kinds()),
                () -> assertEquals(
                        0, table.cell("tiny", "none", Measure.KEPT_60).mean()),
                () -> assertTrue(
                        Double.isNaN(table.cell("tiny", "ours", Measure.WEEK_6).mean())),
                () -> assertTrue(table.cell("tiny", "ours", Measure.MET).mean() >= 8, table::text),
                () -> assertEquals(
                        1, table.cell("tiny", "ours", Measure.MET_KEPT_14).mean(), 0.2, table::text),
                () -> assertTrue(table.cell("tiny", "boxes", Measure.PER_DRILL).mean() > 30, table::text));
    }

    @Test
    void anyKindCanBePutOnAnotherCalendar() {
        SimulatedLearnerKind moved =
                OnCalendar.each(List.of(new TinyKind()), List.of("two-days")).get(0);
        assertEquals("tiny@two-days", moved.name());
        assertEquals(36, moved.calendar(1).weeks());
        assertThrows(
                IllegalArgumentException.class, () -> OnCalendar.each(List.of(new TinyKind()), List.of("no-days")));
    }

    @Test
    void aCeilingSaysThatItNeedsAnOpenMind() {
        SimulatedLearner closed = new TinyKind().create(1);
        assertThrows(
                IllegalArgumentException.class, () -> Policies.named("knows").schedulerFor(closed));
    }

    @Test
    void namesThatAreNotThereAreToldWithThoseThatAre() {
        String policy = told(() -> Policies.named("x"));
        assertTrue(policy.contains("\"x\"") && policy.contains("knows-and-plans"), policy);
        String kind = told(() -> SimulatedLearnerKind.named(List.of("y")));
        assertTrue(kind.contains("\"y\""), kind);
    }

    private static String told(Executable task) {
        return String.valueOf(assertThrows(IllegalArgumentException.class, task).getMessage());
    }
}
