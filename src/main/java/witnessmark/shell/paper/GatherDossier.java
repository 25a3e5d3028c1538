package witnessmark.shell.paper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreUnavailable;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.OpenCase;
import witnessmark.document.Dossier;
import witnessmark.document.chart.ChartLabels;
import witnessmark.gearbox.TruckProfile;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.log.LogChart;
import witnessmark.shell.log.LogJob;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.settings.ShopSettings;
import witnessmark.shell.truck.Trucks;
import witnessmark.triplog.event.HabitLimits;

/** Gathers what the documents of a case are written from. */
@Component
class GatherDossier {
    private static final long LARGEST_ATTACHMENT = 50_000_000;

    private final ObjectProvider<Diagnosis> diagnosis;
    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<Trucks> trucks;
    private final ObjectProvider<LogJob> jobs;
    private final ObjectProvider<MadeWith> made;
    private final ShopSettings shop;

    GatherDossier(
            ObjectProvider<Diagnosis> diagnosis,
            ObjectProvider<Cases> cases,
            ObjectProvider<Trucks> trucks,
            ObjectProvider<LogJob> jobs,
            ObjectProvider<MadeWith> made,
            ShopSettings shop) {
        this.diagnosis = diagnosis;
        this.cases = cases;
        this.trucks = trucks;
        this.jobs = jobs;
        this.made = made;
        this.shop = shop;
    }

    /**
     * The case so named, judged, with the bytes of its attachments as far as they are at hand.
     *
     * @param truck a ready truck, a kept one or a file with a truck's profile; empty for none
     * @param log a trip log of that truck, whose timeline is drawn; empty for none
     */
    Dossier find(String name, String truck, String log, Language language) {
        if (truck.isEmpty() && !log.isEmpty()) {
            throw new WrongUsage("--log needs --truck: the gears in hand follow from its ratios");
        }
        Optional<TruckProfile> profile = truck.isEmpty()
                ? Optional.empty()
                : Optional.of(trucks.getObject().find(truck));
        CaseDocument document = cases.getObject().find(name);
        CaseFile file = document.present();
        Kept kept = kept(name, file);
        Diagnosis inLanguage = diagnosis.getObject().in(language);
        CaseFile known = CheckKnown.toJudge(file, inLanguage.knowledge());
        WeighOnce weigh = new WeighOnce();
        try (OpenCase open = inLanguage.open(known, CombinedEvidence.of(known, weigh))) {
            return new Dossier(
                    file,
                    document.history(),
                    open.judgement(),
                    open.matrix(),
                    inLanguage.knowledge(),
                    made.getObject(),
                    kept.contents(),
                    kept.changed(),
                    profile,
                    log.isEmpty() ? List.of() : List.of(timeline(profile.orElseThrow(), log, language)),
                    shop.onPaper(),
                    weigh);
        }
    }

    private Dossier.Figure timeline(TruckProfile truck, String log, Language language) {
        Texts texts = Texts.of("document", language);
        LogJob.Done done = jobs.getObject()
                .run(new LogJob.Order(
                        truck, List.of(log), GivenPath.NONE, HabitLimits.Load.UNKNOWN, LogJob.Hashes.LEFT_OUT));
        return new Dossier.Figure(
                texts.text("chart-log", Path.of(log).getFileName()),
                texts.text("chart-log-says"),
                LogChart.timeline(done, new ChartLabels(texts, shop.units())));
    }

    /** What was kept of the files of a case. */
    private record Kept(Map<String, byte[]> contents, Set<String> changed) {
        Kept() {
            this(new LinkedHashMap<>(), new HashSet<>());
        }
    }

    private Kept kept(String name, CaseFile file) {
        Kept kept = new Kept();
        for (Attachment attachment : file.attachments()) {
            if (Cases.isFile(name)) {
                besideFile(Path.of(name), attachment, kept);
            } else {
                stored(file.id(), attachment, kept);
            }
        }
        return kept;
    }

    private void stored(CaseId id, Attachment attachment, Kept kept) {
        CaseStore store = cases.getObject().store();
        try {
            kept.contents().put(attachment.sha256(), store.readAttachment(id, attachment));
        } catch (StoreUnavailable e) {
            // The document says that they are missing or changed, which is better than no document.
            if (store.isChanged(id, attachment)) {
                kept.changed().add(attachment.sha256());
            }
        }
    }

    /** Attachments of a case file lie beside it in the folder attachments, named by hash, as a packet unpacks them. */
    private static void besideFile(Path caseFile, Attachment attachment, Kept kept) {
        Path file = caseFile.resolveSibling("attachments").resolve(attachment.sha256());
        if (!Files.isRegularFile(file)) {
            return;
        }
        try {
            byte[] bytes = Files.size(file) > LARGEST_ATTACHMENT ? new byte[0] : Files.readAllBytes(file);
            if (CanonicalText.sha256(bytes).equals(attachment.sha256())) {
                kept.contents().put(attachment.sha256(), bytes);
                return;
            }
        } catch (IOException e) {
            // no one can tell what it holds
        }
        kept.changed().add(attachment.sha256());
    }
}
