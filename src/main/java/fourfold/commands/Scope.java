package fourfold.commands;

import fourfold.facts.Families;
import fourfold.facts.Family;
import java.util.List;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * What a deed is about: one family, written {@code 6x7}, or a whole table, written {@code 7}.
 *
 * @param name as the parent would say it
 * @param families one family, or the ten of a table
 */
record Scope(String name, List<Family> families) {
    /** Reads what the parent wrote. */
    static final class Reader implements ITypeConverter<Scope> {
        @Override
        public Scope convert(String text) {
            try {
                if (text.matches("\\d{1,4}")) {
                    int table = Families.checkTable(Integer.parseInt(text));
                    return new Scope("The table of " + table, Families.inTable(table));
                }
                Family family = Family.parse(text);
                return new Scope("The family " + family, List.of(family));
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
