package witnessmark.casefile;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalDouble;
import witnessmark.gearbox.Layout;
import witnessmark.gearbox.LayoutFeatures;

/**
 * The names and the order in which the parts of a case are written, as maps of text, number, truth, map or list.
 * What is not said is left out, so that a field added later does not change how an older value is written.
 */
public final class CaseForm {
    private CaseForm() {}

    public static Map<String, Object> vehicle(Vehicle vehicle) {
        Map<String, Object> form = new LinkedHashMap<>();
        putText(form, "unit", vehicle.unit());
        putText(form, "serial", vehicle.serial());
        putText(form, "duty", vehicle.duty());
        putNumber(form, "odometer-km", vehicle.odometerKm());
        putNumber(form, "km-since-new", vehicle.kmSinceNew());
        putNumber(form, "km-since-repair", vehicle.kmSinceRepair());
        putText(form, "repair-note", vehicle.repairNote());
        return form;
    }

    public static Map<String, Object> gearbox(Layout gearbox) {
        Map<String, Object> form = new LinkedHashMap<>();
        gearbox.forwardRatios().ifPresent(ratios -> form.put("forward-ratios", (double) ratios));
        form.putAll(LayoutFeatures.words(gearbox));
        return form;
    }

    /** Without the finding's id, which stands before it. */
    public static Map<String, Object> finding(FindingEntry entry) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("state", entry.state().word());
        putText(form, "note", entry.note());
        putText(form, "told-by", entry.toldBy().map(Teller::word).orElse(""));
        putText(form, "gear", entry.gear().orElse(""));
        return form;
    }

    /** Without the measure's id, which stands before it. */
    public static Map<String, Object> measurement(Measurement entry) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("value", entry.value());
        form.put("unit", entry.unit().symbol());
        entry.limits().ifPresent(limits -> {
            putNumber(form, "low", limits.low());
            putNumber(form, "high", limits.high());
            form.put("limit-unit", limits.unit().symbol());
            form.put("limit-from", limits.source());
        });
        if (!entry.earlier().isEmpty()) {
            form.put("earlier", entry.earlier().stream().map(CaseForm::earlier).toList());
        }
        putText(form, "note", entry.note());
        return form;
    }

    private static Map<String, Object> earlier(EarlierSample sample) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("value", sample.value());
        form.put("day", sample.day().toString());
        putNumber(form, "odometer-km", sample.odometerKm());
        return form;
    }

    public static Map<String, Object> attachment(Attachment attachment) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("name", attachment.name());
        form.put("media-type", attachment.mediaType());
        form.put("sha256", attachment.sha256());
        form.put("size", (double) attachment.size());
        attachment.finding().ifPresent(finding -> form.put("finding", finding));
        attachment.originalSha256().ifPresent(hash -> form.put("original-sha256", hash));
        return form;
    }

    /** Without the result's id, which stands before it. */
    public static Map<String, Object> evidence(Evidence evidence) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put("kind", evidence.kind().word());
        putText(form, "summary", evidence.summary());
        putText(form, "formula", evidence.formula());
        putMap(form, "inputs", evidence.inputs());
        evidence.file().ifPresent(file -> putMap(form, "file", inOrder("name", file.name(), "sha256", file.sha256())));
        Map<String, Object> findings = new LinkedHashMap<>();
        evidence.findings().forEach((finding, state) -> findings.put(finding, state.word()));
        putMap(form, "findings", findings);
        Map<String, Object> likelihoods = new LinkedHashMap<>();
        evidence.likelihoods()
                .forEach((finding, l) ->
                        likelihoods.put(finding, inOrder("if-present", l.ifPresent(), "if-absent", l.ifAbsent())));
        putMap(form, "likelihoods", likelihoods);
        Map<String, Object> reckoned = new LinkedHashMap<>();
        evidence.reckoned().forEach((finding, figures) -> reckoned.put(finding, figures.form()));
        putMap(form, "reckoned", reckoned);
        evidence.record().ifPresent(record -> form.put("record", LogRecordForm.of(record)));
        return form;
    }

    private static Map<String, Object> inOrder(String first, Object one, String second, Object two) {
        Map<String, Object> form = new LinkedHashMap<>();
        form.put(first, one);
        form.put(second, two);
        return form;
    }

    private static void putText(Map<String, Object> form, String key, String text) {
        if (!text.isEmpty()) {
            form.put(key, text);
        }
    }

    private static void putNumber(Map<String, Object> form, String key, OptionalDouble number) {
        number.ifPresent(value -> form.put(key, value));
    }

    private static void putMap(Map<String, Object> form, String key, Map<String, ?> map) {
        if (!map.isEmpty()) {
            form.put(key, map);
        }
    }
}
