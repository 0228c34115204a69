// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Where the family's file and the program's cache live on each system. */
public final class DataPath {
    /** The folder of the file; it is made when needed. */
    public static final String FOLDER = "fourfold";

    /** The file. */
    public static final String FILE = "fourfold.db";

    /** The environment variable that names another file. */
    public static final String VARIABLE = "FOURFOLD_STORE";

    private DataPath() {}

    /**
     * The usual file: as {@value #VARIABLE} says, or {@code fourfold/fourfold.db} in the system's place for a person's
     * data: {@code $XDG_DATA_HOME} or {@code ~/.local/share} (XDG Base Directory Specification 0.8; a relative value is
     * ignored, as it demands), {@code ~/Library/Application Support} on macOS, {@code %LOCALAPPDATA%} on Windows.
     *
     * @param osName the system property {@code os.name}
     * @param environment the environment variables
     * @param home the person's home folder
     * @throws RecordsFailure if a variable holds what can't be a path here, or if no home folder is known
     */
    public static Path usual(String osName, Map<String, String> environment, Path home) {
        Optional<String> chosen = variable(environment, VARIABLE);
        if (chosen.isPresent()) {
            return of(chosen.get());
        }
        Path data = switch (Kind.of(osName)) {
            case WINDOWS ->
                folder(environment, "LOCALAPPDATA", home.resolve("AppData").resolve("Local"));
            case MAC -> home.resolve("Library").resolve("Application Support");
            case OTHER ->
                folder(environment, "XDG_DATA_HOME", home.resolve(".local").resolve("share"));
        };
        if (!data.isAbsolute()) {
            throw new RecordsFailure(Task.USE_FILE_NAME, FILE, Problem.of(Reason.NO_HOME));
        }
        return data.resolve(FOLDER).resolve(FILE);
    }

    /**
     * The home folder of the person who runs the program: what HOME says (POSIX.1-2017, 8.3), which Java does not ask,
     * else what Java took from the system's list of accounts. An empty path where neither names a folder: an account
     * that is on no list has {@code ?} there.
     *
     * @param javas the system property {@code user.home}
     */
    public static Path home(String osName, Map<String, String> environment, String javas) {
        Optional<Path> told = Kind.of(osName) == Kind.WINDOWS
                ? Optional.empty()
                : variable(environment, "HOME").map(DataPath::of).filter(Path::isAbsolute);
        return told.orElseGet(
                () -> Optional.of(of(javas)).filter(Path::isAbsolute).orElse(Path.of("")));
    }

    /**
     * The file a person named.
     *
     * @throws RecordsFailure if the text can't be a path here
     */
    public static Path of(String written) {
        // A variable that could not be decoded holds the sign for an unknown character.
        if (written.indexOf('\uFFFD') >= 0) {
            throw inexpressible(written);
        }
        try {
            return Path.of(written);
        } catch (InvalidPathException e) {
            throw inexpressible(written);
        }
    }

    /** The folder for what can be made again at any time. */
    static Path cache(String osName, Map<String, String> environment, Path home) {
        return switch (Kind.of(osName)) {
            case WINDOWS ->
                folder(environment, "LOCALAPPDATA", home.resolve("AppData").resolve("Local"))
                        .resolve(FOLDER)
                        .resolve("cache");
            case MAC -> home.resolve("Library").resolve("Caches").resolve(FOLDER);
            case OTHER ->
                folder(environment, "XDG_CACHE_HOME", home.resolve(".cache")).resolve(FOLDER);
        };
    }

    /** Says that a name can't be written in the language setting in force. */
    static RecordsFailure inexpressible(String written) {
        return new RecordsFailure(
                Task.USE_FILE_NAME, Failure.oneLine(written), Problem.of(Reason.NAME_NOT_EXPRESSIBLE));
    }

    private static Path folder(Map<String, String> environment, String name, Path otherwise) {
        return variable(environment, name)
                .map(DataPath::of)
                .filter(Path::isAbsolute)
                .orElse(otherwise);
    }

    private static Optional<String> variable(Map<String, String> environment, String name) {
        return Optional.ofNullable(environment.get(name)).filter(text -> !text.isBlank());
    }

    private enum Kind {
        WINDOWS,
        MAC,
        OTHER;

        static Kind of(String osName) {
            String name = osName.toLowerCase(Locale.ROOT);
            if (name.startsWith("windows")) {
                return WINDOWS;
            }
            return name.startsWith("mac") ? MAC : OTHER;
        }
    }
}
