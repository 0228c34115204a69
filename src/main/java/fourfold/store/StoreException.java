package fourfold.store;

/** Something could not be kept or read. The message is one line: what failed, which file, and what to do. */
public final class StoreException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public StoreException(String message) {
        super(message);
    }

    public StoreException(String message, Throwable cause) {
        super(message, cause);
    }
}
