// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.RecordsFailure;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.ByteOrder;
import java.nio.IntBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A program of its own, run with {@code src/test/c/faults.c} before it: does each {@link FaultWork} over and over and looks
 * at what is left when it is killed after any change of the disk, when the power goes then, and when any one call of the
 * system fails, or all of its kind from there on. Prints a table when its time is over.
 */
final class FaultLaboratory {
    private static final int MOST_TOLD = 40;
    private static final int MOST_CALLS = 80;
    private static final int KINDS = Call.values().length;

    /** Kinds of calls, in the order of faults.c, with the errors each may end in (numbers of Linux); 0 is half a write. */
    private enum Call {
        OPEN("5 13 24 28"),
        READ("5"),
        WRITE("5 28 0 122"),
        SYNC("5 28"),
        CUT("5 28"),
        REMOVE("5 1 13"),
        NAME("5 28 13"),
        LOCK("5 11 37"),
        MAP("12 5");

        private final String errors;

        Call(String errors) {
            this.errors = errors;
        }
    }

    /** How states come about; a column of the table. */
    private enum How {
        KILLED,
        POWER_LOST,
        ONE_CALL_FAILED,
        ALL_CALLS_FAILED,
        FAILED_THEN_POWER_LOST,
        SLOW_DISK;

        String words() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private final Path folder;
    private final Path trace;
    private final IntBuffer control;
    private final long end;
    private final SplittableRandom lot = new SplittableRandom(20261127);
    private final Map<FaultWork, Map<How, Integer>> states = new EnumMap<>(FaultWork.class);
    private final Map<FaultWork, Integer> wrong = new EnumMap<>(FaultWork.class);
    private final Map<FaultWork, Integer> changes = new EnumMap<>(FaultWork.class);
    private final Map<String, Integer> said = new TreeMap<>();
    private int rounds;
    private String works = ".*";

    private FaultLaboratory(Path folder, Path trace, IntBuffer control, Duration length) {
        this.folder = folder;
        this.trace = trace;
        this.control = control;
        this.end = System.nanoTime() + length.toNanos();
    }

    /**
     * Runs it.
     *
     * @param arguments the folder to work in, the trace, the control file, how many seconds it may take, and perhaps which works to do
     *     (a pattern of their names)
     */
    public static void main(String[] arguments) throws IOException {
        try (FileChannel channel =
                FileChannel.open(Path.of(arguments[2]), StandardOpenOption.READ, StandardOpenOption.WRITE)) {
            IntBuffer control = channel.map(FileChannel.MapMode.READ_WRITE, 0, 4096)
                    .order(ByteOrder.nativeOrder())
                    .asIntBuffer();
            Duration length = Duration.ofSeconds(Long.parseLong(arguments[3]));
            FaultLaboratory laboratory =
                    new FaultLaboratory(Path.of(arguments[0]), Path.of(arguments[1]), control, length);
            laboratory.works = arguments.length > 4 ? arguments[4] : ".*";
            laboratory.disarm();
            laboratory.work();
            laboratory.print(new PrintStream(System.out, true, StandardCharsets.UTF_8));
        }
    }

    private void work() throws IOException {
        for (rounds = 0; isTime(); rounds++) {
            for (FaultWork work : FaultWork.values()) {
                if (isTime() && work.name().matches(works)) {
                    int size = 3 + rounds % 7;
                    Files.createDirectories(temporary(prepared()));
                    empty(prepared());
                    work.prepare(prepared(), size);
                    stopAnywhere(work, size);
                    failAnywhere(work, size);
                }
            }
        }
    }

    private boolean isTime() {
        return System.nanoTime() < end;
    }

    private Path prepared() {
        return folder.resolve("prepared");
    }

    /** The folder that the library watches. */
    private Path watched() {
        return folder.resolve("watched").resolve("run");
    }

    private Path state() {
        return folder.resolve("state");
    }

