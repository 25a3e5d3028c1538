package witnessmark.planner;

/**
 * A check that could be made.
 *
 * @param place id of the access step it is made in
 * @param minutes work of the check itself once the place is open
 * @param bitsByCause expected information about each cause in question, in bits, 0 for the others
 * @param release what it is worth besides, in bits, because a conclusion waits for it; 0 for most
 */
public record Check(String id, String place, double minutes, double[] bitsByCause, double release) {

    /** What the check is worth by itself, bits. */
    public double bits() {
        double sum = release;
        for (double bits : bitsByCause) {
            sum += bits;
        }
        return sum;
    }
}
