package fourfold.words;

/** What is lost of a drill that could not be kept, in one line for the parent. */
public final class LossLine {
    private LossLine() {}

    /**
     * The line.
     *
     * @param answers how many answers are lost
     * @param reason why they could not be kept, in one line
     */
    public static String of(Words words, int answers, String reason) {
        return answers == 0
                ? words.say("drill.lost.none", reason)
                : words.counted("drill.lost", answers, answers, reason);
    }
}
