// SPDX-License-Identifier: Apache-2.0
package fourfold.screens.child;

import fourfold.drill.Depiction;
import fourfold.drill.Phase;
import fourfold.facts.Family;
import fourfold.terminal.Picture;
import fourfold.words.Words;
import java.util.List;
import java.util.Optional;

/** Lessons drawn without a drill around them. */
public final class LessonPictures {
    private LessonPictures() {}

    /** A family's introduction, its picture whole. */
    public static void meeting(Picture picture, Family family, Depiction depiction) {
        new LessonPicture(Words.english())
                .meeting(
                        picture,
                        new Phase.Meeting(
                                family,
                                Optional.of(depiction),
                                Optional.empty(),
                                family.low(),
                                List.copyOf(family.questions())),
                        "Enter");
    }
}
