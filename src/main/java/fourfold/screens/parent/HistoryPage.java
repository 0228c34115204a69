package fourfold.screens.parent;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/** What the parent did, newest first, each with its time; what was taken back says so. */
public final class HistoryPage implements MutablePage {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    private final Words words;
    private final Child child;
    private final List<String> lines;
    private int first;

    HistoryPage(PageContext context, Child child) {
        this.words = context.words();
        this.child = child;
        this.lines = lines(words, context.home().records().actions(child));
    }

    /** All acts in words, newest first; undos are told at what they took back. */
    public static List<String> lines(Words words, List<ActionRecord> acts) {
        Set<UUID> inForce = new HashSet<>();
        ActionRecord.inForce(acts).forEach(a -> inForce.add(a.id()));
        List<String> lines = new ArrayList<>();
        for (List<ActionRecord> together : together(acts)) {
            ActionRecord first = together.get(0);
            OffsetDateTime at = first.at().atOffset(ZoneOffset.ofTotalSeconds(60 * first.zoneOffsetMinutes()));
            String time = words.shortDate(at.toLocalDate()) + " " + CLOCK.format(at);
            lines.add(time + "  "
                    + ActionWords.told(
                            words, together.stream().map(ActionRecord::action).toList())
                    + (inForce.contains(first.id()) ? "" : "  " + words.say("history.undone")));
        }
        Collections.reverse(lines);
        return List.copyOf(lines);
    }

    /** Acts of one kind that were done at the same moment, such as those of a whole table, are one thing. */
    private static List<List<ActionRecord>> together(List<ActionRecord> acts) {
        Map<List<Object>, List<ActionRecord>> all = new LinkedHashMap<>();
        for (ActionRecord act : acts.stream().sorted(ActionRecord.IN_ORDER).toList()) {
            if (!(act.action() instanceof ParentAction.Undo)) {
                Object kind = act.action() instanceof ParentAction.Choose
                        ? act.id()
                        : act.action().getClass();
                all.computeIfAbsent(List.of(act.at(), kind), k -> new ArrayList<>())
                        .add(act);
            }
        }
        return new ArrayList<>(all.values());
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("history.title", child.name()), Ink.STRONG);
        picture.centred(2, words.say("history.kept"), Ink.QUIET);
        int room = picture.height() - 6;
        first = Math.max(0, Math.min(first, lines.size() - room));
        int x = Math.max(1, (picture.width() - 60) / 2);
        for (int i = first; i < Math.min(lines.size(), first + room); i++) {
            picture.text(x, 4 + i - first, lines.get(i));
        }
        if (lines.isEmpty()) {
            picture.centred(5, words.say("history.none"), Ink.PLAIN);
        }
        Footer.draw(picture, List.of(words.say("history.foot").split("   ")));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        switch (key.kind()) {
            case UP -> first--;
            case DOWN -> first++;
            case ESCAPE, ENTER -> {
                return Navigation.BACK;
            }
            default -> {
                return Navigation.STAY;
            }
        }
        return Navigation.STAY;
    }
}
