// SPDX-License-Identifier: Apache-2.0
/**
 * Printed pages as HTML with nothing outside it: cards, a practice page, the table, a child's progress.
 *
 * <p>Begin with {@link fourfold.paper.PrintedPage}, which draws one of the documents; {@link fourfold.paper.HtmlPage} is their frame.
 *
 * <p>May use facts, log, memory, progress, insight, outlook and words. What is on a page is handed in; nothing is
 * chosen, looked up or written to a file here.
 */
@NullMarked
package fourfold.paper;

import org.jspecify.annotations.NullMarked;
