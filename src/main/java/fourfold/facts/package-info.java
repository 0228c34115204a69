/**
 * [pure] The words everybody speaks: facts, families, questions, answers, and the parent's acts.
 *
 * <p>Start with {@link fourfold.facts.Family}; then {@link fourfold.facts.Question} and {@link fourfold.log.Answer}.
 * {@link fourfold.facts.Families} knows all of them.
 */
@NullMarked
package fourfold.facts;

import org.jspecify.annotations.NullMarked;
