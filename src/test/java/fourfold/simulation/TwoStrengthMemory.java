package fourfold.simulation;

/**
 * A short strength that is gone within a drill and a long one that fades over months; the long one gains most when the
 * fact is hard to retrieve (after Bjork and Bjork 1992, A new theory of disuse, which gives no equations; these are our
 * own). With a weak short strength and little gain without recall it stands for children who lose within a minute what
 * they were just shown, for whom dense early repeats were tried (Burns 2005, Education and Treatment of Children 28).
 */
final class TwoStrengthMemory implements TraceMemory {
    private static final double LONGEST = 9;

    private final Numbers numbers;
    private double strong;
    private double fresh;
    private double last;
    private boolean met;

    /**
     * One child's numbers.
     *
     * @param gain the most the long strength gains at once
     * @param unrecalled which part of it is gained when the answer did not come from memory
     * @param easy which part of it is gained when retrieval is certain
     * @param shortSeconds after which the short strength is down to 37 percent
     * @param shortLift what a full short strength adds
     * @param longDays after which the long strength is down to 37 percent
     */
    record Numbers(
            double gain, double unrecalled, double easy, double shortSeconds, double shortLift, double longDays) {}

    TwoStrengthMemory(Numbers numbers) {
        this.numbers = numbers;
    }

    private double strong(double at) {
        return strong * Math.exp(-(at - last) / (numbers.longDays * 86_400));
    }

    private double fresh(double at) {
        return fresh * Math.exp(-(at - last) / numbers.shortSeconds);
    }

    @Override
    public double strength(double at) {
        return met ? -3 + strong(at) + numbers.shortLift * fresh(at) : NOTHING;
    }

    @Override
    public void practised(double at, How how) {
        last = met ? last : at;
        double now = strength(at);
        double hard = 1 - 1 / (1 + Math.exp(-now));
        double part = (numbers.easy + (1 - numbers.easy) * hard) * (how == How.RECALLED ? 1 : numbers.unrecalled);
        double long0 = strong(at);
        fresh = fresh(at) + (1 - fresh(at)) * 0.9;
        strong = long0 + numbers.gain * part * (1 - long0 / LONGEST);
        last = at;
        met = true;
    }

    @Override
    public TraceMemory copy() {
        TwoStrengthMemory copy = new TwoStrengthMemory(numbers);
        copy.strong = strong;
        copy.fresh = fresh;
        copy.last = last;
        copy.met = met;
        return copy;
    }
}
