/**
 * [pure] The look ahead: learners fitted to a child's answers practise on through the real drill, many times over, until
 * all families are fluent.
 */
@NullMarked
package fourfold.outlook;

import org.jspecify.annotations.NullMarked;
