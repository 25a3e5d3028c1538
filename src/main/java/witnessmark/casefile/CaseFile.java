package witnessmark.casefile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Layout;

/**
 * The present state of a case: everything that holds now, however it came to hold.
 * It is written by {@link CaseSheet}; texts are empty, maps and lists empty, where nothing was said.
 *
 * @param texts the single texts, of which only those that say something are listed
 * @param findings by finding id, in the order first entered
 * @param measurements by measure id, in the order first entered
 * @param evidence by evidence id, in the order first entered
 * @param signedOff who closed the case, empty while it is open
 */
public record CaseFile(
        CaseId id,
        Map<TextField, String> texts,
        Vehicle vehicle,
        Layout gearbox,
        Claim claim,
        Map<String, FindingEntry> findings,
        Map<String, Measurement> measurements,
        List<String> notes,
        List<Attachment> attachments,
        Map<String, Evidence> evidence,
        Optional<SignOff> signedOff) {

    public CaseFile {
        texts = Collections.unmodifiableMap(new LinkedHashMap<>(texts));
        findings = Collections.unmodifiableMap(new LinkedHashMap<>(findings));
        measurements = Collections.unmodifiableMap(new LinkedHashMap<>(measurements));
        notes = List.copyOf(notes);
        attachments = List.copyOf(attachments);
        evidence = Collections.unmodifiableMap(new LinkedHashMap<>(evidence));
    }

    /** The same case under another id. */
    public CaseFile as(CaseId other) {
        return new CaseFile(
                other, texts, vehicle, gearbox, claim, findings, measurements, notes, attachments, evidence, signedOff);
    }

    /** The same case open to change. */
    public CaseFile reopened() {
        return new CaseFile(
                id,
                texts,
                vehicle,
                gearbox,
                claim,
                findings,
                measurements,
                notes,
                attachments,
                evidence,
                Optional.empty());
    }

    public String text(TextField field) {
        return texts.getOrDefault(field, "");
    }

    public String title() {
        return text(TextField.TITLE);
    }

    public String complaint() {
        return text(TextField.COMPLAINT);
    }

    public String driverAccount() {
        return text(TextField.DRIVER_ACCOUNT);
    }

    /** The correction reported: what was done to put it right. */
    public String workDone() {
        return text(TextField.WORK_DONE);
    }

    public boolean isSignedOff() {
        return signedOff.isPresent();
    }
}
