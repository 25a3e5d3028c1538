package witnessmark.interview;

import java.util.List;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;

/** Where the answers of one case are kept. */
public interface Notebook {

    /** The case with its history, as kept now. */
    CaseHistory history();

    /**
     * Keeps the changes, all or none, and gives the history after them; what it has returned from is safe.
     *
     * @throws witnessmark.casefile.CaseRefused if the case does not take them
     */
    CaseHistory write(List<? extends Change> changes);
}
