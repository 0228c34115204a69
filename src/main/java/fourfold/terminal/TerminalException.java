// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

/** There is nowhere to draw; why, as data. */
public final class TerminalException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Reason reason;
    private final String detail;

    /** Why nothing can be drawn. */
    public enum Reason {
        /** The terminal says that it can't draw. */
        DUMB,
        /** There is neither a terminal nor a desktop. */
        NONE,
        /** The terminal's modes can't be read or set. */
        UNUSABLE,
        /** The terminal took no picture. */
        UNDRAWABLE,
        /** The desktop opened no window. */
        WINDOW
    }

    TerminalException(Reason reason) {
        super(reason.name());
        this.reason = reason;
        this.detail = "";
    }

    TerminalException(Reason reason, String detail, Throwable cause) {
        super(reason.name() + ": " + detail, cause);
        this.reason = reason;
        this.detail = detail;
    }

    public Reason reason() {
        return reason;
    }

    /** What the system said of it; empty where the reason says all. */
    public String detail() {
        return detail;
    }
}
