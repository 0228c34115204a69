// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.facts.Prompt;
import fourfold.insight.PageKind;
import fourfold.insight.PaperQuestions;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.store.Store;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/**
 * The pages that have a number. What stands on a page follows from what the child knew on that day and from how that was
 * read then, so it can't be worked out again later: a short record of it is kept beside the family's settings, one for each
 * page. It goes along when two files are merged, so that a page is entered on any of the family's computers. Every method may
 * fail with {@link RecordsFailure}.
 */
final class PageRegister {
    private static final String NAME = "page";
    private static final int FIRST = 1000;
    private static final int NUMBERS = 9000;
    private static final int CODE = 2;

    private final Store store;

    PageRegister(Store store) {
        this.store = store;
    }

    /**
     * The number of a page: that of the same page if it waits to be entered, else a free one, which is remembered. Numbers
     * follow from what is on the page and are four digits, so that two computers seldom give the same.
     */
    int number(Child child, PageKind kind, LocalDate day, List<Prompt> prompts) {
        Map<String, String> known = store.homeSettings(NAME);
        for (NumberedPage page : pages(child)) {
            boolean same = page.kind() == kind
                    && page.prompts().equals(prompts)
                    && page.day().equals(day);
            if (same && page.entered().isEmpty()) {
                return page.number();
            }
        }
        int place = Math.floorMod(codes(prompts).hashCode() + 31 * day.hashCode() + kind.ordinal(), NUMBERS);
        for (int tried = 0; tried < NUMBERS; tried++) {
            int number = FIRST + (place + tried) % NUMBERS;
            if (known.keySet().stream().noneMatch(name -> name.startsWith(NAME + number))) {
                keep(child, new NumberedPage(number, kind, day, prompts, List.of()));
                return number;
            }
        }
        // A page a day for twenty-four years.
        throw new IllegalStateException(NAME);
    }

    /** All pages of a child, the newest first. */
    List<NumberedPage> pages(Child child) {
        List<UUID> ids = store.ids(child.id());
        Set<UUID> drills =
                store.sessions(child.id()).stream().map(DrillSession::id).collect(Collectors.toSet());
        List<NumberedPage> pages = new ArrayList<>();
        store.homeSettings(NAME).forEach((name, text) -> {
            if (ids.stream().anyMatch(id -> name.endsWith(hex(id)))) {
                // A drill that was taken back, here or elsewhere, holds no answers any more.
                read(name, text)
                        .map(page -> page.enteredAs(
                                page.entered().stream().filter(drills::contains).toList()))
                        .ifPresent(pages::add);
            }
        });
        pages.sort(Comparator.comparing(NumberedPage::day).reversed().thenComparing(NumberedPage::number));
        return pages;
    }

    void keep(Child child, NumberedPage page) {
        String text = page.kind().key() + " " + page.day() + " " + codes(page.prompts())
                + page.entered().stream().map(drill -> " " + drill).collect(Collectors.joining());
        Map<String, String> known = store.homeSettings(NAME + page.number());
        String name = store.ids(child.id()).stream()
                .map(id -> NAME + page.number() + hex(id))
                .filter(known::containsKey)
                .findFirst()
                .orElse(NAME + page.number() + hex(child.id()));
        store.keepHomeSetting(name, text);
    }

    /** The page; empty where the text, which may be another computer's, is none. */
    private static Optional<NumberedPage> read(String name, String text) {
        try {
            return Optional.of(page(name, text));
        } catch (IllegalArgumentException | IndexOutOfBoundsException | DateTimeException e) {
            return Optional.empty();
        }
    }

    private static NumberedPage page(String name, String text) {
        String[] words = text.split(" ");
        List<Prompt> prompts = new ArrayList<>();
        for (int i = 0; i < words[2].length(); i += CODE) {
            prompts.add(PaperQuestions.ofCode(words[2].substring(i, i + CODE)));
        }
        int digits = NAME.length();
        return new NumberedPage(
                Integer.parseInt(name.substring(digits, digits + 4)),
                PageKind.valueOf(words[0].toUpperCase(java.util.Locale.ROOT)),
                LocalDate.parse(words[1]),
                prompts,
                Arrays.stream(words).skip(3).map(UUID::fromString).toList());
    }

    private static String codes(List<Prompt> prompts) {
        return prompts.stream().map(PaperQuestions::code).collect(Collectors.joining());
    }

    /** Names end in the child's id, so that what is remembered of a child goes with it. */
    private static String hex(UUID child) {
        return child.toString().replace("-", "");
    }
}
