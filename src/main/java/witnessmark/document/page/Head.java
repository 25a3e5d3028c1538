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
import witnessmark.gearbox.Unit;

/**
 * What every document says of its case; the names are those that templates use.
 *
 * @param asOf as of when the document speaks
 * @param verdict the sentence of the signed verdict, where one was signed, else of today's
 * @param judged its standing, and what speaks beside it
 * @param open why no more can be said
 * @param chainHead end of the chain of entries as it is noted outside the store; empty for a case not stored, and
 *     for a broken chain
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
        SayOnPaper words = new SayOnPaper(dossier);
        return new Head(
                file.id().text(),
                file.title(),
                asOf(dossier, words),
                truck(file.vehicle(), words),
                gearbox(file.gearbox(), words),
                file.complaint(),
                file.driverAccount(),
                file.workDone(),
                judged.concluded(),
                judged.verdict(),
                judged,
                judgement.verdict().open(),
                words.percent(judgement.coverage()),
                file.signedOff()
                        .map(s -> words.say("signed-by", s.who(), SayOnPaper.time(s.time())))
                        .orElse(""),
                mark(dossier),
                mark(dossier).isEmpty() ? "" : DrawCode.draw(mark(dossier), words.say("code-alt")));
    }

    /** The end of a broken chain is not handed on: checked later, it would seem to confirm what was changed. */
    private static String mark(Dossier dossier) {
        return dossier.isBroken()
                ? ""
                : dossier.history().map(HeadMark::of).map(HeadMark::text).orElse("");
    }

    private static String asOf(Dossier dossier, SayOnPaper words) {
        return dossier.history()
                .map(h -> words.say(
                        "as-of",
                        h.last().number(),
                        SayOnPaper.time(h.last().stamp().time())))
                .orElseGet(() -> words.say("as-of-file"));
    }

    static List<Field> truck(Vehicle vehicle, SayOnPaper words) {
        List<Field> fields = new ArrayList<>();
        text(fields, words.say("vehicle-unit"), vehicle.unit());
        text(fields, words.say("vehicle-serial"), vehicle.serial());
        text(fields, words.say("vehicle-duty"), vehicle.duty());
        distance(fields, words, "vehicle-odometer", vehicle.odometerKm());
        distance(fields, words, "vehicle-since-new", vehicle.kmSinceNew());
        distance(fields, words, "vehicle-since-repair", vehicle.kmSinceRepair());
        text(fields, words.say("vehicle-last-repair"), vehicle.repairNote());
        return List.copyOf(fields);
    }

    static List<Field> gearbox(Layout layout, SayOnPaper words) {
        List<Field> fields = new ArrayList<>();
        layout.forwardRatios().ifPresent(n -> fields.add(new Field(words.say("layout-ratios"), String.valueOf(n))));
        feature(fields, words, "layout-range", layout.range());
        feature(fields, words, "layout-splitter", layout.splitter());
        feature(fields, words, "layout-countershafts", layout.countershafts());
        feature(fields, words, "layout-linkage", layout.linkage());
        feature(fields, words, "layout-oil-pump", layout.oilPump());
        feature(fields, words, "layout-oil-cooler", layout.oilCooler());
        feature(fields, words, "layout-pto", layout.powerTakeOff());
        return List.copyOf(fields);
    }

    private static void text(List<Field> fields, String label, String value) {
        if (!value.isEmpty()) {
            fields.add(new Field(label, value));
        }
    }

    private static void distance(List<Field> fields, SayOnPaper words, String key, OptionalDouble km) {
        km.ifPresent(value -> fields.add(new Field(words.say(key), words.inUnits(value, Unit.KILOMETRE))));
    }

    private static void feature(List<Field> fields, SayOnPaper words, String key, Optional<? extends Enum<?>> feature) {
        feature.ifPresent(f -> fields.add(new Field(words.say(key), words.layoutWord(f))));
    }
}
