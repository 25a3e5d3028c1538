package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.Measurement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.ReadSample;
import witnessmark.document.Dossier;

/** What is missing in the evidence of a case. */
final class FindGaps {
    private final Dossier dossier;
    private final CaseFile file;
    private final SayOnPaper words;

    FindGaps(Dossier dossier) {
        this.dossier = dossier;
        this.file = dossier.file();
        this.words = new SayOnPaper(dossier);
    }

    List<String> gaps() {
        List<String> gaps = new ArrayList<>();
        gaps.add(words.say("gap-coverage", words.percent(dossier.judgement().coverage())));
        for (RankedCause cause : ExplanationPage.toldOf(dossier.judgement())) {
            List<String> unchecked = FoundRow.unchecked(dossier, cause);
            if (!unchecked.isEmpty()) {
                gaps.add(words.say("gap-unchecked", cause.title(), SayOnPaper.list(unchecked)));
            }
        }
        file.findings().values().stream()
                .filter(f -> f.state() == FindingState.UNSURE)
                .forEach(f -> gaps.add(words.say("gap-unsure", FoundRow.title(dossier, f.finding()))));
        file.measurements().values().stream()
                .filter(m -> m.limits().isEmpty() && !isReadOtherwise(m))
                .forEach(m -> gaps.add(words.say("gap-no-limit", title(m))));
        missing(gaps);
        return gaps;
    }

    private void missing(List<String> gaps) {
        if (file.driverAccount().isEmpty()) {
            gaps.add(words.say("gap-account"));
        }
        if (file.workDone().isEmpty()) {
            gaps.add(words.say("gap-correction"));
        }
        if (dossier.history().isEmpty()) {
            gaps.add(words.say("gap-not-stored"));
        }
        file.attachments().stream()
                .filter(a -> !dossier.contents().containsKey(a.sha256()))
                .forEach(a -> gaps.add(words.say("gap-" + KeptFile.state(dossier, a), a.name())));
    }

    private boolean isReadOtherwise(Measurement m) {
        return Optional.ofNullable(dossier.knowledge().measures().get(m.measure()))
                .flatMap(measure -> ReadSample.of(measure, m))
                .isPresent();
    }

    private String title(Measurement m) {
        return "\"" + MeasuredRow.title(dossier, m.measure()) + "\"";
    }
}
