package fourfold.home;

import fourfold.home.Records.NotKept;
import fourfold.store.StoreException;
import java.util.function.Supplier;

/** Work on the store whose failure is the home's. */
final class OnStore {
    private OnStore() {}

    /**
     * What the work gives.
     *
     * @throws NotKept if the store fails
     */
    static <T> T read(Supplier<T> work) {
        try {
            return work.get();
        } catch (StoreException e) {
            throw new NotKept(String.valueOf(e.getMessage()), e);
        }
    }

    /**
     * The same for work without a result.
     *
     * @throws NotKept if the store fails
     */
    static void write(Runnable work) {
        read(() -> {
            work.run();
            return true;
        });
    }
}
