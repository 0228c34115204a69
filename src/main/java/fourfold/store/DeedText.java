package fourfold.store;

import fourfold.facts.Deed;
import fourfold.facts.Family;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A deed as the file holds it.
 *
 * @param kind the word for what was done
 * @param detail to what: a family {@code 6x7}, a table {@code 7}, an order {@code 2 1 5 …}, {@code setting=text}, or the
 *     id of an act
 */
record DeedText(String kind, String detail) {
    private static final int LONGEST = 400;

    /**
     * Writes a deed down.
     *
     * @throws Refusal if its text is too long or can't be kept as it is
     */
    static DeedText of(Deed deed) {
        if (deed instanceof Deed.Focus focus) {
            return new DeedText("focus", focus.family().toString());
        } else if (deed instanceof Deed.Hold hold) {
            return new DeedText("hold", hold.family().toString());
        } else if (deed instanceof Deed.Release release) {
            return new DeedText("release", release.family().toString());
        } else if (deed instanceof Deed.Reset reset) {
            return new DeedText("reset", reset.family().toString());
        } else if (deed instanceof Deed.OpenTable open) {
            return new DeedText("open", Integer.toString(open.table()));
        } else if (deed instanceof Deed.CloseTable close) {
            return new DeedText("close", Integer.toString(close.table()));
        } else if (deed instanceof Deed.Order order) {
            return new DeedText(
                    "order", order.tables().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        } else if (deed instanceof Deed.Choose choose) {
            return choice(choose);
        } else if (deed instanceof Deed.Undo undo) {
            return new DeedText("undo", undo.act().toString());
        }
        throw new IllegalArgumentException("no way to keep " + deed);
    }

    /**
     * Reads it back.
     *
     * @throws IllegalArgumentException if the kind is unknown or the detail does not fit it
     */
    Deed deed() {
        return switch (kind) {
            case "focus" -> new Deed.Focus(Family.parse(detail));
            case "hold" -> new Deed.Hold(Family.parse(detail));
            case "release" -> new Deed.Release(Family.parse(detail));
            case "reset" -> new Deed.Reset(Family.parse(detail));
            case "open" -> new Deed.OpenTable(Integer.parseInt(detail));
            case "close" -> new Deed.CloseTable(Integer.parseInt(detail));
            case "order" -> new Deed.Order(tables());
            case "choose" -> chosen();
            case "undo" -> new Deed.Undo(UUID.fromString(detail));
            default -> throw new IllegalArgumentException("no deed is called \"" + kind + "\"");
        };
    }

    private static DeedText choice(Deed.Choose choose) {
        String detail = choose.setting() + "=" + choose.chosen();
        if (!choose.setting().matches("[A-Za-z][A-Za-z0-9-]*")) {
            throw new Refusal("a setting's name is made of letters, digits and hyphens");
        }
        if (detail.length() > LONGEST) {
            throw new Refusal("a setting and its text have at most " + LONGEST + " characters");
        }
        if (detail.codePoints()
                .anyMatch(c -> Character.isISOControl(c) || Character.getType(c) == Character.SURROGATE)) {
            throw new Refusal("a setting's text holds no control characters");
        }
        return new DeedText("choose", detail);
    }

    private Deed.Choose chosen() {
        int sign = detail.indexOf('=');
        if (sign < 1) {
            throw new IllegalArgumentException("a choice is written setting=text, not \"" + detail + "\"");
        }
        return new Deed.Choose(detail.substring(0, sign), detail.substring(sign + 1));
    }

    private List<Integer> tables() {
        return Stream.of(detail.split(" ", -1)).map(Integer::valueOf).toList();
    }
}
