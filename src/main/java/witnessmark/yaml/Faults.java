package witnessmark.yaml;

import java.util.ArrayList;
import java.util.List;

/** Collects the faults of one input, so that all are told at once. */
public final class Faults {
    private static final int MOST = 200;
    private final List<Fault> found = new ArrayList<>();

    public void add(Fault fault) {
        if (found.size() < MOST) {
            found.add(fault);
        }
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    /** Throws {@link FaultyInput} if anything was found. */
    public void throwIfAny() {
        if (!found.isEmpty()) {
            throw new FaultyInput(found);
        }
    }
}
