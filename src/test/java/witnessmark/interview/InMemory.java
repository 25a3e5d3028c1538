package witnessmark.interview;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.Stamp;
import witnessmark.gearbox.Layout;

/** A notebook in memory; it outlives the interview, as the store outlives a killed process. */
public final class InMemory implements Notebook {
    private static final Stamp STAMP = new Stamp(Instant.EPOCH, "technician");

    private CaseHistory history =
            CaseHistory.open(new Opened(new CaseId("asked"), "", "", Vehicle.unknown(), Layout.unknown()), STAMP);
    private Optional<String> place = Optional.empty();
    private int writes;

    @Override
    public CaseHistory history() {
        return history;
    }

    @Override
    public CaseHistory write(List<? extends Change> changes) {
        history = history.with(changes, STAMP);
        writes++;
        return history;
    }

    @Override
    public Optional<String> place() {
        return place;
    }

    @Override
    public void leave(String to) {
        place = Optional.of(to);
    }

    public int writes() {
        return writes;
    }
}
