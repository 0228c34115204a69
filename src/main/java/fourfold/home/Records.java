package fourfold.home;

/** The one kind of failure that the use cases of a home have. */
public final class Records {
    private Records() {}

    /** Something could not be kept or read; the message says what, where, and what to do, in one line. */
    public static final class NotKept extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final String line;

        /** With a one-line message. */
        public NotKept(String message, Throwable cause) {
            super(message, cause);
            line = message;
        }

        /** What could not be done, where, and what to do, in one line. */
        public String line() {
            return line;
        }
    }
}
