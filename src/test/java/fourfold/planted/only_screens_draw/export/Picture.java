package fourfold.planted.only_screens_draw.export;

import com.googlecode.lanterna.TerminalSize;

/** Breaks the map on purpose: only screens draw. */
public final class Picture {
    private Picture() {}

    public static int width(TerminalSize size) {
        return size.getColumns();
    }
}
