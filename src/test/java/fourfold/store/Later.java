// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import java.util.Arrays;
import java.util.List;
import org.sqlite.SQLiteDataSource;

/** A schema with one more step than today's. */
public final class Later {
    private Later() {}

    public static Schema schema() {
        SQLiteDataSource nowhere = new SQLiteDataSource();
        nowhere.setUrl("jdbc:sqlite::memory:");
        List<String> locations = List.of("classpath:db/migration", "classpath:fourfold/store/later");
        List<Schema.Step> steps = Arrays.stream(
                        Migration.flyway(nowhere, locations, "").info().all())
                .map(i -> new Schema.Step(i.getVersion().toString(), i.getChecksum()))
                .toList();
        return new Schema(locations, steps);
    }
}
