package witnessmark.shell.judge;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.diagnosis.Diagnosis;
import witnessmark.diagnosis.RankedCause;
import witnessmark.diagnosis.RuleBase;
import witnessmark.diagnosis.Verdict;
import witnessmark.diagnosis.score.ScoreCases;
import witnessmark.diagnosis.score.Scored;
import witnessmark.diagnosis.score.ShakeKnowledge;
import witnessmark.diagnosis.score.Shaken;
import witnessmark.diagnosis.score.Tally;
import witnessmark.gearbox.EnumWord;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.Json;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.ScreenFigures;
import witnessmark.shell.print.Waiting;

/** The command that scores a folder of cases with known outcome. */
@Component
class ScoreCommands {
    private final ObjectProvider<Diagnosis> diagnosis;
    private final AnswerJson json;

    ScoreCommands(ObjectProvider<Diagnosis> diagnosis, AnswerJson json) {
        this.json = json;
        this.diagnosis = diagnosis;
    }

    @Command(
            name = "score",
            group = "Judgement",
            description = "Judge a folder of cases with known outcome and compare",
            help = "FOLDER; --shake moves the numbers of the knowledge base and tells how often the answers change",
            exitStatusExceptionMapper = "refusals")
    void score(
            CommandContext context,
            @Argument(index = 0, description = "folder with YAML case files that have 'expected'") String folder,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "shake", description = "also move strengths and priors") boolean shake) {
        List<CaseDocument> documents = documents(Path.of(folder));
        Tally tally = new ScoreCases(diagnosis.getObject()).score(documents);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(TallyJson.of(tally)));
            return;
        }
        // The long work first: once the answer begins, nothing more is said of waiting.
        List<Shaken> shaken = shake
                ? new ShakeKnowledge(RuleBase.shipped(), diagnosis.getObject().knowledge())
                        .shake(documents, Waiting::at)
                : List.of();
        Page page = new Page(context.outputWriter());
        print(page, tally);
        if (shake) {
            page.heading("Numbers of one of the first five causes moved: how often the answer changed");
            shaken.forEach(s -> page.line(String.format(
                    Locale.ROOT,
                    "  %-24s %5d judgements: first %4.1f %%, verdict %4.1f %%",
                    s.what(),
                    s.trials(),
                    100.0 * s.firstChanged() / Math.max(1, s.trials()),
                    100.0 * s.verdictChanged() / Math.max(1, s.trials()))));
        }
        page.flush();
    }

    private static List<CaseDocument> documents(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new Refused("no folder '" + folder + "'", "give the path of a folder with YAML case files");
        }
        try (Stream<Path> files = Files.list(folder)) {
            List<CaseDocument> documents = new ArrayList<>();
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList()) {
                documents.add(new CaseReader().read(file));
            }
            if (documents.stream().noneMatch(d -> d.expected().isPresent())) {
                throw new Refused(
                        "no case in '" + folder + "' says what is 'expected'", "see sample-cases for the form");
            }
            return documents;
        } catch (IOException e) {
            throw new Refused(
                    "folder '" + folder + "' cannot be read: " + e.getMessage(), "check that you may read it");
        }
    }

    private static void print(Page page, Tally tally) {
        for (Scored scored : tally.cases()) {
            page.indented(
                    scored.isRight() ? "right  " : "WRONG  ",
                    "       ",
                    scored.caseId() + ": verdict "
                            + said(scored.judgement().verdict())
                            + (scored.verdictRight()
                                    ? ""
                                    : ", expected " + scored.expected().verdict())
                            + "; first " + lead(scored)
                            + (scored.firstRight()
                                    ? ""
                                    : ", expected "
                                            + String.join(
                                                    " or ", scored.expected().first()))
                            + (scored.withinThree() ? "" : "; not all within three")
                            + "; " + EnumWord.of(scored.answer()).replace('-', ' ')
                            + (scored.contradictionRight() ? "" : "; contradiction not as expected"));
        }
        page.blank().line("By expected verdict          cases  first  in three  verdict  wrong blame");
        tally.byVerdict().forEach((verdict, part) -> row(page, verdict, part));
        row(page, "all", tally);
        page.blank().line("What was said of the class        how many");
        tally.answers()
                .forEach((answer, n) -> page.line(String.format(
                        Locale.ROOT, "  %-30s %9d", EnumWord.of(answer).replace('-', ' '), n)));
        tally.brier()
                .ifPresent(b -> page.line(String.format(Locale.ROOT, "%nBrier score of the leading cause: %.3f", b)));
        page.blank().line("Calibration: causes given a probability of    how many   mean   came true");
        tally.calibration()
                .forEach(b -> page.line(String.format(
                        Locale.ROOT,
                        "  %3.0f to %3.0f %% %41d   %4.2f   %4.2f",
                        100 * b.from(),
                        100 * b.to(),
                        b.count(),
                        b.mean(),
                        b.right() / (double) b.count())));
    }

    private static String said(Verdict verdict) {
        return verdict.pointsTo().map(c -> "points to " + c).orElse(verdict.classId());
    }

    private static String lead(Scored scored) {
        return scored.judgement().causes().stream()
                .findFirst()
                .map(c -> c.id() + " " + ScreenFigures.percent(c.probability()))
                .orElse("none");
    }

    private static void row(Page page, String name, Tally tally) {
        page.line(String.format(
                Locale.ROOT,
                "  %-26s %5d  %5d  %8d  %7d  %11d",
                name,
                tally.cases().size(),
                tally.firstRight(),
                tally.withinThree(),
                tally.verdictRight(),
                tally.wrongBlame()));
    }

    /** A tally as JSON; without a Brier score where no cause leads. */
    private record TallyJson(
            int cases,
            long firstRight,
            long withinThree,
            long verdictRight,
            long wrongBlame,
            Optional<Double> brier,
            List<One> results) {
        static TallyJson of(Tally tally) {
            return new TallyJson(
                    tally.cases().size(),
                    tally.firstRight(),
                    tally.withinThree(),
                    tally.verdictRight(),
                    tally.wrongBlame(),
                    tally.brier().stream().boxed().findFirst(),
                    tally.cases().stream().map(One::of).toList());
        }
    }

    private record One(
            @Json.Name("case") String id,
            String verdict,
            String standing,
            String pointsTo,
            String expected,
            Scored.Answer answer,
            String first,
            boolean right,
            boolean wrongBlame) {
        static One of(Scored scored) {
            Verdict verdict = scored.judgement().verdict();
            return new One(
                    scored.caseId(),
                    verdict.classId(),
                    verdict.standing().word(),
                    verdict.pointsTo().orElse(""),
                    scored.expected().verdict(),
                    scored.answer(),
                    scored.judgement().causes().stream()
                            .findFirst()
                            .map(RankedCause::id)
                            .orElse(""),
                    scored.isRight(),
                    scored.wrongBlame());
        }
    }
}
