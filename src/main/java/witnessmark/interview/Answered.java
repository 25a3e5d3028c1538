package witnessmark.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;

/**
 * The answers given in the interview's checks that still stand, in the order given. They are read from the case's own
 * history, and its place says which entries are answers.
 */
final class Answered {
    /** One answer: a finding or a measurement, by id. */
    record Answer(boolean measured, String id) {
        static Answer ofFinding(String finding) {
            return new Answer(false, finding);
        }

        static Answer ofMeasure(String measure) {
            return new Answer(true, measure);
        }

        Change takenBack() {
            return measured ? new MeasurementCleared(id) : new FindingCleared(id);
        }
    }

    private final List<Answer> answers = new ArrayList<>();

    private Answered() {}

    static List<Answer> in(CaseHistory history, Position position) {
        return since(0, history, position);
    }

    /** Those given after the entry of that number. */
    static List<Answer> since(long entryBefore, CaseHistory history, Position position) {
        Answered answered = new Answered();
        history.entries()
                .forEach(entry ->
                        answered.take(entry, entry.number() > entryBefore && position.isAmongChecks(entry.number())));
        return List.copyOf(answered.answers);
    }

    static Optional<Answer> last(CaseHistory history, Position position) {
        List<Answer> all = in(history, position);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    private void take(Entry entry, boolean checking) {
        Change change = entry.change();
        if (change instanceof FindingSet set) {
            moveToEnd(Answer.ofFinding(set.to().finding()), checking);
        } else if (change instanceof MeasurementSet set) {
            moveToEnd(Answer.ofMeasure(set.to().measure()), checking);
        } else if (change instanceof FindingCleared cleared) {
            answers.remove(Answer.ofFinding(cleared.finding()));
        } else if (change instanceof MeasurementCleared cleared) {
            answers.remove(Answer.ofMeasure(cleared.measure()));
        }
    }

    private void moveToEnd(Answer answer, boolean checking) {
        answers.remove(answer);
        if (checking) {
            answers.add(answer);
        }
    }
}
