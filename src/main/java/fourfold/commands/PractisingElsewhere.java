// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.log.Child;

/** A command can't be done while the child practises in another window. */
final class PractisingElsewhere extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String name;

    PractisingElsewhere(Child child) {
        super("the child practises in another window");
        name = child.name();
    }

    /** The child's name. */
    String name() {
        return name;
    }
}
