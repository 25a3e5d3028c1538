package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.history.ClaimSet;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.EvidenceRemoved;
import witnessmark.casefile.history.EvidenceSet;
import witnessmark.casefile.history.FindingCleared;
import witnessmark.casefile.history.FindingSet;
import witnessmark.casefile.history.GearboxSet;
import witnessmark.casefile.history.MeasurementCleared;
import witnessmark.casefile.history.MeasurementSet;
import witnessmark.casefile.history.NoteAdded;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.history.SignedOff;
import witnessmark.casefile.history.TextSet;
import witnessmark.casefile.history.VehicleSet;
import witnessmark.diagnosis.SignedSentence;
import witnessmark.document.Dossier;

/** A change to a case as one sentence of its papers, in their language and units. */
final class SayChange {
    private final Dossier dossier;
    private final SayOnPaper words;

    SayChange(Dossier dossier) {
        this.dossier = dossier;
        this.words = new SayOnPaper(dossier);
    }

    String of(Change change) {
        if (change instanceof FindingSet set) {
            return finding(set);
        }
        if (change instanceof MeasurementSet set) {
            MeasuredRow row = MeasuredRow.of(dossier, set.to());
            return words.say("change-measured", row.title(), row.value(), row.limits())
                    + set.from()
                            .map(m -> words.say("change-was", words.value(m.value(), m.unit())))
                            .orElse("")
                    + note(row.note());
        }
        if (change instanceof ClaimSet set) {
            return words.say("change-claim", claim(set.from(), set.to()));
        }
        if (change instanceof CorrectedAfterSignOff corrected) {
            return words.say("change-corrected", corrected.reason(), of(corrected.change()));
        }
        return change instanceof FindingCleared || change instanceof MeasurementCleared
                ? words.say("change-cleared", cleared(change))
                : other(change);
    }

    private String finding(FindingSet set) {
        FindingEntry to = set.to();
        return words.say("change-finding", title(to.finding()), FoundRow.stateWord(words, to))
                + to.gear().map(g -> words.say("change-gear", g)).orElse("")
                + set.from()
                        .map(f -> words.say("change-was", words.state(f.state())))
                        .orElse("")
                + note(to.note());
    }

    private String title(String finding) {
        return FoundRow.title(dossier, finding);
    }

    private String note(String note) {
        return note.isEmpty() ? "" : words.say("change-note", note);
    }

    private String cleared(Change change) {
        return change instanceof FindingCleared finding
                ? title(finding.finding())
                : MeasuredRow.title(dossier, ((MeasurementCleared) change).measure());
    }

    private String other(Change change) {
        if (change instanceof Opened opened) {
            return words.say(
                    "change-opened", opened.title() + (opened.complaint().isEmpty() ? "" : ". " + opened.complaint()));
        }
        if (change instanceof NoteAdded note) {
            return words.say("change-noted", note.text());
        }
        if (change instanceof TextSet text) {
            return words.say("change-text-" + text.field().word(), text.to());
        }
        if (change instanceof VehicleSet vehicle) {
            return words.say("change-truck", fields(Head.truck(vehicle.to(), words)));
        }
        if (change instanceof GearboxSet gearbox) {
            return words.say("change-gearbox", fields(Head.gearbox(gearbox.to(), words)));
        }
        if (change instanceof EvidenceSet evidence) {
            return words.say(
                    "change-evidence",
                    words.say("evidence-" + evidence.to().kind().word()),
                    evidence.to().id(),
                    new SayResult(dossier).result(evidence.to()));
        }
        if (change instanceof EvidenceRemoved evidence) {
            return words.say("change-cleared", evidence.id());
        }
        if (change instanceof AttachmentAdded added) {
            return words.say(
                    "change-attached",
                    added.attachment().name(),
                    added.attachment().sha256());
        }
        if (change instanceof AttachmentRemoved removed) {
            return words.say("change-cleared", removed.attachment().name());
        }
        if (change instanceof SignedOff signed) {
            return signed(signed.judgement());
        }
        throw new IllegalArgumentException("no sentence for a change of kind " + change.kind());
    }

    private String signed(Optional<SignedJudgement> judgement) {
        return judgement
                .map(j -> words.say("change-signed", new SignedSentence(dossier.knowledge()).of(j)))
                .orElseGet(() -> words.say("change-signed-bare"));
    }

    private static String fields(List<Field> fields) {
        return SayOnPaper.list(
                fields.stream().map(f -> f.label() + ": " + f.value()).toList());
    }

    /** What differs; a fact that is gone is said to be taken off. */
    private String claim(Claim from, Claim to) {
        List<Field> changed = new ArrayList<>();
        for (ClaimField field : ClaimField.values()) {
            if (!from.fact(field).equals(to.fact(field))) {
                changed.add(new Field(
                        words.say("claim-" + field.word()),
                        to.fact(field).isEmpty() ? words.say("change-off") : to.fact(field)));
            }
        }
        to.parts().stream()
                .filter(p -> !from.parts().contains(p))
                .forEach(p -> changed.add(new Field(words.say("change-part"), part(p))));
        from.parts().stream()
                .filter(p -> !to.parts().contains(p))
                .forEach(p -> changed.add(new Field(words.say("change-part-off"), named(p))));
        return fields(changed);
    }

    private static String named(PartLine part) {
        return Stream.of(part.old(), part.fitted()).filter(p -> !p.isEmpty()).collect(Collectors.joining(" / "));
    }

    private String part(PartLine part) {
        return named(part)
                + " x " + SayOnPaper.number(part.quantity())
                + part.whereabouts()
                        .map(w -> ", " + words.say("part-" + w.word()))
                        .orElse("")
                + (part.tag().isEmpty() ? "" : ", " + part.tag());
    }
}
