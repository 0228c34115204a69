// SPDX-License-Identifier: Apache-2.0
/** Fourfold: daily practice of multiplication and division facts at home. */
@NullMarked
package fourfold;

import org.jspecify.annotations.NullMarked;
