// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.words.Words;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;

/**
 * What an action is about: one family, written {@code 6x7}, a whole table, written {@code 7}, or {@code all}.
 *
 * @param key of the text that names it
 * @param gap what fills that text's gap, if it has one
 * @param families one family, the ten of a table, or all
 */
record FamilyArgument(String key, String gap, List<Family> families) {
    /** As the parent would say it. */
    String name(Words words) {
        return words.say(key, gap);
    }

    /**
     * Asks once before something is done to all families.
     *
     * @throws ParameterException if it was not said that it is meant
     */
    void confirm(boolean yes, CommandSpec spec, Words words) {
        if (families.size() == Families.all().size() && !yes) {
            throw new ParameterException(spec.commandLine(), words.say("usage.all"));
        }
    }

    private static Family family(String text) {
        try {
            return Family.parse(text);
        } catch (IllegalArgumentException e) {
            String[] factors = text.strip().split("\\s*[xX×*]\\s*", -1);
            boolean numbers = factors.length == 2 && factors[0].matches("\\d{1,2}") && factors[1].matches("\\d{1,2}");
            throw numbers
                    ? new WrongValue(
                            "usage.family.factors",
                            Math.min(Integer.parseInt(factors[0]), Integer.parseInt(factors[1])),
                            Math.max(Integer.parseInt(factors[0]), Integer.parseInt(factors[1])))
                    : new WrongValue("usage.family", text);
        }
    }

    private static int table(String digits) {
        int table = Integer.parseInt(digits);
        if (table < 1 || table > Families.LARGEST_FACTOR) {
            throw new WrongValue("usage.table", table);
        }
        return table;
    }

    /** Reads what the parent wrote. */
    static final class Reader implements ITypeConverter<FamilyArgument> {
        @Override
        public FamilyArgument convert(String text) {
            if (text.equals("all")) {
                return new FamilyArgument("scope.all", "", Families.all());
            }
            if (text.matches("\\d{1,4}")) {
                int table = table(text);
                return new FamilyArgument("scope.table", String.valueOf(table), Families.inTable(table));
            }
            Family family = family(text);
            return new FamilyArgument("scope.family", family.toString(), List.of(family));
        }
    }

    /** Reads one table. */
    static final class TableReader implements ITypeConverter<Integer> {
        @Override
        public Integer convert(String text) {
            if (!text.matches("\\d{1,4}")) {
                throw new WrongValue("usage.notable", text);
            }
            return table(text);
        }
    }

    /** Reads one family. */
    static final class FamilyReader implements ITypeConverter<Family> {
        @Override
        public Family convert(String text) {
            return family(text);
        }
    }
}
