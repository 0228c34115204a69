// SPDX-License-Identifier: Apache-2.0
package fourfold.words;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ParentAction;
import fourfold.progress.Dates;
import fourfold.progress.Progress;
import fourfold.progress.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Actions in plain words. */
public final class ActionWords {
    private ActionWords() {}

    /** Actions that were done together: of one kind they make one text, of others the rest is counted. */
    public static String told(Words words, List<ParentAction> actions) {
        ParentAction last = actions.get(actions.size() - 1);
        List<Family> families =
                actions.stream().flatMap(d -> family(d).stream()).distinct().toList();
        boolean alike = actions.stream().allMatch(d -> d.getClass() == last.getClass());
        if (alike && families.size() == actions.size()) {
            return told(words, last, named(words, families));
        }
        if (actions.stream().allMatch(ParentAction.CalendarEntry.class::isInstance)) {
            return actions.stream().map(a -> told(words, a)).sorted().collect(Collectors.joining("; "));
        }
        String one = told(words, last);
        return actions.size() == 1 ? one : words.say("action.more", one, actions.size() - 1);
    }

    /** What of the parent's acts holds now, a sentence for each kind; none where nothing does. */
    public static List<String> inForce(Words words, Progress progress) {
        List<String> told = new ArrayList<>();
        if (progress.isAllSetAside()) {
            told.add(words.say("grid.setaside"));
        } else if (Dates.isBeforeAll(progress)) {
            told.add(words.say("grid.beforedate"));
        }
        CalendarWords.waiting(words, progress).ifPresent(told::add);
        addFamilies(told, words, "acts.focused", progress::isFocused);
        addFamilies(told, words, "acts.held", progress::isHeld);
        addFamilies(told, words, "acts.again", progress::isToBeginAgain);
        addTables(told, words, "acts.opened", progress.steering().opened().stream());
        addTables(told, words, "acts.taught", Dates.taughtLately(progress).stream());
        addTables(told, words, "acts.closed", progress.steering().closed().stream());
        return told;
    }

    private static void addFamilies(List<String> told, Words words, String key, Predicate<Family> holds) {
        List<Family> families = Families.all().stream().filter(holds).toList();
        if (!families.isEmpty()) {
            told.add(words.say(key, named(words, families)));
        }
    }

    private static void addTables(List<String> told, Words words, String key, Stream<Integer> tables) {
        String names = tables.sorted().map(String::valueOf).collect(Collectors.joining(", "));
        if (!names.isEmpty()) {
            told.add(words.say(key, names));
        }
    }

    /** One action. */
    public static String told(Words words, ParentAction action) {
        return told(words, action, family(action).map(words::name).orElse(""));
    }

    private static String told(Words words, ParentAction action, String families) {
        if (action instanceof ParentAction.Focus) {
            return words.say("action.focus", families);
        } else if (action instanceof ParentAction.Hold) {
            return words.say("action.hold", families);
        } else if (action instanceof ParentAction.Release) {
            return words.say("action.release", families);
        } else if (action instanceof ParentAction.Reset) {
            return words.say("action.reset", families);
        } else if (action instanceof ParentAction.OpenTable open) {
            return words.say("action.open", open.table());
        } else if (action instanceof ParentAction.CloseTable close) {
            return words.say("action.close", close.table());
        } else if (action instanceof ParentAction.Order order) {
            return words.say(
                    "action.order", order.tables().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        } else if (action instanceof ParentAction.Choose choose) {
            return chosen(words, choose);
        } else if (action instanceof ParentAction.Undo) {
            return words.say("action.undo");
        }
        return CalendarWords.told(words, action);
    }

    /** A setting in the words of its page; what this program does not know is shown as it was kept. */
    private static String chosen(Words words, ParentAction.Choose choose) {
        String text = choose.chosen();
        return switch (choose.setting()) {
            case ParentAction.Choose.NAME -> words.say("action.name", text);
            case ParentAction.Choose.AWAY -> words.say(text.equals("yes") ? "action.away" : "action.back");
            case ParentAction.Choose.SAME -> words.say("action.same");
            default ->
                Stream.of(Setting.values())
                        .filter(s ->
                                s.key().equals(choose.setting()) && s.offered().contains(text))
                        .findFirst()
                        .map(s -> words.say("action.choose", words.say("settings." + s.key()), words.value(s, text)))
                        .orElseGet(() -> words.say("action.choose", choose.setting(), text));
        };
    }

    /** Families as a parent would say them: all of them, a table, or one after the other. */
    private static String named(Words words, List<Family> families) {
        Set<Family> all = Set.copyOf(families);
        if (all.equals(Set.copyOf(Families.all()))) {
            return words.say("grid.allfamilies");
        }
        List<String> names = new ArrayList<>();
        for (int table = 1; table <= Families.LARGEST_FACTOR; table++) {
            if (all.equals(Set.copyOf(Families.inTable(table)))) {
                return words.say("grid.thetable", table);
            }
        }
        families.forEach(f -> names.add(words.name(f)));
        return String.join(", ", names);
    }

    private static Optional<Family> family(ParentAction action) {
        if (action instanceof ParentAction.Focus focus) {
            return Optional.of(focus.family());
        } else if (action instanceof ParentAction.Hold hold) {
            return Optional.of(hold.family());
        } else if (action instanceof ParentAction.Release release) {
            return Optional.of(release.family());
        } else if (action instanceof ParentAction.Reset reset) {
            return Optional.of(reset.family());
        }
        return Optional.empty();
    }
}
