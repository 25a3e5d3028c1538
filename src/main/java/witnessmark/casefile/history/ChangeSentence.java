package witnessmark.casefile.history;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.PlainNumber;
import witnessmark.casefile.TextField;

/** A change to a case as one plain sentence. */
public final class ChangeSentence {
    private ChangeSentence() {}

    public static String of(Change change) {
        if (change instanceof FindingSet set) {
            return "finding " + set.to().finding() + ": " + set.to().state().word()
                    + set.to().gear().map(g -> ", gear " + g).orElse("")
                    + (set.to().toldBy().isEmpty() ? "" : ", " + set.to().toldWords())
                    + set.from().map(f -> " (was " + f.state().word() + ")").orElse("")
                    + (set.to().note().isEmpty() ? "" : " - " + set.to().note());
        }
        if (change instanceof MeasurementSet set) {
            return "measured " + set.to().measure() + ": " + words(CaseForm.measurement(set.to()))
                    + set.from()
                            .map(m -> " (was " + words(CaseForm.measurement(m)) + ")")
                            .orElse("");
        }
        if (change instanceof CorrectedAfterSignOff corrected) {
            return "CORRECTION after sign-off, because " + corrected.reason() + ": " + of(corrected.change());
        }
        return other(change);
    }

    private static String other(Change change) {
        if (change instanceof Opened opened) {
            return "case opened: " + opened.title() + (opened.complaint().isEmpty() ? "" : " - " + opened.complaint());
        }
        if (change instanceof FindingCleared cleared) {
            return "finding " + cleared.finding() + " taken off"
                    + cleared.from().map(f -> " (was " + f.state().word() + ")").orElse("");
        }
        if (change instanceof MeasurementCleared cleared) {
            return "measurement " + cleared.measure() + " taken off";
        }
        if (change instanceof NoteAdded note) {
            return "note: " + note.text();
        }
        if (change instanceof TextSet text) {
            return text.field() == TextField.INTERVIEW_POSITION
                    ? "where the interview was; says nothing of the truck"
                    : text.field().word().replace('-', ' ') + ": " + text.to();
        }
        if (change instanceof VehicleSet vehicle) {
            return "truck: " + words(CaseForm.vehicle(vehicle.to()));
        }
        if (change instanceof GearboxSet gearbox) {
            return "gearbox: " + words(CaseForm.gearbox(gearbox.to()));
        }
        if (change instanceof ClaimSet claim) {
            return "claim: " + changed(claim.from().form(), claim.to().form());
        }
        if (change instanceof EvidenceSet evidence) {
            return evidence.to().kind().word() + " evidence " + evidence.to().id() + ": "
                    + evidence.to().summary();
        }
        if (change instanceof EvidenceRemoved evidence) {
            return "evidence " + evidence.id() + " taken off";
        }
        if (change instanceof AttachmentAdded added) {
            return "attached " + added.attachment().name() + ", SHA-256 "
                    + added.attachment().sha256();
        }
        if (change instanceof AttachmentRemoved removed) {
            return "attachment " + removed.attachment().name() + " taken off";
        }
        if (change instanceof SignedOff signed) {
            return "signed off"
                    + signed.judgement().map(j -> " on: " + j.sentence()).orElse("");
        }
        throw new IllegalArgumentException("no sentence for a change of kind " + change.kind());
    }

    /** What differs between two forms; a name that is gone is said to be taken off. */
    private static String changed(Map<String, Object> from, Map<String, Object> to) {
        Map<String, Object> differing = new LinkedHashMap<>(to);
        from.forEach((name, value) -> {
            if (value.equals(to.get(name))) {
                differing.remove(name);
            } else if (!to.containsKey(name)) {
                differing.put(name, "taken off");
            }
        });
        return words(differing);
    }

    /** A form as "name value, name value". */
    public static String words(Map<String, Object> form) {
        return form.entrySet().stream()
                .map(e -> e.getKey() + " " + plain(e.getValue()))
                .collect(Collectors.joining(", "));
    }

    private static String plain(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map.entrySet().stream()
                    .map(e -> e.getKey() + " " + plain(e.getValue()))
                    .collect(Collectors.joining(", ", "(", ")"));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(ChangeSentence::plain).collect(Collectors.joining("; "));
        }
        return value instanceof Double number ? PlainNumber.of(number) : String.valueOf(value);
    }
}
