// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * A folder on a disk that may lose its power: what programs see, and what is on the disk for sure. Bytes are so when their
 * file was forced, names when their folder was. Of the rest, each sector of 512 bytes may be there, or not, or be garbage
 * where it was written, in any order; of the changes of a folder's names, a first part is there. What a disk failed to
 * force is gone for good, though programs still see it.
 */
final class DiskModel {
    private static final int SECTOR = 512;

    /** How much of what was not forced is there. */
    enum Loss {
        NOTHING,
        EVERYTHING,
        BY_LOT
    }

    private static final class Content {
        private byte[] seen;
        private byte[] forced;
        private final List<Pending> pending = new ArrayList<>();

        Content(byte[] bytes) {
            seen = bytes;
            forced = bytes;
        }
    }

    /** A write, or where {@code bytes} is empty a cut, since the file was last forced. */
    private static final class Pending {
        private final long at;
        private final byte[] bytes;
        private boolean doomed;

        Pending(long at, byte[] bytes) {
            this.at = at;
            this.bytes = bytes;
        }
    }

    private interface Naming {
        void on(Map<Path, Content> names);
    }

    private final Path root;
    private final Map<Path, Content> names = new TreeMap<>();
    private final Map<Path, Content> forcedNames = new TreeMap<>();
    private final Map<Path, List<Naming>> pendingNames = new HashMap<>();
    private final Map<Long, Content> numbered = new HashMap<>();
    private final Set<Path> folders = new TreeSet<>();

    /** Begins with what is in the folder, all of it forced. */
    DiskModel(Path root) throws IOException {
        this.root = root;
        try (Stream<Path> all = Files.walk(root)) {
            for (Path path : all.toList()) {
                if (Files.isDirectory(path)) {
                    folders.add(path);
                } else {
                    Content content = new Content(Files.readAllBytes(path));
                    names.put(path, content);
                    forcedNames.put(path, content);
                    numbered.put((Long) Files.getAttribute(path, "unix:ino"), content);
                }
            }
        }
    }

    /** What a program did. */
    void apply(DiskTrace.Change change) {
        Path path = change.path();
        switch (change.what()) {
            case MADE -> {
                Content content = new Content(new byte[0]);
                numbered.put(change.file(), content);
                named(path, map -> map.put(path, content));
            }
            case CUT -> write(of(change), change.at(), new byte[0]);
            case WRITTEN -> {
                byte[] bytes = new byte[change.bytes().remaining()];
                change.bytes().duplicate().get(bytes);
                write(of(change), change.at(), bytes);
            }
            case FORCED -> force(change);
            case NOT_FORCED -> {
                if (change.at() == 0) {
                    of(change).pending.forEach(p -> p.doomed = true);
                }
            }
            case REMOVED -> named(path, map -> map.remove(path));
            case RENAMED -> {
                Path to = Path.of(change.other());
                Content content = names.get(path);
                named(to, map -> {
                    map.remove(path);
                    map.put(to, content);
                });
            }
            case LINKED -> {
                Content content = names.get(path);
                Path to = Path.of(change.other());
                named(to, map -> map.put(to, content));
            }
            case FOLDER_MADE -> folders.add(path);
            case FOLDER_REMOVED -> folders.remove(path);
        }
    }

    private Content of(DiskTrace.Change change) {
        return numbered.computeIfAbsent(change.file(), none -> new Content(new byte[0]));
    }

    private void named(Path path, Naming naming) {
        naming.on(names);
        pendingNames
                .computeIfAbsent(path.resolveSibling(""), none -> new ArrayList<>())
                .add(naming);
    }

    private static void write(Content content, long at, byte[] bytes) {
        content.pending.add(new Pending(at, bytes));
        content.seen = changed(content.seen, at, bytes);
    }

    private static byte[] changed(byte[] before, long at, byte[] bytes) {
        if (bytes.length == 0) {
            return Arrays.copyOf(before, (int) at);
        }
        byte[] after = Arrays.copyOf(before, Math.max(before.length, (int) at + bytes.length));
        System.arraycopy(bytes, 0, after, (int) at, bytes.length);
        return after;
    }

    private void force(DiskTrace.Change change) {
        if (change.at() == 1) {
            List<Naming> pending = pendingNames.getOrDefault(change.path(), List.of());
            pending.forEach(naming -> naming.on(forcedNames));
            pendingNames.remove(change.path());
            return;
        }
        Content content = of(change);
        for (Pending pending : content.pending) {
            if (!pending.doomed) {
                content.forced = changed(content.forced, pending.at, pending.bytes);
            }
        }
        content.pending.clear();
    }

    /** Whether there is anything that a loss of power could take away. */
    boolean isAtRisk() {
        return !pendingNames.isEmpty() || names.values().stream().anyMatch(c -> !c.pending.isEmpty());
    }

    /** Writes to another folder what programs see: what a kill leaves. */
    void leave(Path to) throws IOException {
        put(names, to, content -> content.seen);
    }

    /** Writes to another folder what a loss of power may leave. */
    void leave(Path to, Loss loss, SplittableRandom lot) throws IOException {
        Map<Path, Content> left = new TreeMap<>(forcedNames);
        for (List<Naming> pending : pendingNames.values()) {
            int kept = switch (loss) {
                case NOTHING -> pending.size();
                case EVERYTHING -> 0;
                case BY_LOT -> lot.nextInt(pending.size() + 1);
            };
            pending.subList(0, kept).forEach(naming -> naming.on(left));
        }
        Map<Content, byte[]> bytes = new HashMap<>();
        // Of a few sectors nearly all may be there or nearly none.
        double there = lot.nextInt(3) / 2.5 + 0.1;
        for (Content content : left.values()) {
            bytes.put(content, left(content, loss, there, lot));
        }
        put(left, to, content -> bytes.getOrDefault(content, content.forced));
    }

    private static byte[] left(Content content, Loss loss, double there, SplittableRandom lot) {
        byte[] left = content.forced;
        for (Pending pending : content.pending) {
            if (loss == Loss.EVERYTHING || pending.doomed) {
                continue;
            }
            if (loss == Loss.NOTHING) {
                left = changed(left, pending.at, pending.bytes);
            } else if (pending.bytes.length == 0) {
                left = lot.nextDouble() < there ? changed(left, pending.at, pending.bytes) : left;
            } else {
                left = mixed(left, pending, there, lot);
            }
        }
        return left;
    }

    private static byte[] mixed(byte[] before, Pending pending, double there, SplittableRandom lot) {
        byte[] left = before;
        int at = (int) pending.at;
        int end = at + pending.bytes.length;
        for (int from = at; from < end; ) {
            int to = Math.min(end, (from / SECTOR + 1) * SECTOR);
            byte[] sector = Arrays.copyOfRange(pending.bytes, from - at, to - at);
            if (lot.nextDouble() < 0.08) {
                lot.nextBytes(sector);
                left = changed(left, from, sector);
            } else if (lot.nextDouble() < there) {
                left = changed(left, from, sector);
            }
            from = to;
        }
        return left;
    }

    private interface Bytes {
        byte[] of(Content content);
    }

    private void put(Map<Path, Content> what, Path to, Bytes bytes) throws IOException {
        for (Path made : folders) {
            Files.createDirectories(to.resolve(root.relativize(made).toString()));
        }
        for (Map.Entry<Path, Content> one : what.entrySet()) {
            Path path = to.resolve(root.relativize(one.getKey()).toString());
            if (Files.isDirectory(path.resolveSibling(""))) {
                Files.write(path, bytes.of(one.getValue()));
            }
        }
    }
}
