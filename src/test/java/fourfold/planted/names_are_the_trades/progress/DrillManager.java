// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.names_are_the_trades.progress;

/** Breaks the map on purpose: no teacher would say this. */
public record DrillManager(int value) {}
