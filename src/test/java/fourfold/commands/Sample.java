// SPDX-License-Identifier: Apache-2.0
package fourfold.commands;

import fourfold.drill.Player;
import fourfold.log.Answer;
import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.progress.Progress;
import fourfold.progress.Steering;
import fourfold.scheduling.LastingGain;
import fourfold.store.MadeOnce;
import fourfold.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.UUID;

/** A child with thirty drills behind her, the same every time. */
public final class Sample {
    static final Instant START = Instant.parse("2026-01-12T08:00:00Z");

    private static Instant next = START;
    private static final MadeOnce MADE = MadeOnce.by(file -> next = make(file));

    private Sample() {}

    /** Lays the file down; gives the time of the next drill. */
    public static Instant fill(Path file) {
        MADE.at(file);
        return next;
    }

    /** Another child for each seed, with up to seven weeks behind it: how many drills, how sure and how quick is chance. */
    static void random(Path file, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        make(file, seed, new Manner(18 + dice.nextInt(10), 2 + dice.nextInt(5), 600 + dice.nextInt(900)));
    }

    /** How a child practises: the higher the sureness, the fewer errors; the quickest answer takes so many milliseconds. */
    private record Manner(int drills, int sureness, int quickest) {}

    private static Instant make(Path file) {
        return make(file, 20_260_112, new Manner(30, 4, 900));
    }

    private static Instant make(Path file, long seed, Manner manner) {
        Player player = new Player(new LastingGain(), Progress.blank(Steering.NONE), START);
        SplittableRandom random = new SplittableRandom(seed);
        for (int drill = 0; drill < manner.drills(); drill++) {
            player.drill(8, drill, (prompt, purpose, position) -> {
                int size = prompt.expected();
                boolean right = !purpose.isFromMemory() || random.nextInt(100) >= size / manner.sureness();
                long millis = random.nextLong(manner.quickest(), manner.quickest() + 600) + 25L * size;
                return new Player.Reply(Integer.toString(right ? size : size + 2), millis);
            });
            Instant next = START.plus(Duration.ofDays(drill / 4 * 7L + drill % 4 + 1));
            player.rest(Duration.between(player.now(), next));
        }
        try (Store store = Store.open(file)) {
            UUID id = player.log().get(0).child();
            store.add(new Child(id, "Mina", START));
            Map<UUID, DrillSession> sessions = new LinkedHashMap<>();
            for (Answer a : player.log()) {
                sessions.computeIfAbsent(
                        a.drill(), d -> new DrillSession(d, id, a.askedAt(), 60, Duration.ofMinutes(8), 1));
            }
            store.keepAll(sessions.values().stream().toList(), player.log());
        }
        return player.now();
    }
}