    /** Every change of the work, and after each what a kill and some losses of power leave. */
    private void stopAnywhere(FaultWork work, int size) throws IOException {
        Recorded recorded = recorded(work, size);
        if (!recorded.outcome().isEmpty()) {
            wrong(work, size, "without a fault", List.of(recorded.outcome()));
        }
        changes.merge(work, recorded.changes().size(), Math::max);
        DiskModel disk = recorded.before();
        for (int i = 0; i < recorded.changes().size() && isTime(); i++) {
            DiskTrace.Change change = recorded.changes().get(i);
            disk.apply(change);
            int told = recorded.told(change.end());
            String when = "change " + (i + 1) + " of " + recorded.changes().size() + " (" + change.what() + " "
                    + change.path().getFileName() + ")";
            empty(state());
            disk.leave(state());
            check(work, size, How.KILLED, when, told);
            if (disk.isAtRisk()) {
                losePower(work, size, disk, How.POWER_LOST, when, told, 3);
            }
        }
        control.put(6, 5);
        recorded(work, size);
        control.put(6, 0);
        check(work, size, watched(), How.SLOW_DISK, "a slow disk", lastTold);
    }

    private void losePower(FaultWork work, int size, DiskModel disk, How how, String when, int told, int lots)
            throws IOException {
        for (int i = 0; i <= lots && isTime(); i++) {
            DiskModel.Loss loss = i == 0 ? DiskModel.Loss.EVERYTHING : DiskModel.Loss.BY_LOT;
            long seed = lot.nextLong();
            empty(state());
            disk.leave(state(), loss, new SplittableRandom(seed));
            check(work, size, how, when + ", power lost, seed " + seed, told);
        }
    }

    private void failAnywhere(FaultWork work, int size) throws IOException {
        recorded(work, size);
        int[] calls = new int[KINDS];
        for (int kind = 0; kind < calls.length; kind++) {
            calls[kind] = control.get(8 + kind);
        }
        for (Call call : Call.values()) {
            int all = calls[call.ordinal()];
            int step = Math.max(1, all / MOST_CALLS);
            for (int n = 1 + lot.nextInt(step); n <= all && isTime(); n += step) {
                String[] errors = call.errors.split(" ");
                int error = Integer.parseInt(errors[lot.nextInt(errors.length)]);
                fail(work, size, call, n, error, lot.nextInt(3) == 0);
            }
        }
    }

    private void fail(FaultWork work, int size, Call call, int n, int error, boolean sticky) throws IOException {
        String when = call + " " + n + " fails with " + error + (sticky ? " and all after it" : "");
        control.put(1, call.ordinal());
        control.put(2, n);
        control.put(3, error);
        control.put(4, sticky ? 1 : 0);
        control.put(5, 0);
        Recorded recorded = recorded(work, size);
        disarm();
        int told = lastTold;
        if (!recorded.outcome().isEmpty()) {
            wrong(work, size, when, List.of(recorded.outcome()));
        }
        // What a loss of power leaves is taken first: the look at the files is a start, and changes them.
        DiskModel disk = recorded.before();
        recorded.changes().forEach(disk::apply);
        if (disk.isAtRisk()) {
            losePower(work, size, disk, How.FAILED_THEN_POWER_LOST, when, told, 0);
        }
        check(work, size, watched(), sticky ? How.ALL_CALLS_FAILED : How.ONE_CALL_FAILED, when, told);
    }

    private void disarm() {
        control.put(0, 0);
        control.put(1, -1);
        control.put(2, 0);
        control.put(4, 0);
        control.put(5, 0);
    }

    private int lastTold;

    /** A run of a work: how the folder was, what was done to it, how far it told to be when, and what it failed with. */
    private record Recorded(DiskModel before, List<DiskTrace.Change> changes, List<long[]> marks, String outcome) {
        /** What was told when the trace was so long. */
        int told(long length) {
            int told = 0;
            for (long[] mark : marks) {
                told = mark[0] <= length ? (int) mark[1] : told;
            }
            return told;
        }
    }

