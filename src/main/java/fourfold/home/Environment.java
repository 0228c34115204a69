// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.scheduling.LastingGain;
import fourfold.scheduling.Scheduler;
import fourfold.terminal.SessionClock;
import java.io.BufferedReader;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * What surrounds the program: its streams, environment and clock.
 *
 * @param in lines typed
 * @param out what is printed
 * @param data where a file's text goes when no file is named: the same characters as in the file, always UTF-8
 * @param err where errors are printed
 * @param environment environment variables
 * @param home the user's home folder
 * @param systemName the operating system's name
 * @param unicode whether what is printed can hold more than ASCII
 * @param clock makes the one clock of a run
 */
public record Environment(
        BufferedReader in,
        PrintWriter out,
        PrintWriter data,
        PrintWriter err,
        Map<String, String> environment,
        Path home,
        String systemName,
        boolean unicode,
        Supplier<SessionClock> clock) {
    /** A clock that reads the computer's time, time zone and monotonic clock. */
    public static SessionClock systemClock() {
        return new SessionClock(Instant::now, ZoneId.systemDefault(), System::nanoTime);
    }

    /**
     * The language that is asked for: by FOURFOLD_LANGUAGE, else by the household, else by the usual variables
     * (POSIX.1-2017, 8.2).
     *
     * @param household the language set for the household
     */
    public Locale language(Optional<String> household) {
        return language(environment, household);
    }

    /** The same by these variables. */
    public static Locale language(Map<String, String> environment, Optional<String> household) {
        List<String> wanted = Arrays.asList(
                environment.get("FOURFOLD_LANGUAGE"),
                household.orElse(""),
                environment.get("LC_ALL"),
                environment.get("LC_MESSAGES"),
                environment.get("LANG"));
        for (String one : wanted) {
            if (one != null && !one.isEmpty()) {
                return Locale.forLanguageTag(one.split("[_.@-]", -1)[0]);
            }
        }
        return Locale.forLanguageTag(Locale.getDefault().getLanguage());
    }

    /** The policy that chooses questions. */
    public Scheduler scheduler() {
        return new LastingGain();
    }
}
