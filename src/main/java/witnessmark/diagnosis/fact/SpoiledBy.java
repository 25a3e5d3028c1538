package witnessmark.diagnosis.fact;

/**
 * From the knowledge base: where {@code spoiler} is present, an answer to {@code finding} cannot be trusted.
 *
 * @param soundOnly whether only the answer "sound" cannot: the part was renewed or set before anybody looked
 */
public record SpoiledBy(String finding, String spoiler, boolean soundOnly) {
    /** Any answer cannot be trusted. */
    public static SpoiledBy whatever(String finding, String spoiler) {
        return new SpoiledBy(finding, spoiler, false);
    }

    /** Only the answer "sound" cannot. */
    public static SpoiledBy ifSound(String finding, String spoiler) {
        return new SpoiledBy(finding, spoiler, true);
    }

    /** Whether both say the same; equality, which is made when it is first asked for, would cost each start a hundredth. */
    public boolean isSame(SpoiledBy other) {
        return finding.equals(other.finding) && spoiler.equals(other.spoiler) && soundOnly == other.soundOnly;
    }
}
