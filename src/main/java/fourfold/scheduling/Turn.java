// SPDX-License-Identifier: Apache-2.0
package fourfold.scheduling;

import fourfold.facts.Question;
import fourfold.log.Purpose;

/**
 * One turn of a drill: a question and why it is asked.
 *
 * @param question what to ask; for {@link Purpose#INTRODUCE} the first product of the family to introduce
 * @param purpose introduce, practise, again or probe
 */
public record Turn(Question question, Purpose purpose) {
    public Turn {
        if (purpose == Purpose.COPY) {
            throw new IllegalArgumentException("a turn asks a question; numbers to copy are no turns");
        }
    }
}
