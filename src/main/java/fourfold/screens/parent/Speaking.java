// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.parent;

import fourfold.terminal.Page;
import fourfold.words.Words;
import java.util.List;

/** A page that can also say in sentences what it draws. */
interface Speaking extends Page {
    /** Its language. */
    Words words();

    /** What it says: first what the last key did or asks and what is marked, then all else. */
    List<String> said();

    /** Its keys, as its foot names them, three blanks between. */
    String keys();

    /** Whether it is only read, so that the arrows move its sentences. */
    default boolean isOnlyRead() {
        return false;
    }

    /** Whether letters are being typed into it. */
    default boolean isTyping() {
        return false;
    }
}
