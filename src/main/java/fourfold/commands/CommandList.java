// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Environment;
import java.util.Arrays;
import java.util.List;
import picocli.CommandLine;

/**
 * The program's commands, in the order in which the help shows them. Only those that are named on the command line are
 * made: looking at one costs the options' library several milliseconds, and all of them more than the rest of the start.
 */
final class CommandList {
    static final List<String> NAMES = List.of(
            "drill",
            "tour",
            "grid",
            "family",
            "plan",
            "rates",
            "print",
            "focus",
            "hold",
            "reset",
            "open",
            "close",
            "calendar",
            "taught",
            "away",
            "note",
            "year",
            "today",
            "children",
            "export",
            "gate",
            "history",
            "settings",
            "backup",
            "restore",
            "verify",
            "salvage",
            "merge",
            "together",
            "import",
            "help",
            "completion",
            "manual");

    private CommandList() {}

    /** Adds what these arguments may need: the commands they name, or all where they name none or ask for help. */
    static void addTo(CommandLine line, String... arguments) {
        List<String> words = Arrays.asList(arguments);
        boolean all = words.contains("-h") || words.contains("--help") || namesNone(words);
        for (String name : NAMES) {
            if (all || words.contains(name)) {
                line.addSubcommand(name, command(name));
            }
        }
    }

    /** The whole program's command line, as its help shows it. */
    static CommandLine all(Environment world) {
        CommandLine line = new CommandLine(new App(world));
        addTo(line);
        line.setResourceBundle(App.words(world).help());
        return line;
    }

    static boolean namesNone(List<String> words) {
        for (String word : words) {
            if (NAMES.contains(word)) {
                return false;
            }
        }
        return true;
    }

    private static Object command(String name) {
        return switch (name) {
            case "drill" -> new DrillCommand();
            case "tour" -> new TourCommand();
            case "grid" -> new GridCommand();
            case "family" -> new FamilyCommand();
            case "plan" -> new PlanCommand();
            case "rates" -> new RatesCommand();
            case "print" -> new PrintCommand();
            case "focus" -> new FocusCommand();
            case "hold" -> new HoldCommand();
            case "reset" -> new ResetCommand();
            case "open" -> new OpenCommand();
            case "close" -> new CloseCommand();
            case "calendar" -> new CalendarCommand();
            case "taught" -> new TaughtCommand();
            case "away" -> new AwayCommand();
            case "note" -> new NoteCommand();
            case "year" -> new YearCommand();
            case "today" -> new TodayCommand();
            case "children" -> new ChildrenCommand();
            case "export" -> new ExportCommand();
            case "gate" -> new GateCommand();
            case "history" -> new HistoryCommand();
            case "settings" -> new SettingsCommand();
            case "backup" -> new BackupCommand();
            case "restore" -> new RestoreCommand();
            case "verify" -> new VerifyCommand();
            case "salvage" -> new SalvageCommand();
            case "merge" -> new MergeCommand();
            case "together" -> new TogetherCommand();
            case "import" -> new ImportCommand();
            case "help" -> new HelpCommand();
            case "completion" -> new CompletionCommand();
            case "manual" -> new ManualCommand();
            default -> throw new IllegalArgumentException("no command " + name);
        };
    }
}
