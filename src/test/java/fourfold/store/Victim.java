// SPDX-License-Identifier: Apache-2.0
package fourfold.store;

import fourfold.log.Child;
import fourfold.log.DrillSession;
import fourfold.log.RecordsFailure;
import fourfold.words.Words;
import java.nio.file.Path;

/** A program of its own that keeps answers until it has enough or is killed, and says which ones it was told are safe. */
final class Victim {
    static final Child CHILD = Invented.child(1, "Ana");

    private Victim() {}

    /**
     * Runs it.
     *
     * @param arguments the file, the number of the drill, and how many answers to keep at most; or nothing but {@code usual} to open the usual file
     */
    public static void main(String[] arguments) {
        if (arguments[0].equals("usual")) {
            try {
                Store.open(DataPath.usual(
                                System.getProperty("os.name"),
                                System.getenv(),
                                Path.of(System.getProperty("user.home"))))
                        .close();
                System.out.println("opened");
            } catch (RecordsFailure e) {
                System.out.println(Words.english().failure(e));
            }
            return;
        }
        Store store = Store.open(Path.of(arguments[0]));
        store.add(CHILD);
        DrillSession session = Invented.session(CHILD, Long.parseLong(arguments[1]));
        store.begin(session);
        for (int position = 1; position <= Integer.parseInt(arguments[2]); position++) {
            store.keep(Invented.answer(session, position));
            System.out.println(position);
            System.out.flush();
        }
    }
}
