package fourfold.screens;

import com.googlecode.lanterna.input.KeyStroke;

/** P. */
public record KeyPress(KeyStroke key, long nanos) {}
