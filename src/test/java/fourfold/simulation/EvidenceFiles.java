// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;

/** The published numbers in the test resources; each file names its source and licence in its head. */
final class EvidenceFiles {
    private EvidenceFiles() {}

    /** The rows of a file without its head and the names of its columns. */
    static List<String[]> rows(String name) throws IOException {
        try (InputStream in = EvidenceFiles.class.getResourceAsStream("/evidence/" + name)) {
            String text = new String(Objects.requireNonNull(in, name).readAllBytes(), StandardCharsets.UTF_8);
            return text.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> line.split(",", -1))
                    .toList();
        }
    }
}
