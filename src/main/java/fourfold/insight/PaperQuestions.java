// SPDX-License-Identifier: Apache-2.0
package fourfold.insight;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.facts.MissingFactor;
import fourfold.facts.Operation;
import fourfold.facts.Prompt;
import fourfold.facts.Question;
import fourfold.progress.Mastery;
import fourfold.progress.Progress;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/** Questions and families for a page of paper, chosen from a child's grid. A seed decides all free choices. */
public final class PaperQuestions {
    /** The most questions on a page. */
    public static final int MOST = 40;

    /** The most cards on a sheet: four across and eight down. */
    public static final int CARDS = 32;

    private PaperQuestions() {}

    /**
     * Families in the order in which a page takes them: those of the chosen tables, or all that were met. What the parent
     * holds is left out.
     */
    public static List<Family> families(Grid grid, PageChoice choice, long seed) {
        List<Grid.Cell> cells = new ArrayList<>(grid.cells().stream()
                .filter(c -> !c.held() && isMeant(c, choice.tables()))
                .toList());
        if (choice.pick() == PageChoice.Pick.MIXED) {
            Collections.shuffle(cells, dice(seed));
        } else {
            cells.sort(NEEDED_MOST_FIRST);
        }
        return cells.stream().map(Grid.Cell::family).toList();
    }

    /** Neighbouring seeds give dice that have nothing in common. */
    private static Random dice(long seed) {
        return new Random(new SplittableRandom(seed).nextLong());
    }

    private static final Comparator<Grid.Cell> NEEDED_MOST_FIRST = Comparator.comparing(
                    (Grid.Cell c) -> c.level() == Mastery.NEW)
            .thenComparing(Grid.Cell::level)
            .thenComparing(c -> !c.fading())
            .thenComparingDouble(c -> c.asked() == 0 ? 0 : (double) c.right() / c.asked())
            .thenComparing(Grid.Cell::family);

    private static boolean isMeant(Grid.Cell cell, List<Integer> tables) {
        return tables.isEmpty() ? cell.level() != Mastery.NEW : tables.stream().anyMatch(cell.family()::contains);
    }

    /**
     * The questions in the order in which they are printed: each family once as it is asked, and where there are fewer
     * families than places, a second time the other way round. No two of one family stand next to each other where that
     * can be helped.
     *
     * @return fewer than was chosen if the families have no more
     */
    public static List<Prompt> of(Grid grid, PageChoice choice, long seed) {
        Random random = dice(seed);
        Set<Prompt> chosen = new LinkedHashSet<>();
        List<Family> families = families(grid, choice, seed);
        for (int round = 0; round < 2; round++) {
            for (Family family : families) {
                for (List<Prompt> forms : forms(family, choice.asked())) {
                    List<Prompt> left =
                            forms.stream().filter(p -> !chosen.contains(p)).toList();
                    boolean room = chosen.size() + (choice.asked() == PageChoice.Asked.BOTH ? pairsEnd(chosen) : 0)
                            < choice.count();
                    if (!left.isEmpty() && room) {
                        chosen.add(left.get(random.nextInt(left.size())));
                    }
                }
            }
        }
        return apart(List.copyOf(chosen), random);
    }

    /** A family comes with its inverse or not at all: an odd place at the end stays free. */
    private static int pairsEnd(Set<Prompt> chosen) {
        return chosen.size() % 2 == 0 ? 1 : 0;
    }

    /** The ways in which a family is asked; of each list one is taken in a round. */
    private static List<List<Prompt>> forms(Family family, PageChoice.Asked asked) {
        List<Prompt> products = questions(family, Operation.MULTIPLY);
        List<Prompt> quotients = questions(family, Operation.DIVIDE);
        return switch (asked) {
            case BOTH -> List.of(products, quotients);
            case PRODUCTS -> List.of(products);
            case QUOTIENTS -> List.of(quotients);
            case MISSING ->
                List.of(quotients.stream()
                        .<Prompt>map(q -> new MissingFactor((Question) q))
                        .toList());
        };
    }

    private static List<Prompt> questions(Family family, Operation operation) {
        return family.questions().stream()
                .filter(q -> q.operation() == operation)
                .<Prompt>map(q -> q)
                .toList();
    }

