package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.store.CaseSummary;
import witnessmark.casefile.store.KeptCase;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.shell.print.Json;

/**
 * A case as JSON, with the names of the YAML form, with the state of its chain and, where another was signed, today's
 * judgement.
 */
record CaseJson(
        @Json.Name("case") String id,
        String title,
        String complaint,
        Map<String, Object> vehicle,
        Map<String, ?> gearbox,
        Map<String, ?> claim,
        @Json.Name("driver-account") String driverAccount,
        @Json.Name("work-done") String workDone,
        Map<String, ?> findings,
        Map<String, ?> measurements,
        List<String> notes,
        Map<String, ?> evidence,
        List<?> attachments,
        @Nullable SignedOffJson signedOff,
        SignedOffJson.@Nullable Today judgedToday,
        ChainJson chain) {

    static CaseJson of(CaseDocument document, Optional<AfterSignOff> after) {
        CaseFile file = document.present();
        return new CaseJson(
                file.id().toString(),
                file.title(),
                file.complaint(),
                CaseForm.vehicle(file.vehicle()),
                CaseForm.gearbox(file.gearbox()),
                file.claim().form(),
                file.driverAccount(),
                file.workDone(),
                each(file.findings(), CaseForm::finding),
                each(file.measurements(), CaseForm::measurement),
                file.notes(),
                each(file.evidence(), CaseForm::evidence),
                file.attachments().stream().map(CaseForm::attachment).toList(),
                file.signedOff().map(SignedOffJson::of).orElse(null),
                SignedOffJson.Today.of(after),
                ChainJson.of(document));
    }

    private static <E> Map<String, Object> each(Map<String, E> entries, Function<E, ?> form) {
        Map<String, Object> forms = new LinkedHashMap<>();
        entries.forEach((id, entry) -> forms.put(id, form.apply(entry)));
        return forms;
    }

    /**
     * The cases listed.
     *
     * @param count how many fit, as far as they were counted
     * @param more whether there are more than were counted
     */
    record Listed(long count, boolean more, List<One> cases) {
        static Listed of(List<CaseSummary> list, Function<CaseId, KeptCase> look, long counted, boolean more) {
            return new Listed(
                    counted,
                    more,
                    list.stream().map(c -> One.of(c, look.apply(c.id()))).toList());
        }
    }

    record One(
            @Json.Name("case") String id,
            String title,
            String unit,
            String opened,
            String changed,
            boolean signedOff,
            long entries,
            ChainJson chain) {
        static One of(CaseSummary summary, KeptCase kept) {
            return new One(
                    summary.id().toString(),
                    summary.title(),
                    summary.unit(),
                    summary.opened().toString(),
                    summary.changed().toString(),
                    summary.signedOff().isPresent(),
                    summary.entries(),
                    ChainJson.of(kept.chain(), kept.damagedFiles()));
        }
    }
}
