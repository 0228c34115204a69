// SPDX-License-Identifier: Apache-2.0
package fourfold.benchmark;

/** The floor of a printed command: a program that prints one line and ends. */
final class BareLine {
    private BareLine() {}

    public static void main(String[] none) {
        System.out.println("The line is there.");
        System.exit(0);
    }
}
