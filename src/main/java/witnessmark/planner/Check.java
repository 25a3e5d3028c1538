package witnessmark.planner;

import java.util.Arrays;

/**
 * A check that could be made.
 *
 * @param place id of the access step it is made in
 * @param minutes work of the check itself once the place is open
 * @param causes the causes about which it can tell something, by index, ascending
 * @param bitsByCause expected information about each of them, in bits; 0 for one out of question
 * @param release what it is worth besides, in bits, because a conclusion waits for it; 0 for most
 * @param bits what the check is worth by itself, bits: all of the above together
 */
public record Check(
        String id, String place, double minutes, int[] causes, double[] bitsByCause, double release, double bits) {

    public Check(String id, String place, double minutes, int[] causes, double[] bitsByCause, double release) {
        this(
                id,
                place,
                minutes,
                causes,
                bitsByCause,
                release,
                release + Arrays.stream(bitsByCause).sum());
    }
}