    private Recorded recorded(FaultWork work, int size) throws IOException {
        int armed = control.get(1);
        control.put(1, -1);
        empty(watched());
        copy(prepared(), watched());
        Files.createDirectories(temporary(watched()));
        DiskModel before = new DiskModel(watched());
        Files.write(trace, new byte[0]);
        List<long[]> marks = new ArrayList<>();
        for (int kind = 0; kind < Call.values().length; kind++) {
            control.put(8 + kind, 0);
        }
        lastTold = 0;
        System.setProperty("java.io.tmpdir", temporary(watched()).toString());
        control.put(0, 1);
        control.put(1, armed);
        String outcome = "";
        try {
            work.run(watched(), size, told -> {
                marks.add(new long[] {trace.toFile().length(), told});
                lastTold = told;
            });
        } catch (RecordsFailure e) {
            said.merge(e.task() + " " + e.problem().reason(), 1, Integer::sum);
            outcome = armed < 0 ? e.task() + " " + e.problem() : "";
        } catch (RuntimeException | Error e) {
            outcome = "it ended in " + e + " at " + List.of(e.getStackTrace()).subList(0, 3);
        } finally {
            control.put(0, 0);
            control.put(1, -1);
        }
        return new Recorded(before, DiskTrace.read(trace, 0), marks, outcome);
    }

    private void check(FaultWork work, int size, How how, String when, int told) {
        check(work, size, state(), how, when, told);
    }

    private void check(FaultWork work, int size, Path there, How how, String when, int told) {
        states.computeIfAbsent(work, none -> new EnumMap<>(How.class)).merge(how, 1, Integer::sum);
        System.setProperty("java.io.tmpdir", temporary(there).toString());
        List<String> found;
        try {
            found = work.check(there, size, told);
        } catch (RuntimeException e) {
            found = List.of("the look at it ended in " + e + " at "
                    + List.of(e.getStackTrace()).subList(0, 3));
        }
        if (!found.isEmpty()) {
            wrong(work, size, how + ", " + when + ", told " + told, found);
        }
    }

    private void wrong(FaultWork work, int size, String when, List<String> found) {
        if (wrong.merge(work, 1, Integer::sum) <= MOST_TOLD) {
            System.out.println("! " + work + " of size " + size + ": " + when + ": " + found);
        }
    }

    private static Path temporary(Path of) {
        return of.resolve("tmp");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path path : all.toList()) {
                Path copy = to.resolve(from.relativize(path).toString());
                if (Files.isDirectory(path)) {
                    Files.createDirectories(copy);
                } else {
                    Files.write(copy, Files.readAllBytes(path));
                }
            }
        }
    }

    /** Empties a folder, and leaves a folder for temporary files in it. */
    private static void empty(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                    if (!path.equals(folder)) {
                        Files.delete(path);
                    }
                }
            }
        }
        Files.createDirectories(temporary(folder));
    }

    /** A line for each work, then for each kind of failure that was told in words; cells are parted by tabs. */
    private void print(PrintStream out) {
        String heads = String.join("\t", Stream.of(How.values()).map(How::words).toList());
        out.println("work\twork\tchanges\t" + heads + "\twrong");
        int[] sums = new int[How.values().length + 1];
        states.forEach((work, of) -> {
            StringBuilder line = new StringBuilder("work\t" + work + "\t" + changes.getOrDefault(work, 0));
            for (How how : How.values()) {
                int many = of.getOrDefault(how, 0);
                sums[how.ordinal()] += many;
                line.append('\t').append(many);
            }
            sums[sums.length - 1] += wrong.getOrDefault(work, 0);
            out.println(line.append('\t').append(wrong.getOrDefault(work, 0)));
        });
        String all =
                String.join("\t", IntStream.of(sums).mapToObj(Integer::toString).toList());
        out.println("work\tall\t\t" + all);
        out.println("rounds\t" + rounds);
        said.forEach((what, times) -> out.println("said\t" + what + "\t" + times));
    }
}
