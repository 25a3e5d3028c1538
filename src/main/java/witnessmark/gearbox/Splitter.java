package witnessmark.gearbox;

/**
 * The splitter of a gearbox.
 *
 * @param ratio its ratio when split: below 1 an overdrive, above 1 an underdrive
 * @param bothRanges whether it splits low range too, or high range only
 */
public record Splitter(double ratio, boolean bothRanges) {

    public boolean overdrive() {
        return ratio < 1;
    }

    public boolean splits(Range range) {
        return bothRanges || range == Range.HIGH;
    }
}
