// SPDX-License-Identifier: Apache-2.0
package fourfold.planted.numbers_do_not_change_places_unseen.insight;

/** Breaks the rule on wide records. */
record WideRecord(int families, int met, int accurate, int fluent) {}
