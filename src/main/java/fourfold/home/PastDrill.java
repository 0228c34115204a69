// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.DrillSession;
import fourfold.log.Purpose;
import java.util.Optional;

/**
 * One past drill in a line.
 *
 * @param session the drill
 * @param asked questions asked from memory
 * @param right the ones among them answered right
 * @param given on paper or aloud; empty at the keys
 */
public record PastDrill(DrillSession session, int asked, int right, Optional<Purpose> given) {}
