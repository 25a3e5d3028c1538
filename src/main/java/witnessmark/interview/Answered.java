package witnessmark.interview;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.TextSet;

/**
 * The answers given in the interview's checks that still stand, in the order given. They are read from the case's own
 * history, so that a killed interview goes on where it was.
 */
final class Answered {
    /** One answer: a finding or a measurement, by id. */
    record Answer(boolean measured, String id) {
        Change takenBack() {
            return measured ? new MeasurementCleared(id) : new FindingCleared(id);
        }
    }

    private final List<Answer> answers = new ArrayList<>();
    private boolean checking;

    private Answered() {}

    static List<Answer> in(CaseHistory history) {
        Answered answered = new Answered();
        history.entries().stream().map(Entry::change).forEach(answered::take);
        return List.copyOf(answered.answers);
    }

    static Optional<Answer> last(CaseHistory history) {
        List<Answer> all = in(history);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    private void take(Change change) {
        if (change instanceof TextSet text && text.field() == TextField.INTERVIEW_POSITION) {
            checking = text.to().startsWith(new Position(Stage.CHECKS, java.util.Set.of()).text());
        } else if (change instanceof FindingSet set) {
            moveToEnd(new Answer(false, set.to().finding()));
        } else if (change instanceof MeasurementSet set) {
            moveToEnd(new Answer(true, set.to().measure()));
        } else if (change instanceof FindingCleared cleared) {
            answers.remove(new Answer(false, cleared.finding()));
        } else if (change instanceof MeasurementCleared cleared) {
            answers.remove(new Answer(true, cleared.measure()));
        }
    }

    private void moveToEnd(Answer answer) {
        answers.remove(answer);
        if (checking) {
            answers.add(answer);
        }
    }
}
