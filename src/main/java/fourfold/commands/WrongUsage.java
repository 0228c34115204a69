// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.words.Words;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line, in one line of the parent's language. */
final class WrongUsage {
    private WrongUsage() {}

    /**
     * What a command throws at a wrong command line. Its class is not named, so that a program that is opened without a word
     * need not load the options' library to have its own classes checked.
     */
    static RuntimeException of(CommandSpec command, String words) {
        return new ParameterException(command.commandLine(), words);
    }

    /** The line; what a command itself refuses brings its own words. */
    static String message(ParameterException wrong, Words words) {
        // The names of arguments are in the help's bundle.
        wrong.getCommandLine().setResourceBundle(words.help());
        if (wrong instanceof UnmatchedArgumentException unmatched) {
            String first = unmatched.getUnmatched().get(0);
            String what = words.say(unmatched.isUnknownOption() ? "usage.unknown" : "usage.unmatched", first);
            return NearestWord.of(first, known(wrong.getCommandLine().getCommandSpec()))
                    .map(nearest -> words.say("usage.nearest", what, nearest))
                    .orElse(what);
        }
        if (wrong instanceof MissingParameterException missing) {
            return missing(missing, words);
        }
        if (wrong instanceof OverwrittenOptionException twice) {
            return words.say("usage.twice", name(twice.getOverwritten()));
        }
        if (wrong.getCause() instanceof WrongValue value) {
            return value.in(words);
        }
        ArgSpec argument = wrong.getArgSpec();
        return argument == null ? String.valueOf(wrong.getMessage()) : value(argument, wrong.getValue(), words);
    }

    private static Set<String> known(CommandSpec command) {
        Set<String> known = new TreeSet<>(command.subcommands().keySet());
        known.addAll(command.optionsMap().keySet());
        if (command.parent() == null) {
            known.addAll(CommandList.NAMES);
        }
        return known;
    }

    private static String missing(MissingParameterException wrong, Words words) {
        ArgSpec first = wrong.getMissing().get(0);
        if (first.isOption()) {
            return words.say("usage.missing.value", name(first), first.paramLabel());
        }
        return words.say(
                "usage.missing",
                wrong.getMissing().stream().map(ArgSpec::paramLabel).collect(Collectors.joining(" ")));
    }

    private static String value(ArgSpec argument, String value, Words words) {
        if (argument.typeInfo().isMap()) {
            return words.say("usage.pair", name(argument), argument.paramLabel(), value);
        }
        Class<?> type = argument.auxiliaryTypes()[0];
        boolean number = type == int.class || type == Integer.class;
        return number ? words.say("usage.number", value) : words.say("usage.value", name(argument), value);
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }
}
