package witnessmark.document.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import witnessmark.casefile.Evidence;
import witnessmark.diagnosis.EvidenceMatrix;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.Verdict;
import witnessmark.document.Dossier;
import witnessmark.document.OddsFactor;
import witnessmark.document.chart.ChartLabels;
import witnessmark.document.drawing.DrawCauses;
import witnessmark.document.drawing.Mark;

/**
 * The warranty clerk's record.
 *
 * @param claim the first page
 * @param classTitles heads of the matrix's columns
 * @param attribution chance of each class; empty where it cannot be told, since a class would name people
 * @param causeChart empty where nothing can be told yet
 * @param causes ranked, with what speaks for and against each
 * @param alternatives look-alikes of the causes told of, with what became of each
 * @param gaps what is missing in the evidence
 * @param results computed and logged evidence with its inputs
 */
public record EvidencePage(
        ClaimPage claim,
        List<String> classTitles,
        List<Field> attribution,
        List<MatrixRow> matrix,
        String causeChart,
        List<CauseRow> causes,
        List<Alternatives.Row> alternatives,
        List<String> contradictions,
        List<String> gaps,
        List<String> changes,
        List<FoundRow> found,
        List<MeasuredRow> measured,
        List<Result> results,
        List<KeptFile> files,
        List<ChainRows> chain,
        List<String> notes,
        List<Dossier.Figure> figures,
        String drawing,
        List<Mark> marks) {
    private static final int MOST_CAUSES = 4;
    private static final double WORTH_LISTING = 0.05;

    /** A finding against each class. */
    public record MatrixRow(String id, String title, String state, String from, List<String> cells) {}

    /** A cause with its evidence. */
    public record CauseRow(
            String title,
            String id,
            String chance,
            String standing,
            List<String> speaksFor,
            List<String> speaksAgainst,
            List<String> heldBack) {}

    /**
     * A computed or logged result.
     *
     * @param kept the words kept with it, where they are not those of the paper's language
     */
    public record Result(
            String id,
            String kind,
            String summary,
            String formula,
            String kept,
            List<Field> inputs,
            String file,
            String findings) {}

    public static EvidencePage of(Dossier dossier) {
        Judgement judgement = dossier.judgement();
        SayOnPaper words = new SayOnPaper(dossier);
        List<RankedCause> listed =
                judgement.causesFrom(WORTH_LISTING).stream().limit(MOST_CAUSES).toList();
        List<String> classTitles = dossier.matrix().classes().stream()
                .map(id -> dossier.knowledge().classOf(id).title())
                .toList();
        ChooseMarks choose = new ChooseMarks(dossier);
        List<Mark> marks = choose.found();
        return new EvidencePage(
                ClaimPage.of(dossier),
                classTitles,
                classes(judgement, words),
                dossier.matrix().rows().stream()
                        .map(r -> matrixRow(r, dossier.matrix().classes(), words))
                        .toList(),
                isOpen(judgement) ? "" : DrawCauses.draw(listed, dossier.texts()),
                listed.stream().map(c -> causeRow(dossier, c, words)).toList(),
                new Alternatives(dossier).rows(ExplanationPage.toldOf(judgement)),
                judgement.contradictions().stream()
                        .map(c -> conflict(dossier, c))
                        .toList(),
                new FindGaps(dossier).gaps(),
                changes(judgement, words),
                FoundRow.of(dossier),
                MeasuredRow.of(dossier),
                Stream.concat(
                                dossier.file().evidence().values().stream().map(e -> result(dossier, e)),
                                logsTogether(dossier).stream())
                        .toList(),
                KeptFile.of(dossier),
                dossier.history().map(h -> ChainRows.of(h, dossier)).stream().toList(),
                dossier.file().notes(),
                figures(dossier),
                choose.drawn(marks),
                marks);
    }

    private static boolean isOpen(Judgement judgement) {
        return judgement.verdict().standing() == Verdict.Standing.UNDETERMINED;
    }

    private static List<Field> classes(Judgement judgement, SayOnPaper words) {
        return judgement.sharesTold().stream()
                .map(s -> new Field(s.title(), words.percent(s.probability())))
                .toList();
    }

    /** What the rules changed for the causes that are listed; the rest only as a number. */
    private static List<String> changes(Judgement judgement, SayOnPaper words) {
        Set<String> listed = judgement.causesFrom(WORTH_LISTING).stream()
                .map(RankedCause::id)
                .collect(Collectors.toSet());
        List<Judgement.Change> telling = judgement.changes().stream()
                .filter(c -> listed.contains(c.subject()))
                .toList();
        List<String> said = new ArrayList<>(judgement.remarks());
        telling.forEach(c -> said.add(c.sentence()));
        int more = judgement.changes().size() - telling.size();
        if (more > 0) {
            said.add(words.say("more-changes", more));
        }
        return said;
    }

    private static List<Dossier.Figure> figures(Dossier dossier) {
        List<Dossier.Figure> figures = new ArrayList<>(dossier.truck()
                .map(t -> TruckFigures.charts(
                        t, new ChartLabels(dossier.texts(), dossier.shop().units())))
                .orElse(List.of()));
        figures.addAll(dossier.figures());
        return figures;
    }

    private static MatrixRow matrixRow(EvidenceMatrix.Row row, List<String> classes, SayOnPaper words) {
        return new MatrixRow(
                row.finding(),
                row.title(),
                words.state(row.state()),
                row.from(),
                classes.stream().map(id -> words.weight(row.decibans().get(id))).toList());
    }

    private static CauseRow causeRow(Dossier dossier, RankedCause cause, SayOnPaper words) {
        return new CauseRow(
                cause.title(),
                cause.id(),
                words.chanceOf(cause.probability(), dossier.judgement().verdict()),
                ExplanationPage.told(dossier, cause, words),
                weights(cause.evidenceFor(), words),
                cause.evidenceAgainst().stream()
                        .map(w -> words.against(cause, w) + " " + OddsFactor.text(w.decibans()))
                        .toList(),
                cause.heldBack());
    }

    private static List<String> weights(List<RankedCause.Weight> weights, SayOnPaper words) {
        return weights.stream()
                .map(w -> w.title() + " (" + words.state(w.state()) + ") " + OddsFactor.text(w.decibans()))
                .toList();
    }

    private static String conflict(Dossier dossier, Judgement.Conflict conflict) {
        return String.join(
                        " + ",
                        conflict.findings().stream()
                                .map(f -> FoundRow.title(dossier, f))
                                .toList())
                + ": " + conflict.why();
    }

    private static Result result(Dossier dossier, Evidence evidence) {
        SayOnPaper words = new SayOnPaper(dossier);
        SayResult said = new SayResult(dossier);
        List<Field> inputs = new ArrayList<>();
        for (Map.Entry<String, String> input : evidence.inputs().entrySet()) {
            inputs.add(new Field(said.input(input.getKey()), said.value(input.getValue())));
        }
        return new Result(
                evidence.id(),
                words.say("evidence-" + evidence.kind().word()),
                said.result(evidence),
                said.method(evidence),
                said.kept(evidence),
                inputs,
                evidence.file().map(f -> f.name() + ", SHA-256 " + f.sha256()).orElse(""),
                said.following(evidence));
    }

    /** The row for all logs as one, where there are several results from logs. */
    private static Optional<Result> logsTogether(Dossier dossier) {
        SayOnPaper words = new SayOnPaper(dossier);
        return new SayResult(dossier)
                .logsTogether()
                .map(text -> new Result(
                        words.say("logs-together"),
                        words.say("evidence-" + Evidence.Kind.LOGGED.word()),
                        text,
                        words.say("logs-together-how"),
                        "",
                        List.of(),
                        "",
                        ""));
    }
}
