package fourfold.screens;

/** P. */
public final class StageException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    /** P. */
    public StageException(String message) {
        super(message);
    }
}
