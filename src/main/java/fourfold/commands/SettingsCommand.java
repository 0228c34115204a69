// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.home.Home;
import fourfold.home.HouseholdSettings;
import fourfold.log.Child;
import fourfold.log.ParentAction;
import fourfold.plain.HomeText;
import fourfold.progress.Setting;
import fourfold.terminal.Theme;
import fourfold.words.Words;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

/** Lists a child's settings, the language and the theme of the home, or changes one. */
@Command(
        name = "settings",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        footer = "  fourfold settings minutes 6 --child Mina")
final class SettingsCommand implements Callable<Integer> {
    private static final String SYSTEM = "system";

    private static final String THEMES =
            Stream.of(Theme.values()).map(Theme::key).collect(Collectors.joining(", "));

    @ParentCommand
    private App app;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "${bundle:label.name}", descriptionKey = "name")
    private @Nullable String name;

    @Parameters(index = "1", arity = "0..1", paramLabel = "${bundle:label.value}", descriptionKey = "value")
    private @Nullable String value;

    @Option(names = "--order", split = ",", paramLabel = "${bundle:label.table}")
    private List<Integer> order = List.of();

    @Option(names = "--language", paramLabel = "xx|system")
    private @Nullable String language;

    @Option(names = "--theme", paramLabel = "dark|light|plain|system")
    private @Nullable String theme;

    @Option(names = "--motion", paramLabel = "on|still")
    private @Nullable String motion;

    @Option(names = "--pages", paramLabel = "${bundle:label.folder}|system")
    private @Nullable String pages;

    @Option(names = "--browser", paramLabel = "on|off")
    private @Nullable String browser;

    @Option(names = "--parents", paramLabel = "drawn|sentences")
    private @Nullable String parents;

    @Option(names = "--plain", descriptionKey = "plain")
    private boolean plain;

    @Override
    public Integer call() {
        try (Home home = app.open()) {
            if (Stream.of(
                            Optional.ofNullable(language),
                            Optional.ofNullable(theme),
                            Optional.ofNullable(motion),
                            Optional.ofNullable(pages),
                            Optional.ofNullable(browser),
                            Optional.ofNullable(parents))
                    .anyMatch(Optional::isPresent)) {
                setForAll(home);
                boolean onlyThat =
                        name == null && order.isEmpty() && app.child().isEmpty();
                if (onlyThat && home.children().named(Optional.empty()).only().isEmpty()) {
                    listForAll(home);
                    return ExitCode.DONE;
                }
            }
            Child whose = app.child(home, spec);
            if (name != null || !order.isEmpty()) {
                home.steering().keep(whose, List.of(action()), home.moments().now());
            }
            list(home, whose);
            return ExitCode.DONE;
        }
    }

    /** The language to be set, empty for the system's; one exists if it has words. */
    private Optional<String> wanted(String written) {
        if (written.equals(SYSTEM)) {
            return Optional.empty();
        }
        if (!Words.of(Locale.forLanguageTag(written)).language().getLanguage().equals(written)) {
            throw new ParameterException(spec.commandLine(), app.words().say("settings.language.unknown", written));
        }
        return Optional.of(written);
    }

    private void setForAll(Home home) {
        // All are read before any is kept.
        Optional<String> other = language == null ? Optional.empty() : wanted(language);
        Optional<Theme> look = theme == null ? Optional.empty() : look(theme);
        if (motion != null && !List.of("on", "still").contains(motion)) {
            throw refused("command.settings.value", "motion", "on, still", motion);
        }
        if (browser != null && !List.of("on", "off").contains(browser)) {
            throw refused("command.settings.value", "browser", "on, off", browser);
        }
        if (parents != null && !List.of("drawn", "sentences").contains(parents)) {
            throw refused("command.settings.value", "parents", "drawn, sentences", parents);
        }
        Optional<String> folder = Optional.ofNullable(pages)
                .filter(f -> !f.equals(SYSTEM))
                .map(f -> Home.path(f).toAbsolutePath().toString());
        if (language != null) {
            home.settings().setLanguage(other);
        }
        if (theme != null) {
            home.settings().setTheme(look);
        }
        if (motion != null) {
            home.settings().setStill(motion.equals("still"));
        }
        if (pages != null) {
            home.settings().setPagesFolder(folder);
        }
        if (browser != null) {
            home.settings().setShowsPages(browser.equals("on"));
        }
        if (parents != null) {
            home.settings().setInSentences(parents.equals("sentences"));
        }
    }

    /** The theme to be set, empty for one that fits the terminal. */
    private Optional<Theme> look(String written) {
        if (written.equals(SYSTEM)) {
            return Optional.empty();
        }
        return Optional.of(Theme.named(written)
                .orElseThrow(() -> refused("command.settings.value", "theme", THEMES + ", " + SYSTEM, written)));
    }

    private void listForAll(Home home) {
        forAll(home)
                .forEach(setting -> app.world()
                        .out()
                        .println(String.format(Locale.ROOT, "%-10s %s", setting.getKey(), setting.getValue())));
    }

    /** The settings of the home, each with its value. */
    private static List<Map.Entry<String, String>> forAll(Home home) {
        HouseholdSettings set = home.settings();
        return List.of(
                Map.entry("language", set.language().orElse(SYSTEM)),
                Map.entry("theme", set.theme().map(Theme::key).orElse(SYSTEM)),
                Map.entry("motion", set.isStill() ? "still" : "on"),
                Map.entry("pages", set.pagesFolder().orElse(SYSTEM)),
                Map.entry("browser", set.showsPages() ? "on" : "off"),
                Map.entry("parents", set.isInSentences() ? "sentences" : "drawn"));
    }

    private ParentAction action() {
        if (!order.isEmpty()) {
            try {
                return new ParentAction.Order(order);
            } catch (IllegalArgumentException e) {
                throw refused("command.settings.order.wrong", order);
            }
        }
        String wanted = String.valueOf(name);
        Optional<Setting> setting =
                Stream.of(Setting.values()).filter(s -> s.key().equals(wanted)).findFirst();
        if (setting.isEmpty() || value == null) {
            throw refused(
                    "command.settings.unknown",
                    Stream.of(Setting.values()).map(Setting::key).collect(Collectors.joining(", ")));
        }
        List<String> offered = setting.get().offered();
        if (!offered.contains(value)) {
            throw refused("command.settings.value", wanted, String.join(", ", offered), value);
        }
        return new ParentAction.Choose(wanted, value);
    }

    private ParameterException refused(String key, Object... gaps) {
        return new ParameterException(spec.commandLine(), app.words().say(key, gaps));
    }

    private void list(Home home, Child whose) {
        var steering = home.records().levels(whose).steering();
        if (plain) {
            List<String> all = forAll(home).stream()
                    .map(setting -> "--" + setting.getKey() + " " + setting.getValue())
                    .toList();
            app.world()
                    .out()
                    .print(HomeText.settings(
                            app.words(home), steering, all, app.world().unicode()));
            return;
        }
        for (Setting setting : Setting.values()) {
            app.world()
                    .out()
                    .println(String.format(
                            Locale.ROOT,
                            "%-10s %-9s %s %s",
                            setting.key(),
                            steering.settings().value(setting),
                            app.words().say("command.settings.of"),
                            String.join(" ", setting.offered())));
        }
        app.world()
                .out()
                .println(String.format(Locale.ROOT, "%-10s ", app.words().say("command.settings.order"))
                        + steering.order().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        listForAll(home);
    }
}
