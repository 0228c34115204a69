package fourfold.screens.parent;

import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.log.RecordsFailure;
import fourfold.progress.Setting;
import fourfold.progress.Settings;
import fourfold.screens.PageContext;
import fourfold.terminal.Footer;
import fourfold.terminal.Ink;
import fourfold.terminal.Key;
import fourfold.terminal.Navigation;
import fourfold.terminal.MutablePage;
import fourfold.terminal.Picture;
import fourfold.terminal.Wrapping;
import fourfold.words.Words;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;

/** A child's settings, one line each: what holds, what else there is, and one sentence of help. */
final class SettingsPage implements MutablePage {
    private static final int NAME = 26;

    private final PageContext context;
    private final Words words;
    private final Child child;
    private final SteeringKeys steers;
    private int chosen;

    SettingsPage(PageContext context, Child child) {
        this.context = context;
        this.words = context.words();
        this.child = child;
        this.steers = new SteeringKeys(context, child);
    }

    private Settings settings() {
        return steers.progress().steering().settings();
    }

    private static boolean isOrder(int line) {
        return line >= Setting.values().length;
    }

    @Override
    public void draw(Picture picture) {
        boolean tall = picture.height() >= 22;
        picture.centred(tall ? 1 : 0, words.say("settings.title", child.name()), Ink.STRONG);
        int y = tall ? 3 : 2;
        int x = Math.max(1, (picture.width() - 56) / 2);
        for (int line = 0; line <= Setting.values().length; line++) {
            String mark = line == chosen ? "▸ " : "  ";
            picture.text(x, y + line, mark + row(line), line == chosen ? Ink.STRONG : Ink.PLAIN);
        }
        int below = y + Setting.values().length + 2;
        for (String text : Wrapping.lines(help(), Math.min(70, picture.width() - 2))) {
            picture.centred(below++, text, Ink.PLAIN);
        }
        int above = Footer.draw(picture, List.of(words.say("settings.foot").split("   ")));
        if (above - 1 > below - 1) {
            picture.centred(above - 1, steers.told(), Ink.STRONG);
        }
    }

    private String row(int line) {
        if (isOrder(line)) {
            String order = steers.progress().steering().order().stream()
                    .map(String::valueOf)
                    .collect(Collectors.joining(" "));
            return padded(words.say("settings.order")) + order;
        }
        Setting setting = Setting.values()[line];
        return padded(words.say("settings." + setting.key())) + "◂ "
                + words.value(setting, settings().value(setting)) + " ▸";
    }

    private static String padded(String name) {
        return name + " ".repeat(Math.max(1, NAME - Picture.columns(name)));
    }

    private String help() {
        if (isOrder(chosen)) {
            return words.say("settings.order.help");
        }
        Setting setting = Setting.values()[chosen];
        return words.say("settings." + setting.key() + ".help") + " "
                + words.say("settings.usual", words.value(setting, setting.usual()));
    }

    @Override
    public Navigation on(Key key, Instant at) {
        int lines = Setting.values().length + 1;
        try {
            switch (key.kind()) {
                case UP -> chosen = Math.floorMod(chosen - 1, lines);
                case DOWN -> chosen = Math.floorMod(chosen + 1, lines);
                case LEFT -> change(-1, at);
                case RIGHT -> change(1, at);
                case ENTER -> {
                    return isOrder(chosen) ? new Navigation.Open(new OrderPage(context, child)) : Navigation.STAY;
                }
                case ESCAPE -> {
                    return Navigation.BACK;
                }
                default -> {
                    if (key.is('u')) {
                        steers.undo(at);
                    }
                }
            }
        } catch (RecordsFailure e) {
            steers.say(words.failure(e));
        }
        return Navigation.STAY;
    }

    /** The next value, not past the first or the last. */
    private void change(int by, Instant at) {
        if (isOrder(chosen)) {
            return;
        }
        Setting setting = Setting.values()[chosen];
        List<String> offered = setting.offered();
        int next = offered.indexOf(settings().value(setting)) + by;
        if (next >= 0 && next < offered.size()) {
            steers.keep(new ParentAction.Choose(setting.key(), offered.get(next)), at);
            steers.say(words.say("settings.kept"));
        }
    }

    @Override
    public void returned() {
        steers.renew();
    }
}
