package witnessmark.yaml;

import java.util.List;
import java.util.stream.Collectors;
import witnessmark.refusal.Refusal;

/** An input was refused; carries every fault found in it, in the order of the input. */
public final class FaultyInput extends Refusal {
    private final transient List<Fault> faults;

    public FaultyInput(List<Fault> faults) {
        super(faults.stream().map(Fault::sentence).collect(Collectors.joining("\n")));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
