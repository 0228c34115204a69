// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;

/**
 * A parent's action with its time. Actions are kept in a log of their own and read in order of time.
 *
 * @param id unique across computers
 * @param child whom it concerns
 * @param at when it was done, kept to the millisecond
 * @param zoneOffsetMinutes minutes by which local time was ahead of UTC then
 * @param action what was done
 */
public record ActionRecord(UUID id, UUID child, Instant at, int zoneOffsetMinutes, ParentAction action) {
    /** Oldest first; equal times by id, so that two computers agree. */
    public static final Comparator<ActionRecord> IN_ORDER = ActionRecord::inOrder;

    private static int inOrder(ActionRecord one, ActionRecord other) {
        int times = one.at.compareTo(other.at);
        return times != 0 ? times : one.id.toString().compareTo(other.id.toString());
    }

    /** The actions that were not undone, oldest first; undos themselves are left out. */
    public static List<ActionRecord> inForce(List<ActionRecord> actions) {
        List<ActionRecord> sorted = actions.stream().sorted(IN_ORDER).toList();
        Set<UUID> undone = new HashSet<>();
        List<ActionRecord> left = new ArrayList<>();
        for (int i = sorted.size() - 1; i >= 0; i--) {
            ActionRecord action = sorted.get(i);
            if (undone.contains(action.id())) {
                continue;
            }
            if (action.action() instanceof ParentAction.Undo undo) {
                undone.add(undo.action());
            } else {
                left.add(action);
            }
        }
        Collections.reverse(left);
        return List.copyOf(left);
    }

    /**
     * All that was done, undos left out, oldest first: actions of one kind that were done at the same moment, such as those
     * of a whole table, are one thing.
     */
    public static List<List<ActionRecord>> together(List<ActionRecord> actions) {
        Map<List<Object>, List<ActionRecord>> all = new LinkedHashMap<>();
        for (ActionRecord record : actions.stream().sorted(IN_ORDER).toList()) {
            if (!(record.action() instanceof ParentAction.Undo)) {
                Object kind = record.action() instanceof ParentAction.Choose
                        ? record.id()
                        : record.action().getClass();
                all.computeIfAbsent(List.of(record.at(), kind), k -> new ArrayList<>())
                        .add(record);
            }
        }
        return new ArrayList<>(all.values());
    }
}
