// SPDX-License-Identifier: Apache-2.0
package fourfold.outlook;

/** A change with which the goal comes within reach, and when it would be reached then. */
public record Within(Change change, Projection projection) {}
