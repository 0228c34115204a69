package fourfold.insight;

import fourfold.facts.Family;
import fourfold.facts.Question;
import fourfold.progress.Mastery;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Questions for a page of paper: of the families that need it most among those that were met, each with a product and an
 * inverse, mixed so that the two are never next to each other.
 */
public final class PaperQuestions {
    /** The most questions on a page. */
    public static final int MOST = 40;

    /** The most cards on a sheet: four across and eight down. */
    public static final int CARDS = 32;

    private PaperQuestions() {}

    /**
     * The questions in the order in which they are printed.
     *
     * @param count 2 to {@value #MOST}
     * @param seed decides all free choices
     * @return fewer if the families that were met have no more
     */
    public static List<Question> of(Grid grid, int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Family> families = grid.cells().stream()
                .filter(c -> c.level() != Mastery.NEW && !c.held())
                .sorted(Comparator.comparing((Grid.Cell c) -> c.level())
                        .thenComparing(c -> !c.fading())
                        .thenComparingDouble(c -> c.asked() == 0 ? 0 : (double) c.right() / c.asked())
                        .thenComparing(Grid.Cell::family))
                .map(Grid.Cell::family)
                .toList();
        List<Question> products = new ArrayList<>();
        List<Question> quotients = new ArrayList<>();
        for (Family family : families.subList(0, Math.min(families.size(), count / 2))) {
            List<Question> all = family.questions();
            int half = all.size() / 2;
            products.add(all.get(random.nextInt(half)));
            quotients.add(all.get(half + random.nextInt(half)));
        }
        return mixed(products, quotients, random);
    }

    /** Shuffled, then moved apart where two neighbours are of one family. */
    private static List<Question> mixed(List<Question> products, List<Question> quotients, SplittableRandom random) {
        List<Question> all = new ArrayList<>(products);
        all.addAll(quotients);
        List<Question> order = new ArrayList<>();
        Set<Question> used = new HashSet<>();
        while (order.size() < all.size()) {
            List<Question> left = all.stream().filter(q -> !used.contains(q)).toList();
            List<Question> apart = order.isEmpty()
                    ? left
                    : left.stream()
                            .filter(q -> !q.family()
                                    .equals(order.get(order.size() - 1).family()))
                            .toList();
            // Near the end only the last one's own inverse may be left; it then goes to the front.
            if (apart.isEmpty()) {
                left.forEach(q -> order.add(0, q));
                used.addAll(left);
            } else {
                Question next = apart.get(random.nextInt(apart.size()));
                order.add(next);
                used.add(next);
            }
        }
        return List.copyOf(order);
    }
}
