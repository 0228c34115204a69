// SPDX-License-Identifier: Apache-2.0
/**
 * Every text that a person can meet, with its numbers, dates and plurals, in every language.
 *
 * <p>Begin with {@link fourfold.words.Words}, one language; its texts are in {@code words.properties} and the files
 * beside it. A language more is files more, not code. {@link fourfold.words.SafeText} makes names from outside safe
 * to print.
 *
 * <p>May use facts, log, memory, progress, drill, insight and outlook, whose values it puts into words. It decides
 * nothing and works nothing out; it reads its own texts and no other file.
 */
@NullMarked
package fourfold.words;

import org.jspecify.annotations.NullMarked;
