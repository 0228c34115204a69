package fourfold.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/** A whole copy of an open store, made beside it and checked. */
final class Copy {
    private Copy() {}

    /**
     * Copies the store to a new file beside it, say {@code fourfold-before-2.db}, for its owner alone.
     *
     * @param why what the copy's name says about it
     * @return the copy
     * @throws SQLException if it can't be made, or is not whole
     */
    static Path make(Connection connection, Path file, String why) throws SQLException, IOException {
        Path copy = fresh(file, why);
        try {
            // The library takes an empty file over and leaves its rights as they are.
            Database.run(connection, "VACUUM INTO ?", values -> values.setString(1, copy.toString()));
            try (FileChannel channel = FileChannel.open(copy, StandardOpenOption.WRITE)) {
                channel.force(true);
            }
            check(copy);
            return copy;
        } catch (SQLException | IOException e) {
            Files.deleteIfExists(copy);
            throw e;
        }
    }

    /** Reads every page of the copy, without changing it. */
    static void check(Path copy) throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + copy);
        try (Connection connection = source.getConnection()) {
            List<String> found =
                    Database.query(connection, "PRAGMA integrity_check", none -> {}, row -> row.getString(1));
            if (!found.equals(List.of("ok"))) {
                throw new SQLException("the copy " + Failure.shown(copy) + " is not whole; check the disk");
            }
        }
    }

    private static Path fresh(Path file, String why) throws IOException {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        String stem = dot > 0 ? name.substring(0, dot) : name;
        String ending = dot > 0 ? name.substring(dot) : "";
        for (int attempt = 1; ; attempt++) {
            String number = attempt == 1 ? "" : "-" + attempt;
            Path copy = file.resolveSibling(stem + "-" + why + number + ending);
            if (Rights.makeFile(copy)) {
                return copy;
            }
        }
    }
}
