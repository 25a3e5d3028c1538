package witnessmark.inference;

/**
 * A cause that can produce a finding: when the cause is present it does so with chance {@code strength}, whatever the
 * other causes and the background do (the leaky noisy-OR of Pearl 1988, links read as Díez reads them: the background
 * is not inside the strength).
 *
 * @param cause index of the cause, 0 or more
 * @param strength probability, 0 to 1
 * @throws IllegalArgumentException if either is out of range
 */
public record Link(int cause, double strength) {
    public Link {
        if (cause < 0) {
            throw new IllegalArgumentException("Link to cause " + cause + ": give an index of 0 or more.");
        }
        if (!(strength >= 0 && strength <= 1)) {
            throw new IllegalArgumentException(
                    "Link to cause " + cause + " has strength " + strength + ": give a probability from 0 to 1.");
        }
    }
}
