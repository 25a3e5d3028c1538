package witnessmark.shell.cases;

import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.KnownWords;

/** Sets today's judgement beside the one a case was signed on. */
@Component
public class SignedCases {
    private final ObjectProvider<Diagnosis> diagnosis;
    private final ObjectProvider<MadeWith> made;

    SignedCases(ObjectProvider<Diagnosis> diagnosis, ObjectProvider<MadeWith> made) {
        this.diagnosis = diagnosis;
        this.made = made;
    }

    /** Empty for an open case, which is not judged for it. */
    public Optional<AfterSignOff> after(CaseDocument document) {
        return document.present().isSignedOff() ? after(document, diagnosis.getObject()) : Optional.empty();
    }

    /** The same in the language of this diagnosis. */
    public Optional<AfterSignOff> after(CaseDocument document, Diagnosis inLanguage) {
        CaseFile file = document.present();
        return file.isSignedOff()
                ? AfterSignOff.of(
                        file,
                        document.history(),
                        inLanguage
                                .judge(KnownWords.toJudge(file, inLanguage.knowledge()))
                                .verdict(),
                        made.getObject(),
                        inLanguage.knowledge())
                : Optional.empty();
    }
}
