package witnessmark.yaml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The faults of one input as they are found; reading goes on after each, so that all are told at once. */
public final class Faults {
    private static final int MOST = 100;

    private final Set<Fault> found = new LinkedHashSet<>();
    private boolean more;

    /** Notes a fault; one noted already is not told again, and after the first hundred only that there are more. */
    public void add(Fault fault) {
        if (found.size() < MOST) {
            found.add(fault);
        } else if (!found.contains(fault)) {
            more = true;
        }
    }

    public boolean isEmpty() {
        return found.isEmpty();
    }

    /** Throws {@link FaultyInput} if anything was found, file by file in the order of the lines. */
    public void throwIfAny() {
        if (found.isEmpty()) {
            return;
        }
        List<String> files = found.stream().map(Fault::file).distinct().toList();
        List<Fault> told = new ArrayList<>(found);
        told.sort(Comparator.comparingInt((Fault f) -> files.indexOf(f.file()))
                .thenComparingInt(Fault::line)
                .thenComparingInt(Fault::column));
        if (more) {
            Fault last = told.get(told.size() - 1);
            told.add(new Fault(
                    last.file(), last.line(), last.column(), "more than " + MOST + " faults", "mend these first"));
        }
        throw new FaultyInput(told);
    }
}
