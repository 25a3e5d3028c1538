package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.Dossier;

/** What is missing in the evidence of a case. */
final class FindGaps {
    private final Dossier dossier;
    private final CaseFile file;

    FindGaps(Dossier dossier) {
        this.dossier = dossier;
        this.file = dossier.file();
    }

    List<String> gaps() {
        List<String> gaps = new ArrayList<>();
        gaps.add("Looked at so far: " + PaperFigures.percent(dossier.judgement().coverage())
                + " of the evidence that matters for the causes still in question.");
        for (RankedCause cause : ExplanationPage.toldOf(dossier.judgement())) {
            if (!cause.unchecked().isEmpty()) {
                gaps.add("\"" + cause.title() + "\" would be expected to show these too, which were not looked at: "
                        + PaperFigures.list(cause.unchecked().stream()
                                .map(id -> FoundRow.title(dossier, id))
                                .toList())
                        + ".");
            }
        }
        file.findings().values().stream()
                .filter(f -> f.state() == FindingState.UNSURE)
                .forEach(f -> gaps.add("\"" + FoundRow.title(dossier, f.finding()) + "\" was left unsure."));
        file.measurements().values().stream()
                .filter(m -> m.limits().isEmpty())
                .forEach(m -> gaps.add(title(m) + " was measured, but no limit was given: nothing follows from it."));
        missing(gaps);
        return gaps;
    }

    private void missing(List<String> gaps) {
        if (file.driverAccount().isEmpty()) {
            gaps.add("The driver's account is missing.");
        }
        if (file.workDone().isEmpty()) {
            gaps.add("No correction is on record.");
        }
        if (dossier.history().isEmpty()) {
            gaps.add("The case was not stored: there is no chain of entries, and nothing shows who recorded what.");
        }
        file.attachments().stream()
                .filter(a -> !dossier.contents().containsKey(a.sha256()))
                .forEach(a -> gaps.add("The bytes of '" + a.name() + "' were not at hand."));
    }

    private String title(Measurement m) {
        var known = dossier.knowledge().measures().get(m.measure());
        return "\"" + (known == null ? m.measure() : known.title()) + "\"";
    }
}
