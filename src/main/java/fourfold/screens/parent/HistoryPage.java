// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.log.ActionRecord;
import fourfold.log.Child;
import fourfold.plain.HomeText;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.ActionWords;
import fourfold.words.Words;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.UUID;

/** What the parent did, newest first, each with its time; what was taken back says so. */
public record HistoryPage(Words words, Child child, List<String> lines, List<String> said, int first)
        implements KeyPage, Speaking {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

    /** The page as it opens. */
    static HistoryPage of(Words words, Child child, List<ActionRecord> actions) {
        List<String> said = HomeText.history(words, actions, true).lines().toList();
        return new HistoryPage(words, child, lines(words, actions), said, 0);
    }

    /** All actions in words, newest first; an undo is shown at what it took back. */
    public static List<String> lines(Words words, List<ActionRecord> actions) {
        Set<UUID> inForce = new HashSet<>();
        ActionRecord.inForce(actions).forEach(a -> inForce.add(a.id()));
        List<String> lines = new ArrayList<>();
        for (List<ActionRecord> together : ActionRecord.together(actions)) {
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

    @Override
    public String keys() {
        return words.say("history.foot");
    }

    @Override
    public boolean isOnlyRead() {
        return true;
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("history.title", child.name()), Ink.STRONG);
        picture.centred(2, words.say("history.kept"), Ink.QUIET);
        int room = room(picture.height());
        int from = Math.min(first, last(picture.height()));
        int x = Math.max(1, (picture.width() - 60) / 2);
        for (int i = from; i < Math.min(lines.size(), from + room); i++) {
            picture.text(x, 4 + i - from, lines.get(i));
        }
        if (lines.isEmpty()) {
            picture.centred(5, words.say("history.none"), Ink.PLAIN);
        }
        Footer.draw(picture, List.of(keys().split("   ")));
    }

    private int last(int rows) {
        return Math.max(0, lines.size() - room(rows));
    }

    private static int room(int rows) {
        return rows - 6;
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return key.key().closes()
                ? PageResult.of(this, PageEffect.BACK)
                : PageResult.of(
                        new HistoryPage(words, child, lines, said, key.key().scrolled(first, last(key.rows()))));
    }
}
