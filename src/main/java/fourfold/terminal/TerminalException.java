package fourfold.terminal;

/** There is nowhere to draw. The message is one line: what failed and what to do. */
public final class TerminalException extends Exception {
    private static final long serialVersionUID = 1L;

    TerminalException(String message) {
        super(message);
    }

    TerminalException(String message, Throwable cause) {
        super(message, cause);
    }
}
