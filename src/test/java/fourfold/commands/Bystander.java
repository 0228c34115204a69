// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.terminal.PtyProgram;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;

/**
 * Another program at the family's file, in a process of its own because locks on a file are between processes: it reads
 * the file, as a program that makes backups does, or holds it to write.
 */
final class Bystander implements AutoCloseable {
    /** What it does at the file. */
    enum Doing {
        READS("BEGIN"),
        HOLDS("BEGIN IMMEDIATE");

        private final String begin;

        Doing(String begin) {
            this.begin = begin;
        }
    }

    private static final String LET_GO = "let go";
    private static final String DONE = "done";

    private final Process process;
    private final BufferedReader said;

    private Bystander(Process process) {
        this.process = process;
        said = process.inputReader(StandardCharsets.UTF_8);
    }

    static Bystander start() {
        ProcessBuilder builder =
                new ProcessBuilder(PtyProgram.java(Bystander.class)).redirectError(ProcessBuilder.Redirect.INHERIT);
        builder.environment().put("CLASSPATH", PtyProgram.classPath());
        builder.environment().put("LC_ALL", "C.UTF-8");
        try {
            return new Bystander(builder.start());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes the file, and stays at it until {@link #letGo}. */
    void take(Doing doing, Path file) {
        tell(doing + " 0 " + file);
    }

    /** Takes the file, and lets go by itself after a time. */
    void takeFor(long millis, Doing doing, Path file) {
        tell(doing + " " + millis + " " + file);
    }

    /** Leaves the file, if it is at one. */
    void letGo() {
        tell(LET_GO);
    }

    private void tell(String line) {
        try {
            process.outputWriter(StandardCharsets.UTF_8).write(line + "\n");
            process.outputWriter().flush();
            String answer = said.readLine();
            if (!DONE.equals(answer)) {
                throw new AssertionError(line + ": " + answer);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        process.destroyForcibly();
    }

    /** Does line by line what it is told, until nobody tells it any more. */
    public static void main(String[] arguments) throws IOException, SQLException {
        BufferedReader told = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        Optional<Connection> at = Optional.empty();
        for (String line = told.readLine(); line != null; line = told.readLine()) {
            if (at.isPresent()) {
                at.get().close();
                at = Optional.empty();
            }
            if (line.equals(LET_GO)) {
                System.out.println(DONE);
                continue;
            }
            String[] words = line.split(" ", 3);
            Connection connection = taken(Doing.valueOf(words[0]), words[2]);
            System.out.println(DONE);
            long millis = Long.parseLong(words[1]);
            if (millis > 0) {
                LockSupport.parkNanos(millis * 1_000_000);
                connection.close();
            } else {
                at = Optional.of(connection);
            }
        }
    }

    private static Connection taken(Doing doing, String file) throws SQLException {
        Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA busy_timeout = 10000");
            statement.execute(doing.begin);
            // Only with the first row read does a reader take its place.
            statement.execute("SELECT COUNT(*) FROM answer");
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }
}
