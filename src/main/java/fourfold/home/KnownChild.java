// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Child;

/** A child, and whether it was put away. */
public record KnownChild(Child child, boolean away) {}