    /** The family that a question is about. */
    public static Family family(Prompt prompt) {
        return prompt instanceof MissingFactor hidden ? hidden.quotient().family() : ((Question) prompt).family();
    }

    /** Shuffled, then moved apart where two neighbours are of one family. */
    private static List<Prompt> apart(List<Prompt> all, Random random) {
        List<Prompt> left = new ArrayList<>(all);
        List<Prompt> order = new ArrayList<>();
        while (!left.isEmpty()) {
            List<Prompt> fit = left.stream()
                    .filter(p -> order.isEmpty() || !beside(p, order.get(order.size() - 1)))
                    .toList();
            Prompt next = fit.isEmpty() ? left.get(0) : fit.get(random.nextInt(fit.size()));
            left.remove(next);
            order.add(fit.isEmpty() ? placeFor(next, order) : order.size(), next);
        }
        return List.copyOf(order);
    }

    private static boolean beside(Prompt one, Prompt other) {
        return family(one).equals(family(other));
    }

    /** Where neither neighbour is of the same family; the end if there is no such place. */
    private static int placeFor(Prompt prompt, List<Prompt> order) {
        for (int i = 0; i < order.size(); i++) {
            if (!beside(prompt, order.get(i)) && (i == 0 || !beside(prompt, order.get(i - 1)))) {
                return i;
            }
        }
        return order.size();
    }

    /**
     * Questions for a game: as many of what is shaky, below accurate or fading, as of what is firm, where there are
     * enough; all with different answers, so that each fits in one place alone.
     */
    public static List<Prompt> forGame(Grid grid, PageChoice choice, long seed) {
        Random random = dice(seed);
        List<Family> shaky = new ArrayList<>();
        List<Family> firm = new ArrayList<>();
        for (Family family : families(grid, choice, seed)) {
            Grid.Cell cell = grid.cell(family);
            (cell.level().atLeast(Mastery.ACCURATE) && !cell.fading() ? firm : shaky).add(family);
        }
        Collections.shuffle(firm, random);
        Set<Integer> results = new HashSet<>();
        List<Prompt> chosen = new ArrayList<>();
        take(shaky, choice, (choice.count() + 1) / 2, random, results, chosen);
        take(firm, choice, choice.count(), random, results, chosen);
        take(shaky, choice, choice.count(), random, results, chosen);
        Collections.shuffle(chosen, random);
        return List.copyOf(chosen);
    }

    private static void take(
            List<Family> families,
            PageChoice choice,
            int upTo,
            Random random,
            Set<Integer> results,
            List<Prompt> chosen) {
        for (Family family : families) {
            List<Prompt> forms = new ArrayList<>();
            forms(family, choice.asked()).forEach(forms::addAll);
            Collections.shuffle(forms, random);
            for (Prompt prompt : forms) {
                if (chosen.size() < upTo && results.add(prompt.expected())) {
                    chosen.add(prompt);
                    break;
                }
            }
        }
    }

    /** The same, with 7 × ? = 56 in place of a division whose sign has not come yet at home. */
    public static List<Prompt> signed(List<Prompt> prompts, Progress progress) {
        return prompts.stream()
                .map(p -> p instanceof Question question ? progress.signed(question) : p)
                .toList();
    }

    /** A short name of a question on paper: its place among all, in two characters. */
    public static String code(Prompt prompt) {
        Question question = prompt instanceof MissingFactor hidden ? hidden.quotient() : (Question) prompt;
        int place = Families.questions().indexOf(question) + (prompt instanceof MissingFactor ? QUESTIONS : 0);
        String code = Integer.toString(place, 36);
        return code.length() < 2 ? "0" + code : code;
    }

    /** The question of a short name. */
    public static Prompt ofCode(String code) {
        int place = Integer.parseInt(code, 36);
        Question question = Families.questions().get(place % QUESTIONS);
        return place < QUESTIONS ? question : new MissingFactor(question);
    }

    private static final int QUESTIONS = 2 * Families.LARGEST_PRODUCT;

    /** The divisions of these families whose sign has not come yet at home. */
    public static Set<Question> waiting(List<Family> families, Progress progress) {
        return families.stream()
                .flatMap(f -> f.questions().stream())
                .filter(q -> progress.signed(q) instanceof MissingFactor)
                .collect(Collectors.toSet());
    }
}
