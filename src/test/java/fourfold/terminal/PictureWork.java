// SPDX-License-Identifier: Apache-2.0
package fourfold.terminal;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.NullUnmarked;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** What differs between two pictures, handed to the screen; the floor is looking at every cell once. */
@NullUnmarked // The harness fills the fields.
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
public class PictureWork {
    /** Columns and rows of the window. */
    @Param({"80x24", "200x60"})
    public String size;

    private TerminalSession stage;
    private Picture before;
    private Picture after;
    private char[] one;
    private char[] other;

    /** Two pictures that differ in a big digit's place. */
    @Setup
    public void draw() {
        int columns = Integer.parseInt(size.split("x", -1)[0]);
        int rows = Integer.parseInt(size.split("x", -1)[1]);
        stage = TerminalSession.on(new DefaultVirtualTerminal(new TerminalSize(columns, rows)), true, true);
        before = new Picture(columns, rows, true);
        after = new Picture(columns, rows, true);
        before.centred(5, "7 × 8 =", Ink.STRONG);
        after.centred(5, "7 × 8 =", Ink.STRONG);
        for (int row = 8; row < 13; row++) {
            after.text(40, row, "██████", Ink.STRONG);
        }
        one = new char[columns * rows];
        other = new char[columns * rows];
    }

    /** The difference between the pictures. */
    @Benchmark
    public Object pictureDifference() {
        after.show(stage.screen(), before, Theme.PLAIN);
        return after;
    }

    /** The floor: every cell of two sheets compared. */
    @Benchmark
    public int floorCellsCompared() {
        int differing = 0;
        for (int i = 0; i < one.length; i++) {
            differing += one[i] != other[i] ? 1 : 0;
        }
        return differing;
    }
}
