// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.log.Surface;
import fourfold.scheduling.Scheduler;
import fourfold.words.Words;

/**
 * What all pages of one run have in common.
 *
 * @param words the language of this home
 * @param scheduler chooses the questions of a drill
 * @param surface where answers are typed
 */
public record PageContext(Words words, Scheduler scheduler, Surface surface) {}
