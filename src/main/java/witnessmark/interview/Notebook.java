package witnessmark.interview;

import java.util.List;
import java.util.Optional;
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

    /** Where the interview was left, in the interview's own form; empty if it was not begun or that is lost. */
    Optional<String> place();

    /** Keeps where the interview is now, beside the case and not in it. */
    void leave(String place);
}
