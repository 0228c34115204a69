// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Consumer;

/**
 * A family's file that the program makes once and that each test gets a copy of. To make even an empty one, with all its
 * migrations, takes ten times as long as to open it; tests that are about that first start make their own.
 */
public final class MadeOnce {
    /** What the first start leaves. */
    public static final MadeOnce EMPTY = by(file -> Store.open(file).close());

    private final byte[] bytes;

    private MadeOnce(byte[] bytes) {
        this.bytes = bytes;
    }

    /** Makes the file; at the end of that it is to be closed. */
    public static MadeOnce by(Consumer<Path> making) {
        try {
            Path folder = Files.createTempDirectory("fourfold-made");
            Path file = folder.resolve("family.db");
            making.accept(file);
            byte[] bytes = Files.readAllBytes(file);
            Files.delete(file);
            Files.delete(folder);
            return new MadeOnce(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Lays a copy down unless a file is there already; gives its path. */
    public Path at(Path file) {
        try {
            if (Rights.makeFile(file)) {
                Files.write(file, bytes);
            }
            return file;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
