package fourfold.home;

import fourfold.log.DrillSession;

/** One past drill in a line: when it began, how many questions were asked from memory, how many were right. */
public record PastDrill(DrillSession session, int asked, int right) {}
