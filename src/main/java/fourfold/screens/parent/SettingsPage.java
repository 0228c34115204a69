// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.log.ParentAction;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.screens.KeyPage;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;
import fourfold.terminal.PageEvent;
import fourfold.terminal.PageResult;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A child's settings, one line each: what holds, what else there is, and one sentence of help. */
record SettingsPage(SteeringKeys steers, int chosen) implements KeyPage, Speaking {
    /** The most lines that are said of one setting. */
    private static final int HELP = 3;

    private static final int NAME = 26;

    private Settings settings() {
        return steers.progress().steering().settings();
    }

    @Override
    public Words words() {
        return steers.words();
    }

    private static boolean isOrder(int line) {
        return line >= Setting.values().length;
    }

    @Override
    public List<String> said() {
        List<String> said = new ArrayList<>(List.of(
                steers.message(), words().say("spoken.chosen", told(chosen)), help(), words().say("spoken.all")));
        for (int line = 0; line <= Setting.values().length; line++) {
            said.add(told(line));
        }
        return said;
    }

    private String told(int line) {
        return isOrder(line)
                ? words().say("settings.order") + ": " + order(", ")
                : words().say("settings." + Setting.values()[line].key()) + ": "
                        + words().value(Setting.values()[line], settings().value(Setting.values()[line]));
    }

    private String order(String between) {
        return steers.progress().steering().order().stream()
                .map(String::valueOf)
                .collect(Collectors.joining(between));
    }

    @Override
    public String keys() {
        return words().say("settings.foot");
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(
                tall ? 1 : 0, words().say("settings.title", steers.child().name()), Ink.STRONG);
        int y = tall ? 3 : 2;
        int above = Footer.draw(picture, List.of(keys().split("   ")));
        int lines = Setting.values().length + 1;
        // Where the page is low, the list gives way to what is said of its marked line, and moves along with the mark.
        int room = Math.min(lines, above - y - HELP - 1);
        int first = Math.max(0, Math.min(chosen - room / 2, lines - room));
        int x = Math.max(1, (picture.width() - 56) / 2);
        for (int line = first; line < first + room; line++) {
            String mark = line == chosen ? "► " : "  ";
            picture.text(x, y++, mark + row(line), line == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        y += above - y - HELP - 1 > 0 ? 1 : 0;
        for (String text : Wrapping.lines(help(), Math.min(70, picture.width() - 2))) {
            picture.centred(y++, text, Ink.PLAIN);
        }
        Footer.say(picture, above, steers.message());
    }

    private String row(int line) {
        if (isOrder(line)) {
            return padded(words().say("settings.order")) + order(" ");
        }
        Setting setting = Setting.values()[line];
        return padded(words().say("settings." + setting.key())) + "◄ "
                + words().value(setting, settings().value(setting)) + " ►";
    }

    private static String padded(String name) {
        return name + " ".repeat(Math.max(1, NAME - Picture.columns(name)));
    }

    private String help() {
        if (isOrder(chosen)) {
            return words().say("settings.order.help");
        }
        Setting setting = Setting.values()[chosen];
        return words().say("settings." + setting.key() + ".help") + " "
                + words().say("settings.usual", words().value(setting, setting.usual()));
    }

    @Override
    public PageResult pressed(PageEvent.Pressed key) {
        int lines = Setting.values().length + 1;
        return switch (key.key().kind()) {
            case UP -> to(steers, Math.floorMod(chosen - 1, lines));
            case DOWN -> to(steers, Math.floorMod(chosen + 1, lines));
            case LEFT -> changed(-1, key.at());
            case RIGHT -> changed(1, key.at());
            case ENTER -> isOrder(chosen) ? PageResult.of(this, new PageEffect.Open(order())) : PageResult.of(this);
            case ESCAPE -> PageResult.of(this, PageEffect.BACK);
            default -> key.key().is('u') ? PageResult.of(this, steers.undo(key.at())) : PageResult.of(this);
        };
    }

    private static PageResult to(SteeringKeys steers, int line) {
        return PageResult.of(new SettingsPage(steers, line));
    }

    private Page order() {
        return new OrderPage(steers.say(""), steers.progress().steering().order(), 0);
    }

    /** The next value, not past the first or the last. */
    private PageResult changed(int by, Instant at) {
        if (isOrder(chosen)) {
            return PageResult.of(this);
        }
        Setting setting = Setting.values()[chosen];
        List<String> offered = setting.offered();
        int next = offered.indexOf(settings().value(setting)) + by;
        if (next < 0 || next >= offered.size()) {
            return PageResult.of(this);
        }
        ParentAction choice = new ParentAction.Choose(setting.key(), offered.get(next));
        return PageResult.of(this, steers.keep(choice, at, words().say("settings.kept")));
    }

    @Override
    public PageResult done(PageEffect.Outcome outcome, Instant at) {
        return to(steers.after(outcome), chosen);
    }

    @Override
    public PageResult returned(Instant at) {
        return PageResult.of(this, steers.renew(at));
    }
}
