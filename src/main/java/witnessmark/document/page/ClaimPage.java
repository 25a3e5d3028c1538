package witnessmark.document.page;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.FindingState;
import witnessmark.casefile.PartLine;
import witnessmark.casefile.Reckoned;
import witnessmark.casefile.SignOff;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.history.CorrectedAfterSignOff;
import witnessmark.casefile.history.Entry;
import witnessmark.casefile.history.FindingSet;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.knowledge.Cause;

/**
 * A claim on one page, for somebody who was not there.
 *
 * @param facts who, what, when and where the unit is, as far as it was said
 * @param missing what was not said
 * @param carrying the findings and measurements that carry the cause, most telling first
 * @param undecided whether nothing can be told yet, so that nothing is claimed
 * @param held why no more can be said; of an undecided case, what it could be
 * @param against what speaks against it
 * @param open what was not looked at
 * @param people who looked, measured, signed and entered, in which role
 * @param chainEnd the end of the chain of entries
 */
public record ClaimPage(
        List<Field> facts,
        List<String> missing,
        String complaint,
        String correction,
        boolean undecided,
        List<Carrying> carrying,
        List<String> held,
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
     * @param finding its id, or that of the finding which follows from the value; empty where none does
     * @param state what was found, or the value measured
     * @param limit the limit with whose it is; empty for a finding
     * @param photo number of its photographs; empty without one
     */
    public record Carrying(String finding, String title, String state, String limit, String photo) {}

    /** A part line; the last one says how many more there are. */
    public record Part(String old, String fitted, String quantity, String whereabouts, String tag) {}

    public static ClaimPage of(Dossier dossier) {
        CaseFile file = dossier.file();
        Claim claim = file.claim();
        SayOnPaper words = new SayOnPaper(dossier);
        List<Field> facts = facts(dossier, words);
        return new ClaimPage(
                facts,
                missing(dossier, words),
                ChainRows.shortened(file.complaint()),
                ChainRows.shortened(file.workDone()),
                isUndecided(dossier),
                carrying(dossier, words),
                held(dossier),
                against(dossier, words),
                open(dossier, words),
                parts(claim, words),
                people(dossier, words),
                chainEnd(dossier, words));
    }

    private static String chainEnd(Dossier dossier, SayOnPaper words) {
        return dossier.history()
                .map(h -> h.verify() instanceof ChainCheck.Broken broken
                        ? words.say("chain-broken", broken.number())
                        : words.say(
                                "chain-end",
                                h.last().number(),
                                SayOnPaper.time(h.last().stamp().time()),
                                h.last().hash()))
                .orElseGet(() -> words.say("chain-none"));
    }

    private static List<Field> facts(Dossier dossier, SayOnPaper words) {
        CaseFile file = dossier.file();
        List<Field> facts = new ArrayList<>();
        for (ClaimField field : ClaimField.values()) {
            String value = fact(file, field);
            if (!value.isEmpty() && !ROLES.contains(field)) {
                facts.add(new Field(words.say("claim-" + field.word()), value));
            }
        }
        List<String> said = facts.stream().map(Field::value).toList();
        String serial = words.say("vehicle-serial");
        Head.truck(file.vehicle(), words).stream()
                .filter(f -> !f.label().equals(serial) || !said.contains(f.value()))
                .forEach(facts::add);
        return facts;
    }

    /** A fact of the claim; the serial of the truck as it stands with the truck where the claim gives none. */
    private static String fact(CaseFile file, ClaimField field) {
        String value = file.claim().fact(field);
        return value.isEmpty() && field == ClaimField.TRUCK_SERIAL
                ? file.vehicle().serial()
                : value;
    }

    private static List<String> missing(Dossier dossier, SayOnPaper words) {
        CaseFile file = dossier.file();
        Stream<String> fields = Arrays.stream(ClaimField.values())
                .filter(f -> fact(file, f).isEmpty())
                .filter(f -> f != ClaimField.SHOP || dossier.shop().name().isEmpty())
                .map(f -> words.say("claim-" + f.word()).toLowerCase(java.util.Locale.ROOT));
        Stream<String> others = Stream.of(
                        file.vehicle().odometerKm().isEmpty() ? "missing-odometer" : "",
                        file.complaint().isEmpty() ? "missing-complaint" : "",
                        file.workDone().isEmpty() ? "missing-correction" : "",
                        file.claim().parts().isEmpty() ? "missing-parts" : "",
                        file.attachments().isEmpty() ? "missing-photographs" : "")
                .filter(s -> !s.isEmpty())
                .map(words::say);
        return Stream.concat(fields, others).toList();
    }

    /**
     * What the signed judgement leans on, or today's where none was signed: what was measured outside its limits and
     * does not speak against it, what was found, then what was measured and seen sound.
     */
    private static List<Carrying> carrying(Dossier dossier, SayOnPaper words) {
        List<String> titles = titles(dossier);
        Set<String> against = isUndecided(dossier)
                ? Set.of()
                : leading(dossier).stream()
                        .flatMap(ClaimPage::speakingAgainst)
                        .map(RankedCause.Weight::title)
                        .filter(title -> !titles.contains(title))
                        .collect(Collectors.toSet());
        List<MeasuredRow> measured = MeasuredRow.of(dossier).stream()
                .filter(MeasuredRow::judged)
                .filter(m -> !against.contains(followed(dossier, m)))
                .toList();
        List<Carrying> beyond = measured.stream()
                .filter(m -> !m.within())
                .map(m -> row(dossier, m))
                .toList();
        Set<String> shown = measured.stream().map(MeasuredRow::follows).collect(Collectors.toSet());
        Set<String> marks = marks(dossier);
        List<Carrying> rows = Stream.of(
                        beyond.stream(),
                        found(dossier, words, titles, marks, FindingState.PRESENT)
                                .filter(f -> !shown.contains(f.finding()) && !against.contains(f.title())),
                        measured.stream().filter(MeasuredRow::within).map(m -> row(dossier, m)),
                        found(dossier, words, titles, Set.of(), FindingState.ABSENT))
                .flatMap(r -> r)
                .toList();
        return Stream.of(
                        rows.stream().limit(Math.max(1, beyond.size())),
                        rows.stream().filter(r -> isPhotographed(r, marks)),
                        rows.stream())
                .flatMap(r -> r)
                .distinct()
                .limit(MOST_CARRYING)
                .sorted(Comparator.comparingInt(rows::indexOf))
                .toList();
    }

    /**
     * The marks that the causes leave. Photographed they belong on this page even where each weighs little because the
     * others say the same: who was not there looks for them.
     */
    private static Set<String> marks(Dossier dossier) {
        return isUndecided(dossier)
                ? Set.of()
                : leading(dossier).stream()
                        .map(c -> dossier.knowledge().causes().get(c.id()))
                        .flatMap(c -> c.links().stream())
                        .filter(l -> l.look() || l.specific() || l.isExpected())
                        .map(Cause.Link::finding)
                        .collect(Collectors.toSet());
    }

    private static boolean isPhotographed(Carrying row, Set<String> marks) {
        return !row.photo().isEmpty() && marks.contains(row.finding());
    }

    private static List<String> titles(Dossier dossier) {
        List<String> signed = signed(dossier).map(SignedJudgement::carriedBy).orElse(List.of()).stream()
                .map(dossier.knowledge()::text)
                .toList();
        return signed.isEmpty()
                ? leading(dossier).stream()
                        .flatMap(c -> c.evidenceFor().stream())
                        .map(RankedCause.Weight::title)
                        .toList()
                : signed;
    }

    /** The finding that follows from a value beyond its limit is said by the value; its photographs stand there. */
    private static Carrying row(Dossier dossier, MeasuredRow m) {
        return new Carrying(
                m.follows(),
                m.title(),
                m.value() + ", " + m.result(),
                m.limits(),
                m.follows().isEmpty() ? "" : KeptFile.numbersShowing(dossier, m.follows()));
    }

    /** What was looked at, and what was computed or logged, most telling first. */
    private static Stream<Carrying> found(
            Dossier dossier, SayOnPaper words, List<String> titles, Set<String> marks, FindingState state) {
        return Stream.concat(entered(dossier, words, state), followed(dossier, words, state))
                .filter(row -> titles.contains(row.title()) || isPhotographed(row, marks))
                .sorted(Comparator.comparingInt(
                        row -> titles.contains(row.title()) ? titles.indexOf(row.title()) : titles.size()));
    }

    private static Stream<Carrying> entered(Dossier dossier, SayOnPaper words, FindingState state) {
        Set<String> corrected = corrected(dossier);
        return dossier.file().findings().values().stream()
                .filter(f -> !corrected.contains(f.finding()))
                .filter(f -> f.state() == state)
                .map(f -> new Carrying(
                        f.finding(),
                        FoundRow.title(dossier, f.finding()),
                        FoundRow.stateWord(words, f),
                        "",
                        KeptFile.numbersShowing(dossier, f.finding())));
    }

    /** Findings that nobody entered, for they follow from what was computed or logged. */
    private static Stream<Carrying> followed(Dossier dossier, SayOnPaper words, FindingState state) {
        SayResult said = new SayResult(dossier);
        Set<String> entered = dossier.file().findings().keySet();
        Set<String> told = new HashSet<>();
        return dossier.file().evidence().values().stream().flatMap(e -> e.findings().entrySet().stream()
                .filter(f -> f.getValue() == state && !entered.contains(f.getKey()))
                .filter(f -> told.add(f.getKey()))
                .map(f -> {
                    Optional<Reckoned> reckoned =
                            Optional.ofNullable(e.reckoned().get(f.getKey()));
                    String followed = words.say(
                            "followed",
                            words.state(state),
                            words.say("evidence-" + e.kind().word()));
                    return new Carrying(
                            f.getKey(),
                            FoundRow.title(dossier, f.getKey()),
                            reckoned.map(r -> said.value(r) + ": " + followed).orElse(followed),
                            reckoned.map(said::bound).orElse(""),
                            "");
                }));
    }

    /** Findings that were corrected after the sign-off; what was signed rests on them no longer. */
    static Set<String> corrected(Dossier dossier) {
        return dossier.history().stream()
                .flatMap(h -> h.entries().stream())
                .map(Entry::change)
                .filter(CorrectedAfterSignOff.class::isInstance)
                .map(c -> ((CorrectedAfterSignOff) c).change())
                .filter(FindingSet.class::isInstance)
                .map(c -> ((FindingSet) c).to().finding())
                .collect(Collectors.toSet());
    }

    private static Optional<SignedJudgement> signed(Dossier dossier) {
        return dossier.file().signedOff().flatMap(SignOff::judgement);
    }

    /** The causes that were signed, as they are weighed today; else those that carry the verdict, or the likeliest. */
    private static List<RankedCause> leading(Dossier dossier) {
        List<RankedCause> causes = dossier.judgement().causes();
        Optional<SignedJudgement> signed =
                signed(dossier).filter(j -> !j.carriedBy().isEmpty());
        if (signed.isPresent()) {
            List<String> ids =
                    signed.get().carrying().stream().map(SignedCause::id).toList();
            return causes.stream().filter(c -> ids.contains(c.id())).toList();
        }
        List<String> ids = dossier.judgement().verdict().carriedBy();
        List<RankedCause> carrying =
                causes.stream().filter(c -> ids.contains(c.id())).toList();
        return carrying.isEmpty() ? causes.stream().limit(1).toList() : carrying;
    }

    private static boolean isUndecided(Dossier dossier) {
        return signed(dossier)
                .map(j -> j.standing().equals(Verdict.Standing.UNDETERMINED.word()))
                .orElse(dossier.judgement().verdict().standing() == Verdict.Standing.UNDETERMINED);
    }

    /** Why no more can be said is of today's verdict, and so left out where another was signed. */
    private static List<String> held(Dossier dossier) {
        Judgement judgement = dossier.judgement();
        return shortest(Stream.concat(
                judgement.contradictions().stream().map(Judgement.Conflict::why),
                Judged.of(dossier).today().isEmpty() ? judgement.verdict().open().stream() : Stream.of()));
    }

    private static List<String> against(Dossier dossier, SayOnPaper words) {
        // With other knowledge a finding may turn round; on this page it stands where it was signed.
        List<String> carried = titles(dossier);
        return shortest(leading(dossier).stream().flatMap(c -> speakingAgainst(c)
                .filter(w -> w.state() != FindingState.UNSURE)
                .filter(w -> !carried.contains(w.title()))
                .map(w -> measured(dossier, w).orElseGet(() -> words.against(c, w)))));
    }

    private static Stream<RankedCause.Weight> speakingAgainst(RankedCause cause) {
        return cause.evidenceAgainst().stream().filter(w -> -w.decibans() >= SayOnPaper.WORTH_SAYING_AGAINST);
    }

    /** The value, where what speaks against the cause follows from one. */
    private static Optional<String> measured(Dossier dossier, RankedCause.Weight weight) {
        return MeasuredRow.of(dossier).stream()
                .filter(m -> weight.state() == FindingState.PRESENT
                        && followed(dossier, m).equals(weight.title()))
                .map(m -> m.title() + ": " + m.value() + ", " + m.result())
                .findFirst();
    }

    private static String followed(Dossier dossier, MeasuredRow m) {
        return m.follows().isEmpty() ? "" : FoundRow.title(dossier, m.follows());
    }

    private static List<String> shortest(Stream<String> said) {
        return said.distinct().limit(MOST_AGAINST).map(ChainRows::shortened).toList();
    }

    private static List<String> open(Dossier dossier, SayOnPaper words) {
        Stream<String> unsure = dossier.file().findings().values().stream()
                .filter(f -> f.state() == FindingState.UNSURE)
                .map(f -> FoundRow.title(dossier, f.finding()) + " (" + words.state(FindingState.UNSURE) + ")");
        Stream<String> unchecked = leading(dossier).stream().flatMap(c -> FoundRow.unchecked(dossier, c).stream());
        return Stream.concat(unsure, unchecked).distinct().limit(MOST_OPEN).toList();
    }

    private static List<Part> parts(Claim claim, SayOnPaper words) {
        List<Part> parts = new ArrayList<>(claim.parts().stream()
                .limit(MOST_PARTS)
                .map(p -> part(p, words))
                .toList());
        int more = claim.parts().size() - parts.size();
        if (more > 0) {
            parts.add(new Part(words.say("parts-more", more), "", "", "", ""));
        }
        return parts;
    }

    private static Part part(PartLine line, SayOnPaper words) {
        String number = SayOnPaper.number(line.quantity());
        if (line.old().isEmpty()) {
            return new Part(words.say("part-none-out"), line.fitted(), number, "", "");
        }
        String became = line.whereabouts().map(PartLine.Whereabouts::word).orElse("not-said");
        return new Part(line.old(), line.fitted(), number, words.say("part-" + became), line.tag());
    }

    private static List<Field> people(Dossier dossier, SayOnPaper words) {
        List<Field> people = new ArrayList<>();
        for (ClaimField role : ROLES) {
            String name = dossier.file().claim().fact(role);
            if (!name.isEmpty()) {
                people.add(new Field(words.say("claim-" + role.word()), name));
            }
        }
        dossier.history()
                .map(h -> ChainRows.people(h.entries()))
                .map(all -> SayOnPaper.list(all.stream()
                        .limit(3)
                        .map(p -> words.say("entered-count", p.who(), p.entries()))
                        .toList()))
                .ifPresent(who -> people.add(new Field(words.say("entered"), who)));
        Optional<SignOff> signed = dossier.file().signedOff();
        signed.ifPresent(
                s -> people.add(new Field(words.say("signed-off"), s.who() + ", " + SayOnPaper.time(s.time()))));
        return people;
    }
}
