package witnessmark.shell.interview;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.store.CaseStore;
import witnessmark.interview.Notebook;

/** Keeps the answers of an interview in the case store. */
final class StoredNotebook implements Notebook {
    private final CaseStore store;
    private final CaseId id;
    private final String who;

    StoredNotebook(CaseStore store, CaseId id, String who) {
        this.store = store;
        this.id = id;
        this.who = who;
    }

    @Override
    public CaseHistory history() {
        return store.read(id);
    }

    @Override
    public CaseHistory write(List<? extends Change> changes) {
        return store.appendAll(id, changes, who);
    }

    @Override
    public Optional<String> place() {
        return store.interviewPlace(id);
    }

    @Override
    public void leave(String place) {
        store.keepInterviewPlace(id, place);
    }
}
