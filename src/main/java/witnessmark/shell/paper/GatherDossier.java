package witnessmark.shell.paper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.logged.CombinedEvidence;
import witnessmark.casefile.logged.WeighOnce;
import witnessmark.casefile.store.CaseStore;
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
        Kept kept = kept(name, document);
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
                    kept.damaged(),
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

    /** What there is of the files of a case: the bytes of those that are as they were put in, and what is amiss with others. */
    private record Kept(Map<String, byte[]> contents, List<DamagedFile> damaged) {}

    private Kept kept(String name, CaseDocument document) {
        Map<String, byte[]> contents = new LinkedHashMap<>();
        List<DamagedFile> damaged = new ArrayList<>(
                document.history().map(CaseHistory::damagedFiles).orElse(List.of()));
        for (Attachment attachment : document.present().attachments()) {
            if (Cases.isFile(name)) {
                besideFile(Path.of(name), attachment, contents, damaged);
            } else if (damaged.stream().noneMatch(d -> d.file().equals(attachment))) {
                CaseStore store = cases.getObject().store();
                contents.put(
                        attachment.sha256(),
                        store.readAttachment(document.present().id(), attachment));
            }
        }
        return new Kept(contents, damaged);
    }

    /**
     * Attachments of a case file lie beside it in the folder attachments, named by hash, as a packet unpacks them. A case
     * file that came alone lacks nothing that it had.
     */
    private static void besideFile(
            Path caseFile, Attachment attachment, Map<String, byte[]> contents, List<DamagedFile> damaged) {
        Path file = caseFile.resolveSibling("attachments").resolve(attachment.sha256());
        if (!Files.isRegularFile(file)) {
            return;
        }
        try {
            byte[] bytes = Files.size(file) > LARGEST_ATTACHMENT ? new byte[0] : Files.readAllBytes(file);
            if (CanonicalText.sha256(bytes).equals(attachment.sha256())) {
                contents.put(attachment.sha256(), bytes);
            } else {
                damaged.add(new DamagedFile(attachment, DamagedFile.Fault.CHANGED));
            }
        } catch (IOException e) {
            damaged.add(new DamagedFile(attachment, DamagedFile.Fault.UNREADABLE));
        }
    }
}
