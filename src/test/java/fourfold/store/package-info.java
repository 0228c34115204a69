// SPDX-License-Identifier: Apache-2.0
/** Tests of the store. */
@NullMarked
package fourfold.store;

import org.jspecify.annotations.NullMarked;
