// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.no_circles.memory;

import fourfold.planted.no_circles.facts.Hen;
import java.util.List;

/** Breaks the map on purpose: needs the hen that needs it. */
public record Egg(List<Hen> hens) {}
