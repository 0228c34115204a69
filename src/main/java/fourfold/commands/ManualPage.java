// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/**
 * The manual page of section 1, made from the texts that {@code --help} shows, in the macros of the manual (roff man,
 * groff_man(7)). Only ASCII is printed, so that any terminal can show it.
 */
final class ManualPage {
    private final CommandLine program;
    private final ResourceBundle texts;
    private final StringBuilder page = new StringBuilder();

    ManualPage(CommandLine program) {
        this.program = program;
        this.texts = program.getCommandSpec().resourceBundle();
    }

    /** The whole page. */
    String text() {
        CommandSpec spec = program.getCommandSpec();
        String name = spec.name();
        page.setLength(0);
        macro("TH", name.toUpperCase(java.util.Locale.ROOT), "1", "", name + " " + Version.number(), "");
        section("name");
        line(name + " \\- " + escaped(texts.getString("manual.purpose")));
        section("synopsis");
        line("\\fB" + name + "\\fR [" + italic(texts.getString("manual.option")) + "] ["
                + italic(texts.getString("manual.command")) + "]");
        section("description");
        words(spec.usageMessage().description());
        section("options");
        Set<String> shared = new LinkedHashSet<>();
        for (OptionSpec option : spec.options()) {
            shared.add(option.longestName());
            argument(option);
        }
        section("commands");
        line(texts.getString("manual.shared"));
        commands("", program, shared);
        section("exit");
        line(texts.getString("manual.exit.codes"));
        section("environment");
        variable("FOURFOLD_STORE", texts.getString("manual.variable.store"));
        variable("FOURFOLD_LANGUAGE", texts.getString("manual.variable.language"));
        variable("NO_COLOR", texts.getString("manual.variable.colour"));
        return page.toString();
    }

    private void section(String name) {
        macro("SH", texts.getString("manual." + name));
    }

    private static String italic(String word) {
        return "\\fI" + escaped(word) + "\\fR";
    }

    private void commands(String before, CommandLine parent, Set<String> shared) {
        for (CommandLine command : new LinkedHashSet<>(parent.getSubcommands().values())) {
            CommandSpec spec = command.getCommandSpec();
            if (spec.usageMessage().hidden()) {
                continue;
            }
            String name = (before + " " + spec.name()).strip();
            macro("SS", name + parameters(spec));
            words(spec.usageMessage().description());
            spec.positionalParameters().forEach(this::argument);
            spec.options().stream()
                    .filter(o -> !shared.contains(o.longestName()))
                    .forEach(this::argument);
            List<String> footer = List.of(spec.usageMessage().footer());
            if (!footer.isEmpty()) {
                macro("PP");
                macro("nf");
                line(spec.usageMessage().footerHeading().replace("%n", ""));
                footer.stream().filter(f -> !f.isBlank()).forEach(this::line);
                macro("fi");
            }
            commands(name, command, shared);
        }
    }

    private static String parameters(CommandSpec spec) {
        StringBuilder all = new StringBuilder();
        for (PositionalParamSpec parameter : spec.positionalParameters()) {
            String label = parameter.paramLabel();
            all.append(parameter.arity().min() == 0 ? " [" + label + "]" : " " + label);
        }
        return all.toString();
    }

    private void argument(ArgSpec argument) {
        if (argument.hidden()) {
            return;
        }
        macro("TP");
        if (argument instanceof OptionSpec option) {
            List<String> names = new ArrayList<>(Arrays.asList(option.names()));
            String value = option.arity().max() > 0 ? "=" + italic(option.paramLabel()) : "";
            names.replaceAll(n -> "\\fB" + escaped(n) + "\\fR");
            page.append(String.join(", ", names)).append(value).append('\n');
        } else {
            page.append(italic(argument.paramLabel())).append('\n');
        }
        words(argument.description());
    }

    private void variable(String name, String meaning) {
        macro("TP");
        page.append("\\fB").append(escaped(name)).append("\\fR\n");
        line(meaning);
    }

    private void words(String... lines) {
        Arrays.stream(lines).filter(w -> !w.isBlank()).forEach(this::line);
    }

    /** A line of text; one that would be taken for a macro has a character of no width before it. */
    private void line(String text) {
        String safe = text.startsWith("\\fB") || text.contains(" \\- ") ? text : escaped(text);
        page.append(safe.startsWith(".") || safe.startsWith("'") ? "\\&" + safe : safe)
                .append('\n');
    }

    private void macro(String name, String... arguments) {
        page.append('.').append(name);
        for (String argument : arguments) {
            page.append(" \"").append(escaped(argument).replace("\"", "\\(dq")).append('"');
        }
        page.append('\n');
    }

    private static String escaped(String text) {
        StringBuilder safe = new StringBuilder();
        text.codePoints().forEach(c -> {
            switch (c) {
                case '\\' -> safe.append("\\e");
                case '-' -> safe.append("\\-");
                case '×' -> safe.append("\\(mu");
                case '÷' -> safe.append("\\(di");
                default -> safe.append(c < 0x7f ? Character.toString(c) : "\\[u%04X]".formatted(c));
            }
        });
        return safe.toString();
    }
}
