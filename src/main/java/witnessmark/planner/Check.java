package witnessmark.planner;

import java.util.Arrays;

/**
 * A check that could be made.
 *
 * @param place id of the access step it is made in
 * @param minutes work of the check itself once the place is open
 * @param bitsByCause expected information about each cause in question, in bits, 0 for the others
 * @param release what it is worth besides, in bits, because a conclusion waits for it; 0 for most
 * @param bits what the check is worth by itself, bits: all of the above together
 */
public record Check(String id, String place, double minutes, double[] bitsByCause, double release, double bits) {

    public Check(String id, String place, double minutes, double[] bitsByCause, double release) {
        this(
                id,
                place,
                minutes,
                bitsByCause,
                release,
                release + Arrays.stream(bitsByCause).sum());
    }
}
