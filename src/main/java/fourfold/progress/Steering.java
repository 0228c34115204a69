// SPDX-License-Identifier: Apache-2.0
package fourfold.progress;

import fourfold.facts.Families;
import fourfold.facts.Family;
import fourfold.log.ActionRecord;
import fourfold.log.ParentAction;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What the parent's actions come to, read oldest first with every undone action left out.
 *
 * @param focused families to practise more
 * @param held families left out for now
 * @param resets since when a family's answers count, where it was begun again
 * @param opened tables opened by hand, in the order in which that was done
 * @param closed tables closed by hand
 * @param order the order in which tables open
 * @param settings the child's settings
 * @param calendar the home's calendar
 */
public record Steering(
        Set<Family> focused,
        Set<Family> held,
        Map<Family, Instant> resets,
        List<Integer> opened,
        Set<Integer> closed,
        List<Integer> order,
        Settings settings,
        Calendar calendar) {
    /** No action at all. */
    public static final Steering NONE = of(List.of());

    public Steering {
        focused = Set.copyOf(focused);
        held = Set.copyOf(held);
        resets = Map.copyOf(resets);
        opened = List.copyOf(opened);
        closed = Set.copyOf(closed);
        order = List.copyOf(order);
    }

    /** What these actions come to; their order does not matter, for they are sorted by time. */
    public static Steering of(List<ActionRecord> actions) {
        Set<Family> focused = new HashSet<>();
        Set<Family> held = new HashSet<>();
        Map<Family, Instant> resets = new HashMap<>();
        List<Integer> opened = new ArrayList<>();
        Set<Integer> closed = new HashSet<>();
        Map<String, String> chosen = new LinkedHashMap<>();
        List<Integer> order = Families.USUAL_ORDER;
        CalendarEntries.Fold calendar = new CalendarEntries.Fold();
        for (ActionRecord action : ActionRecord.inForce(actions)) {
            ParentAction done = action.action();
            if (done instanceof ParentAction.Focus focus) {
                held.remove(focus.family());
                focused.add(focus.family());
            } else if (done instanceof ParentAction.Hold hold) {
                focused.remove(hold.family());
                held.add(hold.family());
            } else if (done instanceof ParentAction.Release release) {
                focused.remove(release.family());
                held.remove(release.family());
            } else if (done instanceof ParentAction.Reset reset) {
                resets.put(reset.family(), action.at());
            } else if (done instanceof ParentAction.OpenTable open) {
                closed.remove(open.table());
                opened.remove((Integer) open.table());
                opened.add(open.table());
            } else if (done instanceof ParentAction.CloseTable close) {
                opened.remove((Integer) close.table());
                closed.add(close.table());
            } else if (done instanceof ParentAction.Order chosenOrder) {
                order = chosenOrder.tables();
            } else if (done instanceof ParentAction.Choose choose) {
                chosen.put(choose.setting(), choose.chosen());
            }
            calendar.take(action, chosen);
        }
        return new Steering(focused, held, resets, opened, closed, order, Settings.of(chosen), calendar.calendar());
    }

    /** Whether no family was ever begun again. */
    boolean nothingBegunAgain() {
        return resets.isEmpty();
    }

    /** Since when the family's answers count; empty if it was never begun again. */
    public Optional<Instant> begunAgain(Family family) {
        return Optional.ofNullable(resets.get(family));
    }

    /**
     * The families in the order in which they are to be introduced: tables opened by hand first, then by the order;
     * without held families and without those that only a closed table would bring. The calendar's dates are left aside;
     * see {@link Openings}.
     */
    public List<Family> introductionOrder() {
        return introducedBy(order);
    }

    /** The same with other tables, in their order, after those that were opened by hand. */
    List<Family> introducedBy(List<Integer> others) {
        List<Integer> tables = new ArrayList<>(opened);
        others.stream().filter(t -> !tables.contains(t)).forEach(tables::add);
        tables.removeAll(closed);
        return Families.introducedBy(tables).stream()
                .filter(f -> !held.contains(f))
                .filter(f -> tables.contains(f.low()) || tables.contains(f.high()))
                .toList();
    }
}
