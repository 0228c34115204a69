// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.home.PastDrill;
import fourfold.log.Child;
import fourfold.screens.KeyPage;
import fourfold.terminal.Ink;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;

/** The drills of a child, newest first. */
record DrillsPage(Words words, Child child, ZoneId zone, List<PastDrill> drills, int first) implements KeyPage {
    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

    private int last(int rows) {
        return Math.max(0, drills.size() - room(rows));
    }

    private static int room(int rows) {
        return rows - 6;
    }

    @Override
    public void draw(Picture picture) {
        picture.centred(1, words.say("drills.title", child.name()), Ink.STRONG);
        int room = room(picture.height());
        int from = Math.min(first, last(picture.height()));
        int x = Math.max(0, (picture.width() - 54) / 2);
        picture.text(
                x,
                3,
                String.format(
                        "%-26s%-12s%s",
                        words.say("drills.when"), words.say("drills.planned"), words.say("drills.right")),
                Ink.QUIET);
        for (int i = from; i < Math.min(drills.size(), from + room); i++) {
            picture.text(x, 4 + i - from, line(drills.get(i)));
        }
        if (drills.isEmpty()) {
            picture.centred(5, words.say("drills.none"), Ink.PLAIN);
        }
        picture.centred(picture.height() - 1, words.say("drills.foot"), Ink.QUIET);
    }

    private String line(PastDrill drill) {
        ZonedDateTime began = drill.session().startedAt().atZone(zone);
        return String.format(
                "%-26s%-12s%s",
                words.namedDate(began.toLocalDate()) + "  " + CLOCK.format(began),
                words.say("drills.minutes", drill.session().planned().toMinutes()),
                words.say("drills.of", drill.right(), drill.asked())
                        + drill.given()
                                .map(p -> "  " + words.say("drills." + p.word()))
                                .orElse(""));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        return key.key().closes()
                ? PageResult.of(this, PageEffect.BACK)
                : PageResult.of(
                        new DrillsPage(words, child, zone, drills, key.key().scrolled(first, last(key.rows()))));
    }
}
