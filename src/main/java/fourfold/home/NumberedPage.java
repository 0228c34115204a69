// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.facts.Prompt;
import fourfold.insight.PageKind;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * A page that was printed, as it is remembered until its answers are entered.
 *
 * @param number that stands on it, four digits
 * @param kind which page it is
 * @param day on which it was made
 * @param prompts what it asks, in order
 * @param entered the drill that holds its answers; empty as long as they are not entered
 */
public record NumberedPage(int number, PageKind kind, LocalDate day, List<Prompt> prompts, Optional<UUID> entered) {
    public NumberedPage {
        prompts = List.copyOf(prompts);
    }

    /** The same page with other answers, or none. */
    NumberedPage enteredAs(Optional<UUID> drill) {
        return new NumberedPage(number, kind, day, prompts, drill);
    }
}
