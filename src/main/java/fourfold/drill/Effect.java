package fourfold.drill;

import fourfold.facts.Answer;
import fourfold.facts.Sitting;

/** What the world must do before the next state counts. */
public sealed interface Effect {
    /** Keep that a drill began. */
    record Begin(Sitting sitting) implements Effect {}

    /** Keep an answer for good. */
    record Keep(Answer answer) implements Effect {}
}
