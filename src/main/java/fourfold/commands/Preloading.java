package fourfold.commands;

import fourfold.home.Home;
import fourfold.terminal.TerminalSession;
import java.text.DateFormatSymbols;
import java.util.List;
import java.util.Set;

/**
 * Loads what the program is about to need on a second processor, while the first still reads the command line and the
 * family's file. It changes nothing and decides nothing: whatever it has not loaded, or could not, is loaded at first use.
 */
final class Preloading {
    private static final Set<String> WITHOUT_STORE =
            Set.of("-h", "--help", "-V", "--version", "help", "completion", "manual");

    private Preloading() {}

    static void begin(String... arguments) {
        List<String> words = List.of(arguments);
        if (words.stream().anyMatch(WITHOUT_STORE::contains)) {
            return;
        }
        // The driver asks for them whenever a file is opened.
        beside("ahead: dates", DateFormatSymbols::getInstance);
        beside("ahead: store", Home::loadDriver);
        boolean drawn = !words.contains("--plain") && (words.contains("drill") || CommandList.namesNone(words));
        if (drawn) {
            beside("ahead: screen", TerminalSession::loadLibrary);
        }
    }

    private static void beside(String name, Runnable work) {
        Thread thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }
}
