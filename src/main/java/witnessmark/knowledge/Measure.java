package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.Unit;

/**
 * Something measured on the truck or the bench.
 *
 * @param typical a typical value to verify, shown as help and never used as a limit; empty if none
 * @param limitCounts whether a value at its limit is beyond it already ("renew at 0.8"); else it is still within it
 * @param below finding that is present below the low limit
 * @param above finding that is present above the high limit
 */
public record Measure(
        String id,
        String title,
        Unit unit,
        String typical,
        boolean limitCounts,
        Optional<String> below,
        Optional<String> above,
        List<String> sources) {}
