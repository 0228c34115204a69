// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.home.Home;
import fourfold.log.RecordsFailure;
import fourfold.terminal.Page;
import fourfold.terminal.PageEffect;

/** What a page asks of the home. The records that implement it are the only part of a page that reads or writes. */
public interface HomeEffect extends PageEffect.Outside {
    /**
     * Does it; called on the file's thread, and may wait there for a file that another program holds.
     *
     * @throws RecordsFailure if the file can't be read or does not take it
     */
    Outcome perform(Home home);

    /** A page was made from what was read. */
    record Made(Page page) implements Outcome {}

    /** It was done, and there is nothing to tell of it. */
    record Kept() implements Outcome {}

    /** It was not done, for the child practises in another window. */
    record Elsewhere() implements Outcome {}

    /** It could not be done. */
    record Failed(RecordsFailure failure) implements Outcome {}
}
