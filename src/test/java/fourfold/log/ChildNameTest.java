// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.text.Normalizer;
import java.util.Locale;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Guards against one child under two names, and against names that nobody can see or type. */
class ChildNameTest {
    /** Sample pairs of CaseFolding.txt (status F) and of Unicode Standard Annex 15, and names as families type them. */
    @ParameterizedTest
    @CsvSource({
        "Strauß, STRAUSS",
        "ﬁnn, FINN",
        "Ångström, A\u030Angstro\u0308m",
        "ΣΊΣΥΦΟΣ, σίσυφος",
        "ŉora, ʼNORA",
        "Mina, ｍｉｎａ",
        "Anna Lena, 'anna \u00A0 lena'",
        "Mina, Mi\u200Bna",
        "Mina, \uFEFFmina",
        "Ana, A\u00ADna"
    })
    void theseAreOneName(String one, String other) {
        assertTrue(ChildName.same(one, other), ChildName.folded(one) + " / " + ChildName.folded(other));
    }

    @ParameterizedTest
    @CsvSource({"Mina, Nina", "Jose, José", "Anna Lena, Annalena", "Ana, Аna"})
    void theseAreTwoNames(String one, String other) {
        assertFalse(ChildName.same(one, other));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"", "  ", "\u200B", "\u00A0", "\u3164", "\uFEFF\u2060", "\u00AD \u034F", "\u2800", "\u202E"})
    void aNameThatNobodySeesIsRefused(String name) {
        assertThrows(IllegalArgumentException.class, () -> ChildName.chosen(name));
    }

    @Property
    void caseFormAndBlanksMakeNoOtherName(@ForAll("names") String name) {
        // Marks in their canonical order, as in the definition: U+0345 becomes a letter of its own in upper case. An
        // invisible character between two marks would keep them out of order, and is no part of the name.
        String apart = Normalizer.normalize(name.replaceAll("\\p{Cf}", ""), Normalizer.Form.NFKD);
        assertTrue(ChildName.same(name, apart.toUpperCase(Locale.ROOT)), "upper case");
        assertTrue(ChildName.same(name, apart.toLowerCase(Locale.ROOT)), "lower case");
        for (Normalizer.Form form : Normalizer.Form.values()) {
            assertTrue(ChildName.same(name, Normalizer.normalize(name, form)), form.name());
        }
        assertTrue(ChildName.same(name, " " + name.replace(" ", "\u2003  ") + "\u00A0"), "blanks");
        assertTrue(ChildName.same(name, name + "\u200D"), "what is not seen");
    }

    @Property
    void foldingAgainChangesNothing(@ForAll("names") String name) {
        String once = ChildName.folded(name);
        assertEquals(once, ChildName.folded(once));
    }

    @Property
    void aChosenNameIsKeptAsItIs(@ForAll("names") String name) {
        try {
            String kept = ChildName.chosen(name);
            assertEquals(kept, ChildName.chosen(kept));
            assertFalse(ChildName.folded(kept).isEmpty());
        } catch (InvalidValue refused) {
            assertTrue(refused.problem().reason().name().startsWith("NAME_"), refused.toString());
        }
    }

    /** Letters of several scripts, and what is hard about them; no lone surrogates, which no keyboard sends. */
    @Provide
    Arbitrary<String> names() {
        Arbitrary<String> usual = Arbitraries.of(
                "a", "Z", "ß", "ẞ", "ﬀ", "ﬃ", "ŉ", "ǰ", "ΐ", "Σ", "ς", "σ", "İ", "ı", "I", "Å", "ẛ̣", "ͅ", "ᾳ", "Ω",
                "K", " ", "\u00A0", "\u200B", "\u0301", "\u0323", "가", "ᄀ", "ᅡ", "ﾊ", "ﾞ", "م", "א", "क", "़", "①",
                "🦊");
        Arbitrary<String> any = Arbitraries.integers()
                .between(0x20, 0x2FFFF)
                .filter(c -> Character.isDefined(c) && Character.getType(c) != Character.SURROGATE)
                .map(Character::toString);
        return Arbitraries.frequencyOf(net.jqwik.api.Tuple.of(3, usual), net.jqwik.api.Tuple.of(1, any))
                .list()
                .ofMinSize(1)
                .ofMaxSize(8)
                .map(parts -> String.join("", parts));
    }
}
