// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.facts.Prompt;
import fourfold.insight.PageKind;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;

/**
 * A page that was printed, as it is remembered until its answers are entered.
 *
 * @param number that stands on it, four digits
 * @param kind which page it is
 * @param day on which it was made
 * @param prompts what it asks, in order
 * @param entered the drills that hold its answers: none as long as they are not entered, and more than one where they were
 *     entered on two computers before these met; each of them counts
 */
public record NumberedPage(int number, PageKind kind, LocalDate day, List<Prompt> prompts, List<UUID> entered) {
    public NumberedPage {
        prompts = List.copyOf(prompts);
        entered = List.copyOf(entered);
    }

    /** The same page with other answers, or none. */
    NumberedPage enteredAs(List<UUID> drills) {
        return new NumberedPage(number, kind, day, prompts, drills);
    }
}
