package fourfold.commands;

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

/** Whether the archive of classes that README's start names (src/main/package/start.xml) is of use; for {@code --debug}. */
final class ArchiveCheck {
    private static final String NAMED = "-XX:SharedArchiveFile=";

    /** What the build writes in its place if it could make none. */
    private static final String NONE = "-Xshare:auto";

    private static final String BUILD = "; the start takes longer. To make it anew: mvn -q -DskipTests package";

    private ArchiveCheck() {}

    /** One line on what is wrong, why, and what to do; empty if all is well or the start asked for no archive. */
    static Optional<String> complaint() {
        List<String> options = ManagementFactory.getRuntimeMXBean().getInputArguments();
        Optional<Path> archive = options.stream()
                .filter(option -> option.startsWith(NAMED))
                .map(option -> Path.of(option.substring(NAMED.length())))
                .reduce((first, last) -> last);
        if (archive.isEmpty()) {
            return options.contains(NONE)
                    ? Optional.of("The build could make no archive of classes, see target/sharing.log" + BUILD)
                    : Optional.empty();
        }
        try {
            return isUsed()
                    ? Optional.empty()
                    : Optional.of("The archive of classes " + archive.get() + " can't be used: " + reason(archive.get())
                            + BUILD);
        } catch (IOException | JMException e) {
            return Optional.of("Java does not tell whether the archive of classes is used (" + e + ")");
        }
    }

    /** The virtual machine itself tells where a class comes from that is in the archive and that nothing else loads. */
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

    private static String reason(Path archive) throws IOException {
        if (!Files.exists(archive)) {
            return "it is not there";
        }
        try (InputStream in = Files.newInputStream(archive)) {
            // The head of an archive names the virtual machine that made it.
            String head = new String(in.readNBytes(4096), StandardCharsets.ISO_8859_1);
            return head.contains(System.getProperty("java.vm.version"))
                    ? "it does not fit the jars, which were changed or moved"
                    : "another Java made it";
        }
    }
}
