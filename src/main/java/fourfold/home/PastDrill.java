package fourfold.home;

import fourfold.log.DrillSession;

/**
 * One past drill in a line.
 *
 * @param session the drill
 * @param asked questions asked from memory
 * @param right the ones among them answered right
 */
public record PastDrill(DrillSession session, int asked, int right) {}
