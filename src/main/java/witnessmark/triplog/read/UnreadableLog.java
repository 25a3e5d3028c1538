package witnessmark.triplog.read;

import java.util.List;
import witnessmark.refusal.Refusal;

/** The log, or its mapping, cannot be read at all; each fault is one line that says what, where and the mend. */
public final class UnreadableLog extends Refusal {
    private static final long serialVersionUID = 1L;
    private final List<String> faults;

    public UnreadableLog(String fault) {
        this(List.of(fault));
    }

    public UnreadableLog(String what, String mend) {
        super(what, mend);
        this.faults = List.of(getMessage());
    }

    public UnreadableLog(List<String> faults) {
        super(String.join(System.lineSeparator(), faults));
        this.faults = List.copyOf(faults);
    }

    public List<String> faults() {
        return faults;
    }
}
