// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import java.nio.file.Path;

/**
 * A page in its file.
 *
 * @param file where it is
 * @param before whether it was there already, the same to the letter
 * @param shown whether a browser was asked to show it
 */
public record MadePage(Path file, boolean before, boolean shown) {}
