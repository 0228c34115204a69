package fourfold.planted.only_the_store_speaks_sql.export;

import java.sql.SQLException;

/** Breaks the map on purpose: only the store speaks SQL. */
public final class Query {
    private Query() {}

    public static int code(SQLException exception) {
        return exception.getErrorCode();
    }
}
