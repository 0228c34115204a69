package fourfold.screens;

/** There is nowhere to draw. The message is one line: what failed and what to do. */
public final class StageException extends Exception {
    private static final long serialVersionUID = 1L;

    StageException(String message) {
        super(message);
    }

    StageException(String message, Throwable cause) {
        super(message, cause);
    }
}
