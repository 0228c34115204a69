// SPDX-License-Identifier: Apache-2.0
package fourfold.screens;

import fourfold.home.Calculations;
import fourfold.home.FileWork;
import fourfold.home.Home;
import fourfold.log.RecordsFailure;
import fourfold.terminal.PageEffect;
import fourfold.terminal.Performer;
import fourfold.words.Words;
import java.time.Duration;
import java.util.concurrent.Future;

/** Does what pages ask: of the home on the file's own thread, calculations on another. */
public final class HomePerformer implements Performer {
    private final Home home;
    private final FileWork work;
    private final Calculations calculations;
    private final String oneMoment;
    private final String windowTooSmall;

    /** For an open home, in its language. */
    public HomePerformer(Home home, Words words) {
        this.home = home;
        this.work = home.practice().fileWork();
        this.calculations = home.calculations();
        this.oneMoment = words.say("drill.moment");
        this.windowTooSmall = words.say("window.small");
    }

    @Override
    public Future<PageEffect.Outcome> begin(PageEffect.Outside effect) {
        if (effect instanceof PageEffect.Calculation calculation) {
            return calculations.begin(calculation::result);
        }
        HomeEffect wanted = (HomeEffect) effect;
        return work.begin(() -> performed(wanted));
    }

    private PageEffect.Outcome performed(HomeEffect effect) {
        try {
            return effect.perform(home);
        } catch (RecordsFailure e) {
            return new HomeEffect.Failed(e);
        }
    }

    @Override
    public void finish(Duration longest) {
        work.finish(longest);
    }

    @Override
    public String oneMoment() {
        return oneMoment;
    }

    @Override
    public String windowTooSmall() {
        return windowTooSmall;
    }
}
