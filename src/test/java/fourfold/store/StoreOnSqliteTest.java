// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;

/** The laws on a real file, as the family has it. */
class StoreOnSqliteTest extends StoreLaws {
    @TempDir
    private Path folder = Path.of("");

    @Override
    Store fresh() {
        return Store.open(MadeOnce.EMPTY.at(folder.resolve("family.db")));
    }
}
