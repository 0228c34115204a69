// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.ActionRecord;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.PrivateFolder;
import fourfold.upkeep.Restoration;
import fourfold.upkeep.Salvage;
import fourfold.upkeep.SharedFolder;
import fourfold.upkeep.Verification;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What is done to a family's file while its disk fails, and what must be true afterwards. Work tells how far it has come:
 * so many answers shown as counted, or 1 for done.
 */
enum FaultWork {
    /** The first drill ever: the file is made, answers are kept, the log comes into the file in between. */
    FIRST_DRILL {
        @Override
        void prepare(Path folder, int size) throws IOException {
            Files.createDirectories(folder);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            try (Store store = Store.open(file(folder), PATIENCE)) {
                again(() -> store.add(ANA));
                drill(store, Invented.session(ANA, 1), size, told);
            }
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            return drilled(folder, 1, 0, told);
        }
    },

    /** A drill in a file of some weeks. */
    DRILL {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 20, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            try (Store store = Store.open(file(folder), PATIENCE)) {
                drill(store, Invented.session(ANA, 100), size, told);
            }
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            return drilled(folder, 100, 20 * size, told);
        }
    },

    /** Another computer's file is merged. */
    MERGE {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
            filled(other(folder), 8, 20, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            try (Store store = Store.open(file(folder))) {
                Merge.of(store, other(folder), new Merge.Said(Set.of(), Map.of(), Instant.EPOCH, 0));
                told.accept(1);
            }
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            List<String> wrong = counted(folder, told, "1 12 " + 12 * size + " 0", "1 20 " + 20 * size + " 0");
            return wrong.isEmpty() ? leftBehind(folder) : wrong;
        }
    },

    /** Whole drills are taken in from a table. */
    IMPORT {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            try (Store store = Store.open(file(folder))) {
                List<DrillSession> sessions = sessions(12, 20);
                store.keepAll(sessions, answers(sessions, size));
                told.accept(1);
            }
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            return counted(folder, told, "1 12 " + 12 * size + " 0", "1 20 " + 20 * size + " 0");
        }
    },

    /** A child is removed for good. */
    REMOVAL {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            try (Store store = Store.open(file(folder))) {
                Backups.of(file(folder)).named("before");
                store.remove(ANA.id(), Instant.EPOCH);
                told.accept(1);
            }
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            List<String> wrong = counted(folder, told, "1 12 " + 12 * size + " 0", "0 0 0 13");
            return wrong.isEmpty() ? backups(folder) : wrong;
        }
    },

    /** A file of the first schema is brought up to date, and closed. */
    MIGRATION {
        @Override
        void prepare(Path folder, int size) throws IOException {
            Files.createDirectories(folder);
            String name = "/fourfold/store/earlier/version-" + (1 + size % 3) + ".db";
            try (InputStream kept = Objects.requireNonNull(FaultWork.class.getResourceAsStream(name))) {
                Files.copy(kept, file(folder));
            }
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            Store.open(file(folder)).close();
            told.accept(1);
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            return counted(folder, told, "2 6 72 0", "2 6 72 0");
        }
    },

    /** A backup takes the file's place. */
    RESTORE {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
            filled(other(folder), 0, 8, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            Restoration.of(file(folder), other(folder));
            told.accept(1);
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            List<String> wrong = counted(folder, told, "1 12 " + 12 * size + " 0", "1 8 " + 8 * size + " 0");
            return wrong.isEmpty() ? leftBehind(folder) : wrong;
        }
    },

    /** A damaged file is written anew. */
    SALVAGE {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
            byte[] bytes = Files.readAllBytes(file(folder));
            // The head of the file is destroyed; the pages of its tables are whole.
            Arrays.fill(bytes, 0, 100, (byte) 7);
            Files.write(file(folder), bytes);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            Salvage.of(file(folder), List.of(), other(folder), number -> "N" + number);
            told.accept(1);
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            if (told == 0 && !Files.exists(other(folder))) {
                return leftBehind(folder);
            }
            List<String> wrong = all(other(folder), told == 1, "1 12 " + 12 * size + " 0");
            return wrong.isEmpty() ? leftBehind(folder) : wrong;
        }
    },

    /** A move to a new computer: a copy on a stick, which takes the place of a file that is not there. */
    MOVING {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
            Files.createDirectories(folder.resolve("stick"));
            Files.createDirectories(folder.resolve("new"));
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            Path copy = folder.resolve("stick").resolve("family.db");
            Backups.of(file(folder)).to(copy);
            told.accept(1);
            Restoration.of(folder.resolve("new").resolve("family.db"), copy);
            told.accept(2);
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            String all = "1 12 " + 12 * size + " 0";
            List<String> wrong = new ArrayList<>(all(file(folder), true, all));
            Path copy = folder.resolve("stick").resolve("family.db");
            if (told >= 1 || Files.exists(copy)) {
                wrong.addAll(all(copy, true, all));
            }
            Path moved = folder.resolve("new").resolve("family.db");
            boolean decided = Files.exists(moved.resolveSibling("family.db.restored"));
            if (told >= 2 || decided || Files.exists(moved)) {
                wrong.addAll(all(moved, true, all));
            }
            wrong.addAll(leftBehind(folder));
            return wrong;
        }
    },

    /** This computer's records are laid in the folder where computers meet, in place of earlier ones. */
    LAYING {
        @Override
        void prepare(Path folder, int size) throws IOException {
            filled(file(folder), 0, 12, size);
            Path shared = Files.createDirectories(folder.resolve("shared"));
            filled(shared.resolve("fourfold-kitchen-00000001.db"), 0, 8, size);
        }

        @Override
        void run(Path folder, int size, IntConsumer told) {
            Path shared = folder.resolve("shared");
            SharedFolder.of(shared, file(folder)).lay(file(folder), "kitchen-00000001");
            told.accept(1);
        }

        @Override
        List<String> check(Path folder, int size, int told) {
            String all = "1 12 " + 12 * size + " 0";
            List<String> wrong = new ArrayList<>(all(file(folder), true, all));
            Path laid = folder.resolve("shared").resolve("fourfold-kitchen-00000001.db");
            List<String> ends = told == 1 ? List.of(all) : List.of(all, "1 8 " + 8 * size + " 0");
            wrong.addAll(all(laid, true, ends.toArray(new String[0])));
            wrong.addAll(leftBehind(folder));
            return wrong;
        }
    };

    private static final Child ANA = Invented.child(1, "Ana");
    private static final java.time.Duration PATIENCE = java.time.Duration.ofMillis(200);

    private static final String COUNTS = "SELECT (SELECT COUNT(*) FROM child) || ' ' || (SELECT COUNT(*) FROM drill)"
            + " || ' ' || (SELECT COUNT(*) FROM answer) || ' ' || (SELECT COUNT(*) FROM removed_record)";

    /** Lays what is there before the work begins; the folder is not there yet, or empty. */
    abstract void prepare(Path folder, int size) throws IOException;

    /**
     * Works, and says how far it has come.
     *
     * @throws RecordsFailure if it could not be done
     */
    abstract void run(Path folder, int size, IntConsumer told);

    /** What is wrong with what is there, after so much was told; it is looked at as the next start would, and changed. */
    abstract List<String> check(Path folder, int size, int told);

    private static Path file(Path folder) {
        return folder.resolve("family.db");
    }

    private static Path other(Path folder) {
        return folder.resolve("other.db");
    }

    private static void again(Runnable task) {
        try {
            task.run();
        } catch (RecordsFailure e) {
            task.run();
        }
    }

    /** As the program does: an answer that could not be kept is tried once more, and then the drill ends. */
    private static void drill(Store store, DrillSession session, int answers, IntConsumer told) {
        again(() -> store.begin(session));
        for (int position = 1; position <= answers; position++) {
            Answer answer = Invented.answer(session, position);
            again(() -> store.keep(answer));
            told.accept(position);
            if (position == answers / 2) {
                again(store::checkpoint);
            }
        }
        again(() -> store.keep(
                new ActionRecord(Invented.id(77), ANA.id(), session.startedAt(), 60, new ParentAction.OpenTable(7))));
    }

    private static List<String> drilled(Path folder, int number, int before, int told) {
        DrillSession session = Invented.session(ANA, number);
        List<String> wrong = new ArrayList<>();
        for (int start = 1; start <= 2; start++) {
            try (Store store = Store.open(file(folder))) {
                List<Answer> all = store.children().isEmpty() ? List.of() : store.answers(ANA.id());
                List<Answer> there =
                        all.stream().filter(a -> a.drill().equals(session.id())).toList();
                List<Answer> given = IntStream.rangeClosed(1, there.size())
                        .mapToObj(p -> Invented.answer(session, p))
                        .toList();
                if (there.size() < told || there.size() > told + 1 || !given.equals(there)) {
                    wrong.add("told " + told + " answers, there are " + there.size() + " at start " + start);
                }
                if (all.size() - there.size() != before) {
                    wrong.add("of " + before + " earlier answers there are " + (all.size() - there.size()));
                }
            } catch (RecordsFailure e) {
                wrong.add("start " + start + ": " + e.task() + " " + e.problem());
            }
        }
        return wrong;
    }

    private static List<String> counted(Path folder, int told, String before, String after) {
        List<String> ends = told == 0 ? List.of(before, after) : List.of(after);
        return all(file(folder), true, ends.toArray(new String[0]));
    }

    /** Opens the file as a start does; it must hold one of these and be whole. */
    private static List<String> all(Path file, boolean must, String... expected) {
        try (Store store = Store.open(file)) {
            String counts = store.database()
                    .read(
                            Task.READ_ANSWERS,
                            c -> Database.query(c, COUNTS, none -> {}, row -> row.getString(1))
                                    .get(0));
            if (!List.of(expected).contains(counts)) {
                return List.of(file.getFileName() + " holds " + counts + ", not " + String.join(" or ", expected));
            }
        } catch (RecordsFailure e) {
            return must ? List.of(file.getFileName() + ": " + e.task() + " " + e.problem()) : List.of();
        }
        return Verification.of(file).stream()
                .map(p -> file.getFileName() + ": " + p)
                .toList();
    }

    private static List<String> backups(Path folder) {
        return Backups.of(file(folder)).all().stream()
                .flatMap(b -> Verification.of(b.file()).stream().map(p -> b.name() + ": " + p))
                .toList();
    }

    /** What another family's file was copied to must be gone when the next program has begun. */
    private static List<String> leftBehind(Path folder) {
        PrivateFolder.clearLeftBehind();
        try (Stream<Path> left = Files.walk(folder.resolve("tmp"))) {
            return left.filter(p -> Files.isRegularFile(p) && p.toFile().length() > 0)
                    .map(p -> "left behind: " + p.getFileName())
                    .toList();
        } catch (IOException e) {
            return List.of(e.toString());
        }
    }

    private static List<DrillSession> sessions(int from, int to) {
        return IntStream.range(from, to).mapToObj(n -> Invented.session(ANA, n)).toList();
    }

    private static List<Answer> answers(List<DrillSession> sessions, int size) {
        return sessions.stream()
                .flatMap(s -> IntStream.rangeClosed(1, size).mapToObj(p -> Invented.answer(s, p)))
                .toList();
    }

    private static void filled(Path file, int from, int to, int size) throws IOException {
        Files.createDirectories(file.resolveSibling(""));
        try (Store store = Store.open(file)) {
            store.add(ANA);
            List<DrillSession> sessions = sessions(from, to);
            store.keepAll(sessions, answers(sessions, size));
        }
    }
}
