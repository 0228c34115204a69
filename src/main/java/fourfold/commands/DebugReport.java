// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import fourfold.log.RecordsFailure;
import fourfold.terminal.Abilities;
import fourfold.words.Words;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the program found around it, for {@code --debug}: ten lines that someone who asks for help can hand on. */
final class DebugReport {
    private static final List<String> OF_LANGUAGE =
            List.of("FOURFOLD_LANGUAGE", "LC_ALL", "LC_MESSAGES", "LC_CTYPE", "LANG");
    private static final List<String> OF_TERMINAL = List.of("TERM", "COLORTERM", "NO_COLOR", "CLICOLOR");

    private DebugReport() {}

    /** The lines; no answer and no child's name is in them. */
    static List<String> lines(App app) {
        Environment world = app.world();
        Words words = App.words(world);
        Map<String, String> variables = world.environment();
        return Stream.of(
                        words.say("debug.program", Version.words(), started()),
                        words.say("debug.system", properties("os.name", "os.version", "os.arch")),
                        words.say("debug.java", properties("java.vendor", "java.vm.version", "java.home")),
                        words.say("debug.archive", ArchiveCheck.found(words)),
                        words.say("debug.file", file(app, words)),
                        words.say("debug.folders", world.home(), System.getProperty("java.io.tmpdir")),
                        words.say("debug.language", words.language(), told(variables, OF_LANGUAGE)),
                        words.say(
                                "debug.letters",
                                properties("stdout.encoding", "native.encoding", "sun.jnu.encoding", "file.encoding")),
                        words.say("debug.terminal", Abilities.found(variables), told(variables, OF_TERMINAL)),
                        words.say("debug.clock", world.clock().get().now(), ZoneId.systemDefault()))
                .toList();
    }

    private static String file(App app, Words words) {
        if (app.isDemo()) {
            return words.say("debug.file.demo");
        }
        try {
            Path file = app.place();
            return file + ", "
                    + (Files.exists(file)
                            ? words.say("debug.file.size", Files.size(file))
                            : words.say("debug.file.none"));
        } catch (IOException e) {
            return words.say("debug.file.none");
        } catch (RecordsFailure e) {
            return words.failure(e);
        }
    }

    /** Where the program's classes are. */
    private static String started() {
        return String.valueOf(System.getProperty("java.class.path"));
    }

    private static String properties(String... names) {
        return Stream.of(names).map(System::getProperty).map(String::valueOf).collect(Collectors.joining(" "));
    }

    private static String told(Map<String, String> variables, List<String> names) {
        return names.stream()
                .filter(variables::containsKey)
                .map(name -> name + "=" + variables.get(name))
                .collect(Collectors.joining(" "));
    }
}
