package fourfold.planted.every_class_has_its_part.attic;

/** Breaks the map on purpose: there is no such part. */
public record Stray(int value) {}
