package witnessmark.knowledge;

import java.util.List;

/**
 * A caution at the head of the sheet for who moves a truck or its gearbox.
 *
 * @param caution its id
 * @param ways of moving to which it belongs
 * @param ifAdvised whether it is said only where the case calls for it
 */
public record TowCaution(String caution, List<TowWay> ways, boolean ifAdvised) {
    public TowCaution {
        ways = List.copyOf(ways);
    }
}
