package witnessmark.shell.interview;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.core.env.Environment;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.Vehicle;
import witnessmark.casefile.history.Opened;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Judgement;
import witnessmark.diagnosis.OpenCase;
import witnessmark.gearbox.Layout;
import witnessmark.interview.Interview;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.language.Texts;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.cases.SignedCases;
import witnessmark.shell.judge.JudgementJson;
import witnessmark.shell.judge.StatusText;
import witnessmark.shell.judge.Tongue;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;

/** The commands that ask the technician and show where a case stands. */
@Component
class InterviewCommands {
    private static final String NEW = "new";

    private final Tongue.Choice tongues;
    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<org.jline.terminal.Terminal> terminal;
    private final Environment environment;
    private final SignedCases signedCases;
    private final UnderstandSpeech words;
    private final AnswerJson json;

    InterviewCommands(
            Tongue.Choice tongues,
            ObjectProvider<Cases> cases,
            ObjectProvider<org.jline.terminal.Terminal> terminal,
            Environment environment,
            SignedCases signedCases,
            UnderstandSpeech words,
            AnswerJson json) {
        this.json = json;
        this.signedCases = signedCases;
        this.words = words;
        this.tongues = tongues;
        this.cases = cases;
        this.terminal = terminal;
        this.environment = environment;
    }

    @Command(
            name = "interview",
            group = "Judgement",
            description = "Ask the technician, the most telling question first, and judge",
            help = "new|CASE; CASE goes on where it stopped. A line of FILE is an answer, or: finding-id: answer, "
                    + "or: otherwise: answer",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void interview(
            CommandContext context,
            @Argument(index = 0, description = "new, or the id of a case", defaultValue = NEW) String name,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "as", defaultValue = "", description = "id of the new case") String as,
            @Option(longName = "answers", defaultValue = "", description = "file with one answer a line")
                    GivenPath answers) {
        Tongue tongue = tongues.of(language);
        if (Cases.isFile(name)) {
            throw new Refused(
                    "'" + Terminal.harmless(name) + "' is a file, and an interview keeps each answer in the" + " store",
                    "import it first: case import " + Terminal.harmless(name));
        }
        if (!as.isEmpty() && !name.equals(NEW)) {
            throw new WrongUsage("--as names a new case: interview new --as " + Terminal.harmless(as));
        }
        if (!name.equals(NEW)) {
            // A mistyped id is told with its nearest before anybody is asked for answers.
            cases.getObject().known(name);
        }
        PrintWriter out = context.outputWriter();
        Texts wording = tongue.wording();
        try (Asker asker = asker(answers, out, wording);
                Interview interview = new Interview(tongue.diagnosis(), notebook(name, as))) {
            KnowledgeBase knowledge = tongue.knowledge();
            Page page = new Page(out);
            IntakeDialog intake = new IntakeDialog(interview, knowledge, words, asker, page, wording);
            new InterviewDialog(
                            interview,
                            knowledge,
                            intake,
                            asker,
                            page,
                            new StatusText(knowledge, page, wording, plainLines()))
                    .run();
        }
    }

    @Command(
            name = "status",
            group = "Judgement",
            description = "Show where a case stands, on one screen",
            help = "CASE|FILE.yaml; with the start option --lines no bars are drawn",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void status(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case, or a YAML case file") String name,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        Tongue tongue = tongues.of(language);
        CaseDocument document = cases.getObject().find(name);
        CaseFile file = CheckKnown.toJudge(document.present(), tongue.knowledge());
        try (OpenCase open = tongue.diagnosis().open(file)) {
            Judgement judgement = open.judgement();
            Optional<AfterSignOff> after = signedCases.after(document, judgement.verdict(), tongue.knowledge());
            if (format == Format.JSON) {
                context.outputWriter().println(json.of(JudgementJson.OfCase.of(document, judgement, after)));
                return;
            }
            StatusText text = new StatusText(
                    tongue.knowledge(), new Page(context.outputWriter()), tongue.wording(), plainLines());
            text.print(file, after, judgement, open.visits());
            text.driver(judgement.advice());
        }
        context.outputWriter().flush();
    }

    private boolean plainLines() {
        return environment.getProperty("witnessmark.lines", Boolean.class, false);
    }

    /** Bytes that are no UTF-8 are told of, not replaced. */
    private static BufferedReader reader(InputStream bytes) {
        return new BufferedReader(new InputStreamReader(bytes, StandardCharsets.UTF_8.newDecoder()));
    }

    /** Who answers: a file, a terminal, or what is piped in. */
    private Asker asker(GivenPath answers, PrintWriter out, Texts wording) {
        if (!answers.isEmpty()) {
            try {
                return new PreparedAnswers(reader(Files.newInputStream(answers.path())), out);
            } catch (IOException e) {
                throw new Refused(
                        "answers '" + Terminal.harmless(answers.typed()) + "' cannot be read",
                        "give the path of a text file with one answer a line");
            }
        }
        if (Terminal.canAsk()) {
            return new TerminalAsker(terminal.getObject(), out, wording);
        }
        PreparedAnswers piped = new PreparedAnswers(reader(System.in), out);
        if (piped.isEmpty()) {
            throw new Refused(wording.text("refused.nobody"));
        }
        return piped;
    }

    /** The notebook of a stored case, or of a new one. */
    private StoredNotebook notebook(String name, String as) {
        Cases all = cases.getObject();
        if (!name.equals(NEW)) {
            return new StoredNotebook(all.store(), all.alarm(all.history(name)).id(), all.who());
        }
        CaseId id = as.isEmpty() ? all.freeId() : new CaseId(as);
        all.store().open(new Opened(id, "", "", Vehicle.unknown(), Layout.unknown()), all.who());
        return new StoredNotebook(all.store(), id, all.who());
    }
}
