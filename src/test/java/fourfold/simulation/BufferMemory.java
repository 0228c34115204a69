// SPDX-License-Identifier: Apache-2.0
package fourfold.simulation;

/**
 * A small buffer before a store (after Atkinson and Shiffrin 1968, The Psychology of Learning and Motivation 2, 89–195; the
 * buffer is theirs, the store's rule is ours). What was just met is certain while it is in the buffer, which is lost to
 * the next few facts or in less than a minute, and practice inside the buffer teaches nothing. From the store a fact fades
 * by halves; a practice that finds it half gone lengthens its half-life most.
 */
final class BufferMemory implements TraceMemory {
    private static final double CERTAIN = 4;

    private final Numbers numbers;
    private final Buffer buffer;
    private double halfLife;
    private double last;
    private int place = Integer.MIN_VALUE / 2;

    /**
     * One child's numbers.
     *
     * @param first the first half-life in seconds
     * @param growth how much a half-life can grow at once, in seconds, times (1 − R)√R for a chance R of recall
     * @param unrecalled which part of the growth is had without recall
     * @param most chance of recall of what is in the store and has not faded
     */
    record Numbers(double first, double growth, double unrecalled, double most) {}

    /** What one child has in mind: how many facts passed through, how many fit, and for how many seconds. */
    static final class Buffer {
        private final int size;
        private final double seconds;
        private int passed;

        Buffer(int size, double seconds) {
            this.size = size;
            this.seconds = seconds;
        }
    }

    BufferMemory(Numbers numbers, Buffer buffer) {
        this.numbers = numbers;
        this.buffer = buffer;
    }

    private boolean isInMind(double at) {
        return buffer.passed - place < buffer.size && at - last < buffer.seconds;
    }

    private double kept(double at) {
        return halfLife == 0 ? 0 : numbers.most * Math.exp(-Math.log(2) * Math.max(0, at - last) / halfLife);
    }

    @Override
    public double strength(double at) {
        if (isInMind(at)) {
            return CERTAIN;
        }
        double kept = kept(at);
        return kept < 0.0025 ? NOTHING : Math.log(kept / (1 - kept));
    }

    @Override
    public void practised(double at, How how) {
        if (!isInMind(at)) {
            double kept = kept(at);
            double part = how == How.RECALLED ? 1 : numbers.unrecalled;
            halfLife = Math.max(numbers.first, halfLife + numbers.growth * part * (1 - kept) * Math.sqrt(kept));
        }
        place = ++buffer.passed;
        last = at;
    }

    @Override
    public TraceMemory copy() {
        Buffer own = new Buffer(buffer.size, buffer.seconds);
        own.passed = buffer.passed;
        BufferMemory copy = new BufferMemory(numbers, own);
        copy.halfLife = halfLife;
        copy.last = last;
        copy.place = place;
        return copy;
    }
}
