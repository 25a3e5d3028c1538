package witnessmark.shell.judge;

import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.diagnosis.AfterSignOff;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.Judgement;
import witnessmark.language.Language;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.cases.SignedCases;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;

/** The commands that judge a case. */
@Component
class DiagnoseCommands {
    private final Tongue.Choice tongues;
    private final ObjectProvider<Cases> cases;
    private final AnswerJson json;

    private final SignedCases signedCases;

    DiagnoseCommands(Tongue.Choice tongues, ObjectProvider<Cases> cases, SignedCases signedCases, AnswerJson json) {
        this.json = json;
        this.signedCases = signedCases;
        this.tongues = tongues;
        this.cases = cases;
    }

    @Command(
            name = "diagnose",
            group = "Judgement",
            description = "Rank the causes of a case, with reasons and what to look at next",
            help = "CASE|FILE.yaml",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void diagnose(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case, or a YAML case file") String name,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format,
            @Option(longName = "top", defaultValue = "3", description = "how many causes to show") Integer top,
            @Option(longName = "full", description = "all of it, not only one screen") boolean full,
            @Option(longName = "figures", description = "the same with strengths as figures") boolean figures) {
        Tongue tongue = tongues.of(language);
        CaseDocument document = cases.getObject().find(name);
        Judgement judgement = tongue.diagnosis().judge(CheckKnown.toJudge(document.present(), tongue.knowledge()));
        Optional<AfterSignOff> after = signedCases.after(document, judgement.verdict(), tongue.knowledge());
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(JudgementJson.OfCase.of(document, judgement, after)));
        } else {
            Page page = new Page(context.outputWriter());
            String title = document.present().title();
            Depth depth = Depth.of(full, figures);
            if (depth == Depth.SCREEN) {
                new JudgementScreen(tongue.knowledge(), tongue.wording(), judgement).print(page, title, after, top);
            } else {
                new JudgementText(tongue.knowledge(), page, tongue.wording(), depth)
                        .print(title, after, judgement, top);
            }
        }
    }
}
