// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.no_circles.facts;

import fourfold.planted.no_circles.memory.Egg;

/** Breaks the map on purpose: needs the egg that needs it. */
public record Hen(Egg egg) {}
