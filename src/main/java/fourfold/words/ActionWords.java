package fourfold.words;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ParentAction;
import fourfold.progress.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Deeds in plain words. */
public final class ActionWords {
    private ActionWords() {}

    /** Deeds that were done together: of one kind they are told as one, others are counted. */
    public static String told(Words words, List<ParentAction> deeds) {
        ParentAction last = deeds.get(deeds.size() - 1);
        List<Family> families =
                deeds.stream().flatMap(d -> family(d).stream()).distinct().toList();
        boolean alike = deeds.stream().allMatch(d -> d.getClass() == last.getClass());
        if (alike && families.size() == deeds.size()) {
            return told(words, last, named(words, families));
        }
        String one = told(words, last);
        return deeds.size() == 1 ? one : words.say("deed.more", one, deeds.size() - 1);
    }

    public static String told(Words words, ParentAction deed) {
        return told(words, deed, family(deed).map(words::name).orElse(""));
    }

    private static String told(Words words, ParentAction deed, String families) {
        if (deed instanceof ParentAction.Focus) {
            return words.say("deed.focus", families);
        } else if (deed instanceof ParentAction.Hold) {
            return words.say("deed.hold", families);
        } else if (deed instanceof ParentAction.Release) {
            return words.say("deed.release", families);
        } else if (deed instanceof ParentAction.Reset) {
            return words.say("deed.reset", families);
        } else if (deed instanceof ParentAction.OpenTable open) {
            return words.say("deed.open", open.table());
        } else if (deed instanceof ParentAction.CloseTable close) {
            return words.say("deed.close", close.table());
        } else if (deed instanceof ParentAction.Order order) {
            return words.say(
                    "deed.order", order.tables().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        } else if (deed instanceof ParentAction.Choose choose) {
            return chosen(words, choose);
        }
        return words.say("deed.undo");
    }

    /** A setting in the words of its page; what this program does not know is told as it was kept. */
    private static String chosen(Words words, ParentAction.Choose choose) {
        String text = choose.chosen();
        return switch (choose.setting()) {
            case ParentAction.Choose.NAME -> words.say("deed.name", text);
            case ParentAction.Choose.AWAY -> words.say(text.equals("yes") ? "deed.away" : "deed.back");
            case ParentAction.Choose.SAME -> words.say("deed.same");
            default ->
                Stream.of(Setting.values())
                        .filter(s ->
                                s.key().equals(choose.setting()) && s.offered().contains(text))
                        .findFirst()
                        .map(s -> words.say("deed.choose", words.say("settings." + s.key()), words.value(s, text)))
                        .orElseGet(() -> words.say("deed.choose", choose.setting(), text));
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

    private static Optional<Family> family(ParentAction deed) {
        if (deed instanceof ParentAction.Focus focus) {
            return Optional.of(focus.family());
        } else if (deed instanceof ParentAction.Hold hold) {
            return Optional.of(hold.family());
        } else if (deed instanceof ParentAction.Release release) {
            return Optional.of(release.family());
        } else if (deed instanceof ParentAction.Reset reset) {
            return Optional.of(reset.family());
        }
        return Optional.empty();
    }
}
