package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.store.CaseSummary;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;

/** Cases as JSON, with the names of the YAML form. */
final class CaseJson {
    private CaseJson() {}

    private static Map<String, Object> of(CaseFile file) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", file.id().toString());
        map.put("title", file.title());
        map.put("complaint", file.complaint());
        map.put("vehicle", CaseForm.vehicle(file.vehicle()));
        map.put("gearbox", CaseForm.gearbox(file.gearbox()));
        map.put("claim", file.claim().form());
        map.put("driver-account", file.driverAccount());
        map.put("work-done", file.workDone());
        Map<String, Object> findings = new LinkedHashMap<>();
        file.findings().forEach((id, entry) -> findings.put(id, CaseForm.finding(entry)));
        map.put("findings", findings);
        Map<String, Object> measurements = new LinkedHashMap<>();
        file.measurements().forEach((id, entry) -> measurements.put(id, CaseForm.measurement(entry)));
        map.put("measurements", measurements);
        map.put("notes", file.notes());
        Map<String, Object> evidence = new LinkedHashMap<>();
        file.evidence().forEach((id, entry) -> evidence.put(id, CaseForm.evidence(entry)));
        map.put("evidence", evidence);
        map.put(
                "attachments",
                file.attachments().stream().map(CaseForm::attachment).toList());
        map.put("signedOff", file.signedOff().map(SignedOffJson::of).orElse(null));
        return map;
    }

    /** A case with the state of its chain and, where another was signed, today's judgement. */
    static Map<String, Object> of(CaseDocument document, Optional<AfterSignOff> after) {
        Map<String, Object> map = of(document.present());
        map.put("judgedToday", SignedOffJson.today(after));
        map.put("chain", ChainAlarm.json(document));
        return map;
    }

    /** The cases listed, how many fit as far as they were counted, and whether there are more. */
    static Map<String, Object> of(
            List<CaseSummary> list, Function<CaseId, ChainCheck> chains, long counted, boolean more) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("count", counted);
        map.put("more", more);
        map.put("cases", list.stream().map(c -> of(c, chains.apply(c.id()))).toList());
        return map;
    }

    private static Map<String, Object> of(CaseSummary summary, ChainCheck chain) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("case", summary.id().toString());
        map.put("title", summary.title());
        map.put("unit", summary.unit());
        map.put("opened", summary.opened().toString());
        map.put("changed", summary.changed().toString());
        map.put("signedOff", summary.signedOff().isPresent());
        map.put("entries", summary.entries());
        map.put("chain", ChainAlarm.json(chain));
        return map;
    }
}
