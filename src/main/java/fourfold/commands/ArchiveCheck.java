// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.words.Words;
import java.io.IOException;
import java.io.InputStream;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.management.JMException;
import javax.management.ObjectName;

/** Whether an archive of the program's classes, of the build or of a starter, is of use; for {@code --debug}. */
final class ArchiveCheck {
    private static final String NAMED = "-XX:SharedArchiveFile=";

    /** What the build writes in its place if it could make none. */
    private static final String NONE = "-Xshare:auto";

    /** What the starter of the forms (src/main/package/fourfold) says where it names no archive. */
    private static final String TOLD = "fourfold.archive";

    private ArchiveCheck() {}

    /** Whether an archive is used, in a few words; what is wrong with it, if it was asked for and is of no use. */
    static String found(Words words) {
        // A Java that holds only what the program needs can't be asked.
        if (ModuleLayer.boot().findModule("jdk.management").isEmpty()) {
            return words.say("debug.archive.unasked");
        }
        return complaint(words)
                .orElseGet(() -> words.say(isAskedFor() ? "debug.archive.used" : "debug.archive." + unnamed()));
    }

    /** Why the start named none, as far as a starter has told. */
    private static String unnamed() {
        String told = System.getProperty(TOLD, "");
        return told.equals("begun") || told.equals("unwritable") ? told : "unnamed";
    }

    private static boolean isAskedFor() {
        return ManagementFactory.getRuntimeMXBean().getInputArguments().stream().anyMatch(o -> o.startsWith(NAMED));
    }

    /** One line on what is wrong, why, and what to do; empty if all is well or the start asked for no archive. */
    static Optional<String> complaint(Words words) {
        List<String> options = ManagementFactory.getRuntimeMXBean().getInputArguments();
        Optional<Path> archive = options.stream()
                .filter(option -> option.startsWith(NAMED))
                .map(option -> Path.of(option.substring(NAMED.length())))
                .reduce((first, last) -> last);
        if (archive.isEmpty()) {
            return options.contains(NONE) ? Optional.of(words.say("debug.archive.none")) : Optional.empty();
        }
        try {
            return isUsed()
                    ? Optional.empty()
                    : Optional.of(words.say("debug.archive." + reason(archive.get()), archive.get()));
        } catch (IOException | JMException e) {
            return Optional.of(words.say("debug.archive.unknown", e));
        }
    }

    /** The virtual machine itself reports where a class comes from that is in the archive and that nothing else loads. */
    private static boolean isUsed() throws IOException, JMException {
        Path log = Files.createTempFile("fourfold", ".log");
        try {
            log(log, "class+load=info");
            String loaded = ArchiveRun.class.getName() + " source: shared objects file";
            log(log, "all=off");
            return Files.readString(log).contains(loaded);
        } finally {
            Files.deleteIfExists(log);
        }
    }

    private static void log(Path file, String what) throws JMException {
        ManagementFactory.getPlatformMBeanServer()
                .invoke(
                        new ObjectName("com.sun.management:type=DiagnosticCommand"),
                        "vmLog",
                        new Object[] {new String[] {"output=\"" + file + "\"", "what=" + what}},
                        new String[] {String[].class.getName()});
    }

    /** The last part of the text's key. */
    private static String reason(Path archive) throws IOException {
        if (!archive.startsWith("target")) {
            return "installed";
        }
        if (!Files.exists(archive)) {
            return "gone";
        }
        try (InputStream in = Files.newInputStream(archive)) {
            // The head of an archive names the virtual machine that made it.
            String head = new String(in.readNBytes(4096), StandardCharsets.ISO_8859_1);
            return head.contains(System.getProperty("java.vm.version")) ? "moved" : "java";
        }
    }
}
