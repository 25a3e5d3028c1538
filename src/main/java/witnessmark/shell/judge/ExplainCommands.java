package witnessmark.shell.judge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Arguments;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.FindingState;
import witnessmark.diagnosis.Accounts;
import witnessmark.diagnosis.CheckKnown;
import witnessmark.diagnosis.OpenCase;
import witnessmark.explain.CarryingFindings;
import witnessmark.explain.WhatIf;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.language.Language;
import witnessmark.shell.cases.Cases;
import witnessmark.shell.knowledge.AnswerJson;
import witnessmark.shell.print.Format;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.yaml.Nearest;

/** The commands that ask a judgement for its reasons. */
@Component
class ExplainCommands {
    private final Tongue.Choice tongues;
    private final ObjectProvider<Cases> cases;
    private final AnswerJson json;

    ExplainCommands(Tongue.Choice tongues, ObjectProvider<Cases> cases, AnswerJson json) {
        this.json = json;
        this.tongues = tongues;
        this.cases = cases;
    }

    @Command(
            name = "explain",
            group = "Judgement",
            description = "Say what carries the verdict, or why one cause stands where it stands",
            help = "CASE|FILE.yaml [CAUSE]",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void explain(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case, or a YAML case file") String name,
            @Argument(index = 1, description = "id of a cause", defaultValue = "") String causeId,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        Tongue tongue = tongues.of(language);
        CaseFile file = CheckKnown.toJudge(cases.getObject().find(name).present(), tongue.knowledge());
        ExplainText text = new ExplainText(tongue.knowledge(), new Page(context.outputWriter()), tongue.wording());
        if (causeId.isEmpty()) {
            CarryingFindings carrying = CarryingFindings.of(tongue.diagnosis(), file);
            if (format == Format.JSON) {
                context.outputWriter()
                        .println(json.of(ExplainJson.Carried.of(file.id().text(), carrying)));
            } else {
                text.carrying(file.id().text(), carrying);
            }
            return;
        }
        Cause cause = cause(causeId, tongue.knowledge());
        var judgement = tongue.diagnosis().judge(file);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(ExplainJson.Why.of(cause, judgement)));
        } else {
            text.cause(cause, judgement);
        }
    }

    @Command(
            name = "whatif",
            group = "Judgement",
            description = "Rank the causes as if some findings were otherwise; nothing is stored",
            help = "CASE|FILE.yaml FINDING=present|absent|unsure|not-looked-at ...",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void whatIf(
            CommandContext context,
            @Arguments List<String> words,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        Tongue tongue = tongues.of(language);
        if (words.size() < 2) {
            throw new WrongUsage("whatif needs a case and at least one FINDING=state", "see: help whatif");
        }
        CaseFile file = CheckKnown.toJudge(cases.getObject().find(words.get(0)).present(), tongue.knowledge());
        Map<String, FindingState> findings = new LinkedHashMap<>();
        words.subList(1, words.size()).forEach(word -> suppose(word, tongue.knowledge(), findings));
        WhatIf whatIf = WhatIf.of(tongue.diagnosis(), file, findings);
        if (format == Format.JSON) {
            context.outputWriter().println(json.of(ExplainJson.Supposed.of(findings, whatIf)));
        } else {
            new ComparisonText(new Page(context.outputWriter()), tongue.wording())
                    .whatIf(
                            String.join(
                                    "; ",
                                    findings.entrySet().stream()
                                            .map(e -> tongue.knowledge()
                                                            .findings()
                                                            .get(e.getKey())
                                                            .title() + " "
                                                    + e.getValue().word())
                                            .toList()),
                            whatIf);
        }
    }

    @Command(
            name = "accounts",
            group = "Judgement",
            description = "Hold two accounts of a case against the findings, and say what would decide",
            help = "CASE|FILE.yaml CAUSE-A CAUSE-B; such as what the driver says happened against the shop's "
                    + "reading",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void accounts(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case, or a YAML case file") String name,
            @Argument(index = 1, description = "id of the first cause") String first,
            @Argument(index = 2, description = "id of the second cause") String second,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(longName = "format", defaultValue = "text", description = OptionText.FORMAT) Format format) {
        Tongue tongue = tongues.of(language);
        CaseFile file = CheckKnown.toJudge(cases.getObject().find(name).present(), tongue.knowledge());
        Cause one = cause(first, tongue.knowledge());
        Cause other = cause(second, tongue.knowledge());
        if (one.id().equals(other.id())) {
            throw new WrongUsage("'" + one.id() + "' is given twice", "give two different causes");
        }
        try (OpenCase open = tongue.diagnosis().open(file)) {
            Accounts accounts = open.accounts(one.id(), other.id());
            if (format == Format.JSON) {
                context.outputWriter()
                        .println(json.of(ExplainJson.OfAccounts.of(file.id().text(), accounts)));
            } else {
                new ComparisonText(new Page(context.outputWriter()), tongue.wording())
                        .accounts(file.id().text(), accounts);
            }
        }
    }

    private static Cause cause(String id, KnowledgeBase knowledge) {
        return Optional.ofNullable(knowledge.causes().get(id))
                .orElseThrow(() -> new Refused("no cause '" + Terminal.harmless(id) + "' is known"
                        + near(id, knowledge.causes().keySet())));
    }

    private static void suppose(String word, KnowledgeBase knowledge, Map<String, FindingState> findings) {
        int equals = word.indexOf('=');
        String finding = equals < 0 ? word : word.substring(0, equals);
        if (!knowledge.findings().containsKey(finding)) {
            throw new Refused("no finding '" + Terminal.harmless(finding) + "' is known"
                    + near(finding, knowledge.findings().keySet()));
        }
        findings.put(
                finding,
                FindingState.parse(equals < 0 ? "present" : word.substring(equals + 1))
                        .orElseThrow(() -> new Refused(
                                "'" + Terminal.harmless(word) + "' does not say how it is supposed to be",
                                "write " + finding + "= and one of " + FindingState.WORDS)));
    }

    private static String near(String id, java.util.Collection<String> known) {
        List<String> near = Nearest.some(id, known, 3);
        return near.isEmpty()
                ? "; search it with: knowledge find WORDS"
                : "; did you mean " + String.join(", ", near) + "?";
    }
}
