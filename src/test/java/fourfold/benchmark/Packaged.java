// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

import java.util.ArrayList;
import java.util.List;

/** The commands that a benchmark starts. */
final class Packaged {
    private static final String JAVA = System.getProperty("java.home") + "/bin/java";

    /** The options, beside the archive of classes, with which README opens the program. */
    static final List<String> OPENED = List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC");

    private static final boolean FIRST = Boolean.getBoolean("fourfold.first");

    private Packaged() {}

    /** The packaged program as README opens it: with the build's archive of classes. */
    static List<String> opened(String... arguments) {
        return opened(List.of(), arguments);
    }

    /** The same with more options for the virtual machine. */
    static List<String> opened(List<String> options, String... arguments) {
        List<String> command = java();
        command.addAll(options);
        command.add("@target/fourfold.start");
        command.addAll(List.of(arguments));
        return command;
    }

    /** The packaged jar, with options for the virtual machine if any. */
    static List<String> program(List<String> options, String... arguments) {
        List<String> command = java();
        command.addAll(options);
        command.addAll(List.of("-jar", System.getProperty("fourfold.jar", "target/fourfold.jar")));
        command.addAll(List.of(arguments));
        return command;
    }

    static List<String> program(String... arguments) {
        return program(List.of(), arguments);
    }

    /** A main class of the benchmarks, on the class path of this run. */
    static List<String> bare(Class<?> main, String... arguments) {
        List<String> command = java();
        command.add(main.getName());
        command.addAll(List.of(arguments));
        return command;
    }

    /** What is measured goes before who measures it: programs of one priority do not interrupt each other. */
    private static List<String> java() {
        List<String> command = new ArrayList<>(FIRST ? List.of("chrt", "-r", "20") : List.of());
        command.add(JAVA);
        return command;
    }

    /**
     * Asks the system to let this process and all it starts go before others (SCHED_RR, sched(7)), so that what else the
     * machine does counts little; says in words whether it was granted.
     */
    static String goFirst() {
        if (!FIRST) {
            return "All programs ran with the usual priority.";
        }
        try {
            long pid = ProcessHandle.current().pid();
            int code = new ProcessBuilder("chrt", "-a", "-r", "-p", "10", Long.toString(pid))
                    .inheritIO()
                    .start()
                    .waitFor();
            return code == 0
                    ? "The measuring program and all it started went before other programs (real-time priority)."
                    : "Real-time priority was not granted.";
        } catch (java.io.IOException | InterruptedException e) {
            return "Real-time priority could not be asked for.";
        }
    }

    /** Runs a command without a terminal; gives how long it took, in nanoseconds. */
    static long run(List<String> command, java.util.Map<String, String> environment) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .redirectOutput(ProcessBuilder.Redirect.PIPE);
        builder.environment().putAll(environment);
        long before = System.nanoTime();
        Process process = builder.start();
        process.getInputStream().readAllBytes();
        int code = process.waitFor();
        long after = System.nanoTime();
        if (code != 0) {
            throw new IllegalStateException(command + " ended with " + code);
        }
        return after - before;
    }
}
