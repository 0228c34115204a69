// SPDX-License-Identifier: Apache-2.0
package fourfold.upkeep;

import java.nio.file.Path;

/**
 * A whole copy of the family's file.
 *
 * @param file where it is
 * @param name what it is called: the day it is of, such as {@code 2026-03-02}, or what it was made before
 */
public record Backup(Path file, String name) {}
