package fourfold.commands;

import fourfold.facts.Families;
import fourfold.facts.Family;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;

/**
 * What a deed is about: one family, written {@code 6x7}, a whole table, written {@code 7}, or {@code all}.
 *
 * @param name as the parent would say it
 * @param families one family, the ten of a table, or all
 */
record FamilyArgument(String name, List<Family> families) {
    /** How it is written, for help. */
    static final String HELP = "A family, like 6x7, a whole table, like 7, or all.";

    /**
     * Asks once before something is done to all families.
     *
     * @throws ParameterException if it was not said that it is meant
     */
    void confirm(boolean yes, CommandSpec spec) {
        if (families.size() == Families.all().size() && !yes) {
            throw new ParameterException(
                    spec.commandLine(), "this would concern all families; nothing was changed. Add --yes to do it");
        }
    }

    /** Reads what the parent wrote. */
    static final class Reader implements ITypeConverter<FamilyArgument> {
        @Override
        public FamilyArgument convert(String text) {
            try {
                if (text.equals("all")) {
                    return new FamilyArgument("All families", Families.all());
                }
                if (text.matches("\\d{1,4}")) {
                    int table = Families.checkTable(Integer.parseInt(text));
                    return new FamilyArgument("The table of " + table, Families.inTable(table));
                }
                Family family = Family.parse(text);
                return new FamilyArgument("The family " + family, List.of(family));
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }

    /** Reads one family. */
    static final class FamilyReader implements ITypeConverter<Family> {
        @Override
        public Family convert(String text) {
            try {
                return Family.parse(text);
            } catch (IllegalArgumentException e) {
                throw new TypeConversionException(e.getMessage());
            }
        }
    }
}
