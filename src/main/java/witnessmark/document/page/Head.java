package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.HeadMark;
import witnessmark.diagnosis.Judgement;
import witnessmark.document.Dossier;
import witnessmark.document.drawing.DrawCode;
import witnessmark.gearbox.Layout;

/**
 * What every document says of its case; the names are those that templates use.
 *
 * @param asOf as of when the document speaks
 * @param verdict the sentence of the signed verdict, where one was signed, else of today's
 * @param judged its standing, and what speaks beside it
 * @param open why no more can be said
 * @param chainHead end of the chain of entries as it is noted outside the store; empty for a case not stored
 * @param chainCode the same as a scannable code, one SVG element
 * @param coverage share of the evidence that matters which was looked at
 */
public record Head(
        String caseId,
        String caseTitle,
        String asOf,
        List<Field> truck,
        List<Field> gearbox,
        String complaint,
        String driverAccount,
        String workDone,
        boolean determined,
        String verdict,
        Judged judged,
        List<String> open,
        String coverage,
        String signedOff,
        String chainHead,
        String chainCode) {

    public static Head of(Dossier dossier) {
        CaseFile file = dossier.file();
        Judgement judgement = dossier.judgement();
        Judged judged = Judged.of(dossier);
        return new Head(
                file.id().text(),
                file.title(),
                asOf(dossier),
                truck(file.vehicle()),
                gearbox(file.gearbox()),
                file.complaint(),
                file.driverAccount(),
                file.workDone(),
                judged.concluded(),
                judged.verdict(),
                judged,
                judgement.verdict().open(),
                PaperFigures.percent(judgement.coverage()),
                file.signedOff()
                        .map(s -> "Signed off by " + s.who() + ", " + PaperFigures.time(s.time()))
                        .orElse(""),
                mark(dossier),
                dossier.history().isEmpty()
                        ? ""
                        : DrawCode.draw(mark(dossier), "Scannable code: end of the chain of entries"));
    }

    private static String mark(Dossier dossier) {
        return dossier.history().map(HeadMark::of).map(HeadMark::text).orElse("");
    }

    private static String asOf(Dossier dossier) {
        return dossier.history()
                .map(h -> "entry " + h.last().number() + " of "
                        + PaperFigures.time(h.last().stamp().time()))
                .orElse("not stored: read from a case file, undated");
    }

    static List<Field> truck(Vehicle vehicle) {
        List<Field> fields = new ArrayList<>();
        text(fields, "Truck", vehicle.unit());
        text(fields, "Serial number", vehicle.serial());
        text(fields, "Duty", vehicle.duty());
        km(fields, "Odometer", vehicle.odometerKm());
        km(fields, "Gearbox since new", vehicle.kmSinceNew());
        km(fields, "Gearbox since repair", vehicle.kmSinceRepair());
        text(fields, "Last repair", vehicle.repairNote());
        return List.copyOf(fields);
    }

    private static List<Field> gearbox(Layout layout) {
        List<Field> fields = new ArrayList<>();
        layout.forwardRatios().ifPresent(n -> fields.add(new Field("Forward ratios", String.valueOf(n))));
        word(fields, "Range", layout.range());
        word(fields, "Splitter", layout.splitter());
        word(fields, "Countershafts", layout.countershafts());
        word(fields, "Linkage", layout.linkage());
        word(fields, "Oil pump", layout.oilPump());
        word(fields, "Oil cooler", layout.oilCooler());
        word(fields, "Power take-off", layout.powerTakeOff());
        return List.copyOf(fields);
    }

    private static void text(List<Field> fields, String label, String value) {
        if (!value.isEmpty()) {
            fields.add(new Field(label, value));
        }
    }

    private static void km(List<Field> fields, String label, OptionalDouble km) {
        km.ifPresent(value -> fields.add(new Field(label, PaperFigures.number(value) + " km")));
    }

    private static void word(List<Field> fields, String label, Optional<? extends Enum<?>> word) {
        word.ifPresent(w -> fields.add(new Field(label, PaperFigures.words(w))));
    }
}
