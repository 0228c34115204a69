package fourfold.store;

/** Why something must not be kept, without the file's name, which {@link Database} puts before it. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public Refusal(String reason) {
        super(reason);
    }
}
