// SPDX-License-Identifier: Apache-2.0
package fourfold.home;

import fourfold.log.Problem;
import fourfold.log.Reason;
import fourfold.log.RecordsFailure;
import fourfold.log.RecordsFailure.Task;
import fourfold.store.Store;
import fourfold.upkeep.Backups;
import fourfold.upkeep.Merge;
import fourfold.upkeep.SharedFolder;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/**
 * The computers of one household that meet in a folder: after each drill this one lays its records there, at the start it
 * takes in what the others laid. Which folder it is holds for this computer alone and goes along to no other.
 */
public final class TwoComputers {
    private static final String FOLDER = "together.folder";
    private static final String COMPUTER = "together.computer";
    private static final String LAID = "together.laid";
    private static final String TAKEN = "together.taken.";

    private final Store store;
    private final Optional<Path> file;

    TwoComputers(Store store, Optional<Path> file) {
        this.store = store;
        this.file = file;
    }

    /**
     * How it stands.
     *
     * @param folder the folder; empty if none was chosen
     * @param own this computer's name there
     * @param there who was there when, the last one first
     */
    public record State(Optional<Path> folder, String own, List<SharedFolder.Laid> there) {}

    /**
     * What came of another computer's file.
     *
     * @param computer whose it is
     * @param taken what was taken in; empty if it was passed over
     * @param failure why it was passed over
     */
    public record Report(String computer, Optional<Merge> taken, Optional<RecordsFailure> failure) {}

    /** The folder and who was there when. */
    public State state() {
        Optional<Path> folder = folder();
        return new State(
                folder,
                set(COMPUTER),
                folder.map(f -> SharedFolder.of(f, family()).all()).orElse(List.of()));
    }

    /**
     * Meets the others in this folder from now on: takes in what is there, and lays the own records there.
     *
     * @param called what this computer is called there; other characters than letters and digits are left out
     */
    public List<Report> setUp(Path folder, String called, Instant at) {
        SharedFolder.of(folder, family());
        String letters = called.replaceAll("[^A-Za-z0-9]", "");
        String name = letters.isEmpty() ? "computer" : letters.substring(0, Math.min(20, letters.length()));
        store.keepHomeSetting(COMPUTER, name + "-" + number());
        store.keepHomeSetting(LAID, "");
        store.keepHomeSetting(FOLDER, folder.toAbsolutePath().normalize().toString());
        List<Report> reports = takeIn(at);
        lay();
        return reports;
    }

    private static String number() {
        return HexFormat.of().toHexDigits(UUID.randomUUID().hashCode());
    }

    /** Meets nobody any more, and takes the own file out of the folder. What was taken in stays. */
    public void stop() {
        Optional<Path> folder = folder();
        store.keepHomeSetting(FOLDER, "");
        folder.filter(Files::isDirectory)
                .ifPresent(f -> SharedFolder.of(f, family()).takeAway(set(COMPUTER)));
    }

    /** Takes in what others laid there since the last time, each for itself: what can't be taken in is passed over. */
    public List<Report> takeIn(Instant at) {
        List<Report> reports = new ArrayList<>();
        Optional<Path> folder = folder().filter(Files::isDirectory);
        if (folder.isPresent()) {
            SharedFolder shared = SharedFolder.of(folder.get(), family());
            renameIfAnotherHasThisName(shared);
            for (SharedFolder.Laid laid : shared.all()) {
                if (!laid.computer().equals(set(COMPUTER))) {
                    takeIn(laid, at).ifPresent(reports::add);
                }
            }
        }
        return reports;
    }

    /** A copied family's file has this computer's name on two computers: then the other one's file is not ours. */
    private void renameIfAnotherHasThisName(SharedFolder shared) {
        Path own = shared.file(set(COMPUTER));
        if (Files.exists(own) && !SharedFolder.stamp(own).equals(set(LAID))) {
            store.keepHomeSetting(COMPUTER, set(COMPUTER).replaceFirst("-.*", "-" + number()));
            store.keepHomeSetting(LAID, "");
        }
    }

    private Optional<Report> takeIn(SharedFolder.Laid laid, Instant at) {
        String number = TAKEN + laid.computer().replaceFirst("^.*-", "");
        try {
            String stamp = SharedFolder.stamp(laid.file());
            if (stamp.equals(set(number))) {
                return Optional.empty();
            }
            Backups.of(family()).ofDay(LocalDate.ofInstant(at, ZoneOffset.UTC));
            Merge merge = Merge.ofLaid(store, laid.file(), new Merge.Said(Set.of(), Map.of(), at, 0));
            store.keepHomeSetting(number, stamp);
            return Optional.of(new Report(laid.computer(), Optional.of(merge), Optional.empty()));
        } catch (RecordsFailure e) {
            return Optional.of(new Report(laid.computer(), Optional.empty(), Optional.of(e)));
        }
    }

    /**
     * Lays this computer's records in the folder, if one was chosen.
     *
     * @throws RecordsFailure if the folder is not there or does not take them
     */
    public void lay() {
        folder().ifPresent(f -> {
            SharedFolder shared = SharedFolder.of(f, family());
            renameIfAnotherHasThisName(shared);
            store.keepHomeSetting(LAID, shared.lay(family(), set(COMPUTER)));
        });
    }

    private Path family() {
        return file.orElseThrow(
                () -> new RecordsFailure(Task.SHARE, store.where(), Problem.of(Reason.DEMO_MEETS_NOBODY)));
    }

    private Optional<Path> folder() {
        return file.isEmpty()
                ? Optional.empty()
                : Optional.of(set(FOLDER)).filter(t -> !t.isEmpty()).map(Path::of);
    }

    private String set(String name) {
        return store.homeSetting(name).orElse("");
    }
}
