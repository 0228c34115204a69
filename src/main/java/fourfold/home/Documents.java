// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.store.DataPath;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The folder in which a person looks for documents, and the browser that shows them. */
final class Documents {
    /** The name of the user directories' file and of its line (freedesktop.org, xdg-user-dirs). */
    private static final String FILE = "user-dirs.dirs";

    private static final String VARIABLE = "XDG_DOCUMENTS_DIR";

    /** The folder in which pages are kept, in the folder of documents. */
    private static final String FOLDER = "Fourfold";

    private final String systemName;
    private final Map<String, String> environment;
    private final Path home;
    private final Optional<Path> only;

    Documents(Environment world) {
        this(world.systemName().toLowerCase(Locale.ROOT), world.environment(), world.home(), Optional.empty());
    }

    private Documents(String systemName, Map<String, String> environment, Path home, Optional<Path> only) {
        this.systemName = systemName;
        this.environment = environment;
        this.home = home;
        this.only = only;
    }

    /** The same browser, and this folder in place of the person's documents. */
    Documents keptIn(Path folder) {
        return new Documents(systemName, environment, home, Optional.of(folder));
    }

    /**
     * Where pages go: the folder that the desktop calls documents, by the variable or its file; elsewhere, and where
     * neither says it, {@code Documents} in the person's home.
     */
    Path folder() {
        return only.orElseGet(this::usual);
    }

    private Path usual() {
        Optional<Path> named = isOther()
                ? variable(VARIABLE).or(this::inFile).map(this::expanded).filter(Path::isAbsolute)
                : Optional.empty();
        // The home itself stands for a folder that was switched off.
        return named.filter(folder -> !folder.equals(home))
                .orElseGet(() -> home.resolve("Documents"))
                .resolve(FOLDER);
    }

    private boolean isOther() {
        return !systemName.startsWith("windows") && !systemName.startsWith("mac");
    }

    private Optional<String> variable(String name) {
        return Optional.ofNullable(environment.get(name)).filter(text -> !text.isBlank());
    }

    private Optional<String> inFile() {
        Path file = variable("XDG_CONFIG_HOME")
                .map(DataPath::of)
                .filter(Path::isAbsolute)
                .orElseGet(() -> home.resolve(".config"))
                .resolve(FILE);
        Pattern line = Pattern.compile("\\s*" + VARIABLE + "=\"(.*)\"\\s*");
        try {
            return Files.readAllLines(file).stream()
                    .map(line::matcher)
                    .filter(Matcher::matches)
                    .map(found -> found.group(1))
                    .findFirst();
        } catch (IOException e) {
            // Most homes have no such file.
            return Optional.empty();
        }
    }

    private Path expanded(String written) {
        String rest = written.startsWith("$HOME") ? written.substring("$HOME".length()) : "";
        return rest.isEmpty() && !written.equals("$HOME")
                ? DataPath.of(written)
                : home.resolve(rest.isEmpty() ? "" : rest.substring(1)).normalize();
    }

    /** Shows a page in the person's browser; false where there is no desktop, or nothing that could show it. */
    boolean show(Path page) {
        if (systemName.startsWith("windows")) {
            return started("rundll32", "url.dll,FileProtocolHandler", page.toString());
        }
        if (systemName.startsWith("mac")) {
            return started("open", page.toString());
        }
        boolean desktop =
                variable("DISPLAY").or(() -> variable("WAYLAND_DISPLAY")).isPresent();
        return desktop
                && program("xdg-open")
                        .map(open -> started(open.toString(), page.toString()))
                        .orElse(false);
    }

    /** A program on the person's path: without one, nothing is tried. */
    private Optional<Path> program(String name) {
        for (String folder : environment.getOrDefault("PATH", "").split(java.io.File.pathSeparator)) {
            Path program = DataPath.of(folder).resolve(name);
            if (!folder.isEmpty() && Files.isExecutable(program)) {
                return Optional.of(program);
            }
        }
        return Optional.empty();
    }

    private boolean started(String... words) {
        ProcessBuilder process = new ProcessBuilder(words)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD);
        try {
            process.start();
            return true;
        } catch (IOException e) {
            // The page is made; where it is, is told.
            return false;
        }
    }
}
