package fourfold.terminal;

import java.util.List;

/** A short list of lines to choose from, by arrows and Enter or by the digit in front of a line. */
public final class Menu {
    private final List<String> lines;
    private int chosen;

    public Menu(List<String> lines) {
        this.lines = List.copyOf(lines);
    }

    public int chosen() {
        return chosen;
    }

    /** Moves the mark; true if a line was picked for good. */
    public boolean on(Key key) {
        switch (key.kind()) {
            case UP, LEFT -> chosen = Math.floorMod(chosen - 1, lines.size());
            case DOWN, RIGHT -> chosen = Math.floorMod(chosen + 1, lines.size());
            case ENTER -> {
                return true;
            }
            case DIGIT -> {
                int line = key.digit() == 0 ? 9 : key.digit() - 1;
                if (line < lines.size()) {
                    chosen = line;
                    return true;
                }
            }
            default -> {
                return false;
            }
        }
        return false;
    }

    public void draw(Picture picture, int y) {
        int widest = lines.stream().mapToInt(Picture::columns).max().orElse(0) + 8;
        int x = Math.max(0, (picture.width() - widest) / 2);
        int room = Math.max(1, picture.height() - y - 3);
        int first = Math.max(0, Math.min(chosen - room / 2, lines.size() - room));
        for (int i = first; i < Math.min(lines.size(), first + room); i++) {
            String number = i < 10 ? Integer.toString((i + 1) % 10) : " ";
            String line = (i == chosen ? " ▸ " : "   ") + number + "  " + lines.get(i) + " ";
            picture.text(x, y + i - first, line, i == chosen ? Ink.STRONG : Ink.PLAIN);
        }
    }
}
