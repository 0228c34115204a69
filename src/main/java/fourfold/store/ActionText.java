// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.facts.Family;
import fourfold.facts.Operation;
import fourfold.log.AwayPractice;
import fourfold.log.InvalidValue;
import fourfold.log.ParentAction;
import fourfold.log.Reason;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * An action as the file holds it.
 *
 * @param kind the word for what was done
 * @param detail to what: a family {@code 6x7}, a table {@code 7}, an order {@code 2 1 5 …}, {@code setting=text}, a part of
 *     the calendar {@code start=2026-09-07}, a lesson {@code 7 divide}, a day and what was practised with
 *     {@code 2026-11-02 cards}, or the id of an action
 */
public record ActionText(String kind, String detail) {
    private static final int LONGEST = 400;

    /**
     * Writes an action down.
     *
     * @throws Refusal if its text is too long or can't be kept as it is
     */
    static ActionText of(ParentAction action) {
        if (action instanceof ParentAction.Focus focus) {
            return new ActionText("focus", focus.family().toString());
        } else if (action instanceof ParentAction.Hold hold) {
            return new ActionText("hold", hold.family().toString());
        } else if (action instanceof ParentAction.Release release) {
            return new ActionText("release", release.family().toString());
        } else if (action instanceof ParentAction.Reset reset) {
            return new ActionText("reset", reset.family().toString());
        } else if (action instanceof ParentAction.OpenTable open) {
            return new ActionText("open", Integer.toString(open.table()));
        } else if (action instanceof ParentAction.CloseTable close) {
            return new ActionText("close", Integer.toString(close.table()));
        } else if (action instanceof ParentAction.Order order) {
            return new ActionText(
                    "order", order.tables().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        } else if (action instanceof ParentAction.Choose choose) {
            return choice("choose", choose.setting(), choose.chosen());
        } else if (action instanceof ParentAction.CalendarEntry entry) {
            return choice("calendar", entry.part(), entry.text());
        } else if (action instanceof ParentAction.Taught taught) {
            return new ActionText(
                    "taught", taught.table() + " " + taught.operation().word());
        } else if (action instanceof ParentAction.Away away) {
            return new ActionText("away", away.day() + " " + away.practice().key());
        } else if (action instanceof ParentAction.Undo undo) {
            return new ActionText("undo", undo.action().toString());
        }
        throw new IllegalArgumentException("no way to keep " + action);
    }

    /**
     * Reads it back.
     *
     * @throws InvalidValue if the kind is unknown or the detail does not fit it
     */
    public ParentAction action() {
        try {
            return read();
        } catch (IllegalArgumentException e) {
            throw new InvalidValue(Reason.ACTION_TEXT, kind, detail);
        }
    }

    private ParentAction read() {
        return switch (kind) {
            case "focus" -> new ParentAction.Focus(Family.parse(detail));
            case "hold" -> new ParentAction.Hold(Family.parse(detail));
            case "release" -> new ParentAction.Release(Family.parse(detail));
            case "reset" -> new ParentAction.Reset(Family.parse(detail));
            case "open" -> new ParentAction.OpenTable(Integer.parseInt(detail));
            case "close" -> new ParentAction.CloseTable(Integer.parseInt(detail));
            case "order" -> new ParentAction.Order(tables());
            case "choose" -> new ParentAction.Choose(part(0, '='), part(1, '='));
            case "calendar" -> new ParentAction.CalendarEntry(part(0, '='), part(1, '='));
            case "taught" -> new ParentAction.Taught(Integer.parseInt(part(0, ' ')), Operation.ofWord(part(1, ' ')));
            case "away" -> new ParentAction.Away(day(part(0, ' ')), AwayPractice.ofKey(part(1, ' ')));
            case "undo" -> new ParentAction.Undo(UUID.fromString(detail));
            default -> throw new IllegalArgumentException("no action is called \"" + kind + "\"");
        };
    }

    private static ActionText choice(String kind, String name, String text) {
        String detail = name + "=" + text;
        if (!name.matches("[A-Za-z][A-Za-z0-9-]*")) {
            throw new Refusal(Reason.SETTING_NAME);
        }
        if (detail.length() > LONGEST) {
            throw new Refusal(Reason.SETTING_LONG, LONGEST);
        }
        if (detail.codePoints()
                .anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE)) {
            throw new Refusal(Reason.SETTING_CONTROL);
        }
        return new ActionText(kind, detail);
    }

    /** What stands before the first such sign, or after it. */
    private String part(int which, char between) {
        int sign = detail.indexOf(between);
        if (sign < 1) {
            throw new IllegalArgumentException("no " + between + " in \"" + detail + "\"");
        }
        return which == 0 ? detail.substring(0, sign) : detail.substring(sign + 1);
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("no day is " + text, e);
        }
    }

    private List<Integer> tables() {
        return Stream.of(detail.split(" ", -1)).map(Integer::valueOf).toList();
    }
}
