package witnessmark.casefile.yaml;

import java.util.List;
import java.util.stream.Collectors;

/** A case file that cannot be taken, with everything that is wrong in it; the message has one line for each. */
public final class CaseFileFaults extends RuntimeException {
    private final transient List<Fault> faults;

    public CaseFileFaults(List<Fault> faults) {
        super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    /** In the order in which they stand in the file, never none. */
    public List<Fault> faults() {
        return faults;
    }
}
