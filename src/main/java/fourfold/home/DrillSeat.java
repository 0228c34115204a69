// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;
import fourfold.store.DrillLock;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The place of the child who practises now. Two drills of one child at the same time would each count what the other does
 * not know of, so a child has one place among all programs that have the file open.
 */
final class DrillSeat {
    private final Optional<Path> file;
    private Optional<DrillLock> lock = Optional.empty();

    /** Without a file nobody else can be there. */
    DrillSeat(Optional<Path> file) {
        this.file = file;
    }

    /**
     * Takes the place for a child, after leaving the one before.
     *
     * @return false if the child practises in another window
     */
    boolean take(Child child) {
        leave();
        if (file.isEmpty()) {
            return true;
        }
        lock = DrillLock.take(file.get(), child.id());
        return lock.isPresent();
    }

    /** The child may practise elsewhere again. */
    void leave() {
        lock.ifPresent(DrillLock::close);
        lock = Optional.empty();
    }
}
