// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The table of one benchmark: printed, and kept in the tree as the last one. */
final class Report {
    private static final Path FOLDER = Path.of("src", "test", "resources", "benchmark");

    private final String name;
    private final StringBuilder text = new StringBuilder();
    private final List<String[]> rows = new ArrayList<>();

    Report(String name, String title) {
        this.name = name;
        line(title);
        line("Machine: a virtual machine with %d cores, shared with other work; load average %s at the start; Java %s."
                .formatted(Runtime.getRuntime().availableProcessors(), load(), System.getProperty("java.version")));
    }

    /** Adds a line of words. */
    void line(String words) {
        endTable();
        text.append(words).append('\n');
    }

    /** Adds a row of the table that is being written; the first is its head. */
    void row(Object... cells) {
        String[] words = new String[cells.length];
        for (int i = 0; i < cells.length; i++) {
            words[i] = cells[i] instanceof Double d ? String.format(Locale.ROOT, "%.2f", d) : String.valueOf(cells[i]);
        }
        rows.add(words);
    }

    /** Prints everything and writes it to the tree. */
    void write() {
        line("Load average at the end: " + load() + ".");
        System.out.println(text);
        try {
            Files.createDirectories(FOLDER);
            Files.writeString(FOLDER.resolve(name + ".txt"), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void endTable() {
        if (rows.isEmpty()) {
            return;
        }
        int columns = rows.stream().mapToInt(r -> r.length).max().orElse(0);
        int[] widths = new int[columns];
        for (String[] row : rows) {
            for (int i = 0; i < row.length; i++) {
                widths[i] = Math.max(widths[i], row[i].length());
            }
        }
        text.append('\n');
        for (String[] row : rows) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < row.length; i++) {
                String blanks = " ".repeat(widths[i] - row[i].length());
                line.append(i == 0 ? row[i] + blanks : "  " + blanks + row[i]);
            }
            text.append(line.toString().stripTrailing()).append('\n');
        }
        text.append('\n');
        rows.clear();
    }

    /** How many programs wanted a processor on average: in the last minute, five minutes and fifteen. */
    static String load() {
        try {
            return String.join(
                    " ",
                    List.of(Files.readString(Path.of("/proc/loadavg")).split(" ", -1))
                            .subList(0, 3));
        } catch (IOException e) {
            return "unknown";
        }
    }
}
