// SPDX-License-Identifier: Apache-2.0
package fourfold.log;

import java.time.Instant;
import java.util.UUID;

/**
 * A child who practises. A first name or nickname is enough.
 *
 * @param id unique across computers
 * @param name 1 to 40 characters of any script, no control characters, no blanks at the ends
 * @param since when the child was added
 */
public record Child(UUID id, String name, Instant since) {
    public Child {
        name = ChildName.kept(name);
    }
}
