package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.document.Dossier;

/**
 * A claim on one page, for somebody who was not there.
 *
 * @param facts who, what, when and where the unit is, as far as it was said
 * @param missing what was not said
 * @param carrying the findings and measurements that carry the cause, most telling first
 * @param against what speaks against it, and what holds it back
 * @param open what was not looked at
 * @param people who looked, measured, signed and entered, in which role
 * @param chainEnd the end of the chain of entries
 */
public record ClaimPage(
        List<Field> facts,
        List<String> missing,
        String complaint,
        String correction,
        List<Carrying> carrying,
        List<String> against,
        List<String> open,
        List<Part> parts,
        List<Field> people,
        String chainEnd) {
    private static final int MOST_CARRYING = 5;
    private static final int MOST_AGAINST = 4;
    private static final int MOST_OPEN = 4;
    private static final int MOST_PARTS = 8;
    private static final List<ClaimField> ROLES = List.of(ClaimField.LOOKED, ClaimField.MEASURED, ClaimField.SIGNS);

    /**
     * A finding or measurement that carries the cause.
     *
     * @param state what was found, or the value measured
     * @param limit the limit with whose it is; empty for a finding
     * @param photo number of its photographs; empty without one
     */
    public record Carrying(String title, String state, String limit, String photo) {}

    /** A part line; the last one says how many more there are. */
    public record Part(String old, String fitted, String quantity, String whereabouts, String tag) {}

    public static ClaimPage of(Dossier dossier) {
        CaseFile file = dossier.file();
        Claim claim = file.claim();
        List<Field> facts = facts(dossier);
        return new ClaimPage(
                facts,
                missing(dossier),
                ChainRows.shortened(file.complaint()),
                ChainRows.shortened(file.workDone()),
                carrying(dossier),
                against(dossier.judgement()),
                open(dossier),
                parts(claim),
                people(dossier),
                dossier.history()
                        .map(h -> "entry " + h.last().number() + " of "
                                + PaperFigures.time(h.last().stamp().time()) + ", hash "
                                + h.last().hash())
                        .orElse("none: read from a case file, not from the store"));
    }

    private static List<Field> facts(Dossier dossier) {
        List<Field> facts = new ArrayList<>();
        for (ClaimField field : ClaimField.values()) {
            String value = dossier.file().claim().fact(field);
            if (!value.isEmpty() && !ROLES.contains(field)) {
                facts.add(new Field(field.title(), value));
            }
        }
        facts.addAll(Head.truck(dossier.file().vehicle()));
        return facts;
    }

    private static List<String> missing(Dossier dossier) {
        CaseFile file = dossier.file();
        Stream<String> fields = Arrays.stream(ClaimField.values())
                .filter(f -> file.claim().fact(f).isEmpty())
                .map(f -> f.title().toLowerCase(java.util.Locale.ROOT));
        Stream<String> others = Stream.of(
                        file.vehicle().odometerKm().isEmpty() ? "odometer" : "",
                        file.complaint().isEmpty() ? "complaint" : "",
                        file.workDone().isEmpty() ? "correction" : "",
                        file.claim().parts().isEmpty() ? "parts" : "",
                        file.attachments().isEmpty() ? "photographs" : "")
                .filter(s -> !s.isEmpty());
        return Stream.concat(fields, others).toList();
    }

    /** What was measured against a limit; then what the signed judgement leans on, or today's where none was signed. */
    private static List<Carrying> carrying(Dossier dossier) {
        Set<String> titles = new LinkedHashSet<>();
        dossier.file()
                .signedOff()
                .flatMap(SignOff::judgement)
                .map(SignedJudgement::carriedBy)
                .ifPresent(titles::addAll);
        if (titles.isEmpty()) {
            leading(dossier.judgement()).forEach(c -> c.evidenceFor().forEach(w -> titles.add(w.title())));
        }
        List<Carrying> rows = new ArrayList<>();
        MeasuredRow.of(dossier).stream()
                .filter(m -> !m.result().equals("not judged"))
                .limit(2)
                .forEach(m -> rows.add(new Carrying(m.title(), m.value() + ", " + m.result(), m.limits(), "")));
        List<Carrying> found = dossier.file().findings().values().stream()
                .filter(f -> titles.contains(FoundRow.title(dossier, f.finding())))
                .map(f -> new Carrying(
                        FoundRow.title(dossier, f.finding()),
                        f.toldBy().isEmpty() ? FoundRow.stateWord(f.state()) : f.toldWords(),
                        "",
                        KeptFile.numbersShowing(dossier, f.finding())))
                .sorted(java.util.Comparator.comparingInt(
                        c -> List.copyOf(titles).indexOf(c.title())))
                .limit(MOST_CARRYING - rows.size())
                .toList();
        rows.addAll(found);
        return rows;
    }

    /** The causes that carry the verdict; without any the likeliest. */
    private static List<RankedCause> leading(Judgement judgement) {
        List<RankedCause> carrying = judgement.causes().stream()
                .filter(c -> judgement.verdict().carriedBy().contains(c.id()))
                .toList();
        return carrying.isEmpty() ? judgement.causes().stream().limit(1).toList() : carrying;
    }

    private static List<String> against(Judgement judgement) {
        Stream<String> contradictions = judgement.contradictions().stream().map(Judgement.Conflict::why);
        Stream<String> findings = leading(judgement).stream()
                .flatMap(c -> c.evidenceAgainst().stream())
                .map(w -> w.title() + " (" + w.state() + ")");
        return Stream.of(contradictions, judgement.verdict().open().stream(), findings)
                .flatMap(s -> s)
                .distinct()
                .limit(MOST_AGAINST)
                .map(ChainRows::shortened)
                .toList();
    }

    private static List<String> open(Dossier dossier) {
        Stream<String> unsure = dossier.file().findings().values().stream()
                .filter(f -> f.state() == FindingState.UNSURE)
                .map(f -> FoundRow.title(dossier, f.finding()) + " (unsure)");
        Stream<String> unchecked = leading(dossier.judgement()).stream()
                .flatMap(c -> c.unchecked().stream())
                .map(id -> FoundRow.title(dossier, id));
        return Stream.concat(unsure, unchecked).distinct().limit(MOST_OPEN).toList();
    }

    private static List<Part> parts(Claim claim) {
        List<Part> parts = new ArrayList<>(claim.parts().stream()
                .limit(MOST_PARTS)
                .map(p -> new Part(
                        p.old(),
                        p.fitted(),
                        PaperFigures.number(p.quantity()),
                        p.whereabouts().map(PartLine.Whereabouts::word).orElse("not said"),
                        p.tag()))
                .toList());
        int more = claim.parts().size() - parts.size();
        if (more > 0) {
            parts.add(new Part("and " + more + " more lines, in the case's own file", "", "", "", ""));
        }
        return parts;
    }

    private static List<Field> people(Dossier dossier) {
        List<Field> people = new ArrayList<>();
        for (ClaimField role : ROLES) {
            String name = dossier.file().claim().fact(role);
            if (!name.isEmpty()) {
                people.add(new Field(role.title(), name));
            }
        }
        dossier.history()
                .map(ChainRows::of)
                .map(ChainRows::people)
                .map(all -> PaperFigures.list(all.stream()
                        .limit(3)
                        .map(p -> p.who() + ", " + p.entries() + " entries")
                        .toList()))
                .ifPresent(who -> people.add(new Field("Entered", who)));
        Optional<SignOff> signed = dossier.file().signedOff();
        signed.ifPresent(s -> people.add(new Field("Signed off", s.who() + ", " + PaperFigures.time(s.time()))));
        return people;
    }
}
