package fourfold.commands;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
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
    private final StringBuilder page = new StringBuilder();

    ManualPage(CommandLine program) {
        this.program = program;
    }

    /** The whole page. */
    String text() {
        CommandSpec spec = program.getCommandSpec();
        String name = spec.name();
        page.setLength(0);
        macro("TH", name.toUpperCase(java.util.Locale.ROOT), "1", "", name + " " + Version.number(), "");
        macro("SH", "NAME");
        line(name + " \\- practise multiplication and division facts at home");
        macro("SH", "SYNOPSIS");
        line("\\fB" + name + "\\fR [\\fIoptions\\fR] [\\fIcommand\\fR]");
        macro("SH", "DESCRIPTION");
        words(spec.usageMessage().description());
        macro("SH", "OPTIONS");
        Set<String> shared = new LinkedHashSet<>();
        for (OptionSpec option : spec.options()) {
            shared.add(option.longestName());
            argument(option);
        }
        macro("SH", "COMMANDS");
        line("The options above can be given to each command too.");
        commands("", program, shared);
        macro("SH", "EXIT STATUS");
        line("0 done, 1 the world failed (file, disk, terminal), 2 wrong usage.");
        macro("SH", "ENVIRONMENT");
        variable("FOURFOLD_STORE", "The file that holds the answers, where no --store names one.");
        variable(
                "FOURFOLD_LANGUAGE",
                "The language, en, de or es, where the settings, LC_ALL, LC_MESSAGES or LANG would say otherwise.");
        variable("NO_COLOR", "When set, nothing is coloured.");
        return page.toString();
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
            String value = option.arity().max() > 0 ? "=\\fI" + escaped(option.paramLabel()) + "\\fR" : "";
            names.replaceAll(n -> "\\fB" + escaped(n) + "\\fR");
            page.append(String.join(", ", names)).append(value).append('\n');
        } else {
            page.append("\\fI").append(escaped(argument.paramLabel())).append("\\fR\n");
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
