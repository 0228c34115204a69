// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import fourfold.home.Home;
import fourfold.terminal.Rehearsal;
import fourfold.words.Words;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Loads what the program is about to need on a second processor, while the first still reads the command line and the
 * family's file. It changes nothing and decides nothing: whatever it has not loaded, or could not, is loaded at first use.
 * It is written without lambdas and streams: the first of them takes longer than all that is begun here, and the file's
 * driver, which takes longest, should not wait for it.
 */
final class Preloading {
    private static final Set<String> WITHOUT_STORE =
            Set.of("-h", "--help", "-V", "--version", "help", "completion", "manual");

    private Preloading() {}

    static void begin(String... arguments) {
        List<String> words = Arrays.asList(arguments);
        for (String word : words) {
            if (WITHOUT_STORE.contains(word)) {
                return;
            }
        }
        beside(Part.STORE);
        boolean drawn = !words.contains("--plain") && (words.contains("drill") || CommandList.namesNone(words));
        beside(drawn ? Part.SCREEN : Part.WORDS);
    }

    private static void beside(Part part) {
        Thread thread = new Thread(part, "ahead: " + part);
        thread.setDaemon(true);
        thread.start();
    }

    private enum Part implements Runnable {
        STORE {
            @Override
            public void run() {
                Home.loadDriver();
            }
        },
        SCREEN {
            @Override
            public void run() {
                Rehearsal.ofLibrary();
                WORDS.run();
            }
        },
        /** Those of this computer's language: a household may have chosen another, which is read when it is known. */
        WORDS {
            @Override
            public void run() {
                Words.of(Environment.language(System.getenv(), Optional.empty()))
                        .say("home.who");
            }
        }
    }
}
