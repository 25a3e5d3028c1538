package witnessmark.casefile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.gearbox.Layout;
import witnessmark.triplog.evidence.LogEvidence;

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
                other, texts, vehicle, gearbox, findings, measurements, notes, attachments, evidence, signedOff);
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

    /**
     * The findings that follow from all evidence together. Where two results differ, present stands before unsure and
     * unsure before absent: one shift made well does not undo another made badly. The logs of the case count as one.
     */
    public Map<String, FindingState> evidenceFindings() {
        return evidenceFindings(logged());
    }

    private Map<String, FindingState> evidenceFindings(LoggedTogether logs) {
        Map<String, FindingState> together = new LinkedHashMap<>();
        evidence.values().forEach(e -> e.findings().forEach((finding, state) -> {
            if (!LoggedTogether.covers(e, finding)) {
                together.merge(finding, state, FindingState::weightier);
            }
        }));
        logs.states().forEach((finding, state) -> together.merge(finding, state, FindingState::weightier));
        return together;
    }

    /**
     * How well all results that speak of the finding fit it together: all logs as one, for they are of one truck, and
     * each other result as independent of the rest. Empty where one of them shows the finding outright, or none speaks
     * of it.
     */
    public Optional<Likelihood> evidenceLikelihood(String finding) {
        LoggedTogether logs = logged();
        FindingState state = evidenceFindings(logs).get(finding);
        if (state == null) {
            return Optional.empty();
        }
        double factor = logs.likelihood(finding).map(Likelihood::factor).orElse(1.0);
        for (Evidence result : evidence.values()) {
            if (LoggedTogether.covers(result, finding)) {
                continue;
            }
            Likelihood one = result.likelihoods().get(finding);
            if (one != null) {
                factor *= one.factor();
            } else if (state == result.findings().get(finding)) {
                return Optional.empty();
            }
        }
        return Optional.of(Likelihood.ofFactor(factor));
    }

    /** What the counts of all logs of the case come to, also where it is too little to count; empty without such logs. */
    public List<LogEvidence> loggedTogether() {
        return logged().pooled();
    }

    private LoggedTogether logged() {
        return new LoggedTogether(evidence.values());
    }

    public boolean isSignedOff() {
        return signedOff.isPresent();
    }
}
