package fourfold.outlook;

import java.time.LocalDate;
import java.util.Optional;

/**
 * When all 55 families may be fluent, as far as the child's answers so far let one guess: of ten such children, about
 * one is there before {@code early}, five before {@code middle}, nine before {@code late}.
 *
 * @param early the 10th percentile; empty if fewer got there within the time looked at
 * @param middle the 50th
 * @param late the 90th
 * @param runs how many times the rest of the way was played through
 * @param daysAWeek on how many days a week there was practice in them
 */
public record Projection(
        Optional<LocalDate> early, Optional<LocalDate> middle, Optional<LocalDate> late, int runs, double daysAWeek) {}
