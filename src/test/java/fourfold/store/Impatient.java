// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.nio.file.Path;
import java.time.Duration;

/** Opens a file as the program does, but with less patience for other programs, so that a test need not wait so long. */
public final class Impatient {
    private Impatient() {}

    /** The store of this file, which waits at most so long for another program's write. */
    public static Store store(Path file, Duration patience) {
        return Store.open(file, patience);
    }
}
