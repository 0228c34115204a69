// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.insight.PageChoice;
import fourfold.insight.PageKind;
import fourfold.insight.Portfolio;
import java.util.Optional;

/**
 * What a parent wants printed.
 *
 * @param kind which page
 * @param choice what is on it
 * @param copies how many different pages, 1 or more
 * @param period of a report; empty for all of the child's practice
 */
public record PageOrder(PageKind kind, PageChoice choice, int copies, Optional<Portfolio.Period> period) {
    /** One page as it usually is. */
    public static PageOrder usual(PageKind kind) {
        return new PageOrder(kind, PageChoice.usual(kind), 1, Optional.empty());
    }
}
