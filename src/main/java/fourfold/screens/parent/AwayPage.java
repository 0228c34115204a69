// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.drill.Depiction;
import fourfold.facts.Family;
import fourfold.insight.AwayChoice;
import fourfold.log.ParentAction;
import fourfold.progress.Progress;
import fourfold.screens.FactPicture;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;

/** What to practise away from the screen: the few families that need it most, each with a picture and a way to it. */
record AwayPage(SteeringKeys steers, List<AwayChoice> choices) implements KeyPage {
    private static final int TEXT = 66;

    @Override
    public void draw(Picture picture) {
        Words words = steers.words();
        picture.centred(
                picture.height() >= 22 ? 1 : 0,
                words.say("away.title", steers.child().name()),
                Ink.STRONG);
        int y = picture.height() >= 22 ? 3 : 2;
        if (choices.isEmpty()) {
            picture.centred(y + 2, words.say("away.none"), Ink.PLAIN);
        }
        int last = picture.height() - 4;
        // A picture has four rows: where there is less room, the fourth family is left out.
        int shown = Math.min(choices.size(), Math.max(3, (last - y) / 5));
        int room = choices.isEmpty() ? 0 : (last - y) / shown;
        for (AwayChoice choice : choices.subList(0, shown)) {
            choice(picture, y, Math.min(room, Math.max(4, room - 1)), choice);
            y += room;
        }
        if (!choices.isEmpty()) {
            picture.centred(last, words.say("away.how"), Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("away.foot").split("   ")));
        Footer.say(picture, above, steers.message());
    }

    /** The question and the way to it at the left, the picture at the right where there is room. */
    private void choice(Picture picture, int y, int rows, AwayChoice choice) {
        Words words = steers.words();
        Progress progress = steers.progress();
        int width = Math.min(picture.width() - 4, 2 * TEXT);
        int x = (picture.width() - width) / 2;
        picture.text(x, y, words.asked(progress.signed(choice.weakest())), Ink.STRONG);
        String way = choice.hint()
                .map(h -> words.hint(h, q -> words.fact(q.fact())))
                .orElseGet(() -> words.picture(Depiction.of(progress, choice.family()), choice.weakest()));
        int line = y + 1;
        for (String text : Wrapping.lines(way, width / 2 - 4)) {
            picture.text(x, line++, text, Ink.PLAIN);
        }
        List<String> drawn = List.of();
        for (Depiction depiction :
                List.of(Depiction.of(progress, choice.family()), Depiction.BAR, Depiction.JUMPS, Depiction.ARRAY)) {
            drawn = drawn.isEmpty()
                    ? FactPicture.of(depiction, choice.weakest()).rows(width / 2, rows)
                    : drawn;
        }
        for (int i = 0; i < drawn.size(); i++) {
            picture.text(x + width / 2, y + i, drawn.get(i), Ink.QUIET);
        }
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        if (key.key().kind() == Key.Kind.ESCAPE) {
            return PageResult.of(this, PageEffect.BACK);
        }
        if (key.key().is('f') && !choices.isEmpty()) {
            List<Family> families = choices.stream().map(AwayChoice::family).toList();
            String done = steers.words().say("away.done");
            return PageResult.of(this, steers.keep(families, ParentAction.Focus::new, key.at(), done));
        }
        return key.key().is('u') ? PageResult.of(this, steers.undo(key.at())) : PageResult.of(this);
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return PageResult.of(new AwayPage(steers.after(outcome), choices));
    }
}
