package witnessmark.diagnosis.score;

import java.util.ArrayList;
import java.util.List;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.Diagnosis;

/** Judges cases whose outcome is known and compares. */
public final class ScoreCases {
    private final Diagnosis diagnosis;

    public ScoreCases(Diagnosis diagnosis) {
        this.diagnosis = diagnosis;
    }

    /** The tally of the documents that say what they should come to; the others are passed over. */
    public Tally score(List<CaseDocument> documents) {
        List<Scored> scored = new ArrayList<>();
        for (CaseDocument document : documents) {
            document.expected()
                    .ifPresent(expected -> scored.add(Scored.of(expected, diagnosis.judge(document.present()))));
        }
        return new Tally(scored);
    }
}
