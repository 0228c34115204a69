// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.store.Store;
import fourfold.terminal.SessionClock;
import fourfold.upkeep.Backups;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.LongSupplier;

/**
 * A drill as the file sees it: it takes the child's place, begins, keeps answers and ends with a backup. Every method may
 * fail with {@link RecordsFailure}, and may wait some seconds for a file that another program holds: pages have them
 * called by {@link #fileWork} alone.
 */
public final class Practice {
    private final Store store;
    private final SessionClock moments;
    private final LongSupplier seeds;
    private final Optional<Path> file;
    private final DrillSeat seat;
    private final FileWork fileWork = new FileWork();
    private Keeping keeping = new Keeping(this);
    private final List<String> toTell = new ArrayList<>();

    Practice(Store store, SessionClock moments, LongSupplier seeds, Optional<Path> file, DrillSeat seat) {
        this.store = store;
        this.moments = moments;
        this.seeds = seeds;
        this.file = file;
        this.seat = seat;
    }

    /** The thread on which pages keep and read; one for all pages of this home. */
    public FileWork fileWork() {
        return fileWork;
    }

    /** What the drill that is going on has still to keep; for {@link #fileWork} alone. */
    public Keeping keeping() {
        return keeping;
    }

    /**
     * A new drill of a child, not yet kept.
     *
     * @param minutes the planned length, 1 to 30
     * @return empty while the child practises in another window
     */
    public Optional<DrillSession> newSession(Child child, int minutes, Instant at) {
        if (!seat.take(child)) {
            return Optional.empty();
        }
        keeping = new Keeping(this);
        return Optional.of(new DrillSession(
                UUID.randomUUID(),
                child.id(),
                at.truncatedTo(ChronoUnit.MILLIS),
                moments.zoneOffsetMinutes(at),
                Duration.ofMinutes(minutes),
                seeds.getAsLong()));
    }

    /** Keeps that a drill began. */
    public void begin(DrillSession session) {
        store.begin(session);
    }

    /** Keeps an answer for good before it returns. */
    public void keep(Answer answer) {
        // A drill may last beyond a change of summer time: each answer has the zone that was in force when it was
        // asked.
        store.keep(answer.inZone(moments.zoneOffsetMinutes(answer.askedAt())));
    }

    /**
     * A drill is over and all of it is kept: the time to bring the log into the file, and for the day's backup.
     *
     * @return what a grown-up should know, if something about it went wrong
     */
    public Optional<RecordsFailure> ended(DrillSession session, Instant at) {
        seat.leave();
        try {
            store.checkpoint();
            file.map(Backups::of).ifPresent(b -> b.ofDay(LocalDate.ofEpochDay(session.localDay())));
            new TwoComputers(store, file).lay();
            return Optional.empty();
        } catch (RecordsFailure e) {
            return Optional.of(e);
        }
    }

    /** A drill is over and something of it is lost: a line to be shown to a grown-up when the program ends. */
    public void lost(String line) {
        seat.leave();
        toTell.add(line);
    }

    /** Lines to be shown to a grown-up now that the program ends and {@link #fileWork} is done. */
    public List<String> toTell() {
        return List.copyOf(toTell);
    }
}
