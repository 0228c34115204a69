// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.only_store_and_upkeep_speak_sql.records;

import java.sql.SQLException;

/** Breaks the map on purpose: only store and upkeep speaks SQL. */
public final class Query {
    private Query() {}

    public static int code(SQLException exception) {
        return exception.getErrorCode();
    }
}
