package fourfold.terminal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** A page that changes in place: the old form, for pages that are no values yet. */
public interface MutablePage extends Page {
    /** What a key does. */
    Navigation on(Key key, Instant at);

    /** Called about twenty times a second, and when the file's thread has done something; true if the page must be drawn again. */
    default boolean tick(Instant at) {
        return false;
    }

    /** Where the page goes by itself; asked after each tick. */
    default Navigation next() {
        return Navigation.STAY;
    }

    /** Called when a drawing has left the program; true if the page waits for no earlier key. */
    default boolean painted(Instant at) {
        return false;
    }

    /** The program is about to be suspended or to lose its window. */
    default void interrupted(Instant at) {}

    /** Called when the page in front of this one has closed. */
    default void returned() {}

    /** The program is ending. What is still to be done is begun on the file's thread; the program ends when it is done. */
    default void leave(Instant at) {}

    @Override
    default PageResult on(PageEvent event) {
        List<PageEffect> effects = new ArrayList<>();
        if (event instanceof PageEvent.Pressed pressed) {
            add(effects, on(pressed.key(), pressed.at()));
        } else if (event instanceof PageEvent.Tick tick) {
            if (tick(tick.at())) {
                effects.add(new PageEffect.Settle(java.time.Duration.ZERO));
            }
            add(effects, next());
        } else if (event instanceof PageEvent.Painted painted) {
            if (painted(painted.at())) {
                effects.add(new PageEffect.DropEarlierKeys());
            }
        } else if (event instanceof PageEvent.Interrupted interrupted) {
            interrupted(interrupted.at());
        } else if (event instanceof PageEvent.Returned) {
            returned();
        } else if (event instanceof PageEvent.Leave leave) {
            leave(leave.at());
        }
        return new PageResult(this, effects);
    }

    private static void add(List<PageEffect> effects, Navigation navigation) {
        if (navigation instanceof Navigation.Open open) {
            effects.add(new PageEffect.Open(open.page()));
        } else if (navigation instanceof Navigation.Replace replace) {
            effects.add(new PageEffect.Replace(replace.page()));
        } else if (navigation instanceof Navigation.Back) {
            effects.add(PageEffect.BACK);
        } else if (navigation instanceof Navigation.Home) {
            effects.add(PageEffect.FIRST);
        } else if (navigation instanceof Navigation.LeaveProgram) {
            effects.add(PageEffect.LEAVE);
        }
    }
}
