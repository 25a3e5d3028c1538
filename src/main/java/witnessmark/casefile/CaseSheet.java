package witnessmark.casefile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Layout;

/**
 * A case being written: takes one statement after another and gives the {@link CaseFile} they come to.
 * Not for use by several threads.
 */
public final class CaseSheet {
    private final CaseId id;
    private final Map<TextField, String> texts = new EnumMap<>(TextField.class);
    private final Map<String, FindingEntry> findings = new LinkedHashMap<>();
    private final Map<String, Measurement> measurements = new LinkedHashMap<>();
    private final List<String> notes = new ArrayList<>();
    private final List<Attachment> attachments = new ArrayList<>();
    private final Map<String, Evidence> evidence = new LinkedHashMap<>();
    private Vehicle vehicle = Vehicle.unknown();
    private Layout gearbox = Layout.unknown();
    private Claim claim = Claim.none();
    private Optional<SignOff> signedOff = Optional.empty();

    /** An empty case. */
    public CaseSheet(CaseId id) {
        this.id = id;
    }

    /** A case to be carried on from where it stands. */
    public CaseSheet(CaseFile now) {
        this(now.id());
        texts.putAll(now.texts());
        findings.putAll(now.findings());
        measurements.putAll(now.measurements());
        notes.addAll(now.notes());
        attachments.addAll(now.attachments());
        evidence.putAll(now.evidence());
        vehicle = now.vehicle();
        gearbox = now.gearbox();
        claim = now.claim();
        signedOff = now.signedOff();
    }

    public CaseFile toCaseFile() {
        return new CaseFile(
                id, texts, vehicle, gearbox, claim, findings, measurements, notes, attachments, evidence, signedOff);
    }

    public CaseId id() {
        return id;
    }

    public String text(TextField field) {
        return texts.getOrDefault(field, "");
    }

    /** Sets the text; an empty one takes it away. */
    public CaseSheet text(TextField field, String text) {
        String plain = field.checked(text);
        if (plain.isEmpty()) {
            texts.remove(field);
        } else {
            texts.put(field, plain);
        }
        return this;
    }

    public Vehicle vehicle() {
        return vehicle;
    }

    public CaseSheet vehicle(Vehicle now) {
        vehicle = now;
        return this;
    }

    public Layout gearbox() {
        return gearbox;
    }

    public CaseSheet gearbox(Layout now) {
        gearbox = now;
        return this;
    }

    public Claim claim() {
        return claim;
    }

    public CaseSheet claim(Claim now) {
        claim = now;
        return this;
    }

    public Optional<FindingEntry> finding(String finding) {
        return Optional.ofNullable(findings.get(finding));
    }

    public CaseSheet finding(FindingEntry entry) {
        findings.put(entry.finding(), entry);
        return this;
    }

    /** Takes the finding away; {@link CaseRefused} if it is not on the case. */
    public void clearFinding(String finding) {
        refuseMissing(findings.remove(finding) == null, "finding", finding);
    }

    public Optional<Measurement> measurement(String measure) {
        return Optional.ofNullable(measurements.get(measure));
    }

    public CaseSheet measurement(Measurement entry) {
        measurements.put(entry.measure(), entry);
        return this;
    }

    /** Takes the measurement away; {@link CaseRefused} if it is not on the case. */
    public void clearMeasurement(String measure) {
        refuseMissing(measurements.remove(measure) == null, "measurement", measure);
    }

    public CaseSheet note(String note) {
        String plain = CheckedText.free("note", note);
        if (plain.isBlank()) {
            throw new CaseRefused("note: nothing is written", "write at least one word");
        }
        notes.add(plain);
        return this;
    }

    /** Adds the attachment; {@link CaseRefused} if these bytes are on the case already. */
    public CaseSheet attachment(Attachment added) {
        Optional<Attachment> same = attachments.stream()
                .filter(a -> a.sha256().equals(added.sha256()))
                .findFirst();
        if (same.isPresent()) {
            throw new CaseRefused(
                    "attachment '" + added.name() + "': the same bytes are on case '" + id + "' as '"
                            + same.get().name() + "'",
                    "leave it, or remove that one first");
        }
        attachments.add(added);
        return this;
    }

    /** Takes the attachment off the case; {@link CaseRefused} if it is not on it. */
    public void removeAttachment(Attachment removed) {
        refuseMissing(!attachments.remove(removed), "attachment", removed.name());
    }

    public Optional<Evidence> evidence(String evidenceId) {
        return Optional.ofNullable(evidence.get(evidenceId));
    }

    public CaseSheet evidence(Evidence entry) {
        evidence.put(entry.id(), entry);
        return this;
    }

    /** Takes the result away; {@link CaseRefused} if it is not on the case. */
    public void removeEvidence(String evidenceId) {
        refuseMissing(evidence.remove(evidenceId) == null, "evidence", evidenceId);
    }

    public Optional<SignOff> signedOff() {
        return signedOff;
    }

    public CaseSheet signedOff(SignOff signOff) {
        signedOff = Optional.of(signOff);
        return this;
    }

    private void refuseMissing(boolean missing, String what, String name) {
        if (missing) {
            throw new CaseRefused(
                    what + ": '" + CheckedText.shown(name) + "' is not on case '" + id + "'", "nothing was changed");
        }
    }
}
