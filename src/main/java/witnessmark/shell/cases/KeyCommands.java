package witnessmark.shell.cases;

import java.nio.charset.StandardCharsets;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.HeadMark;
import witnessmark.casefile.history.SignedHead;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Terminal;

/** The commands that make the shop's key and give the end of a chain to be kept outside the store. */
@Component
class KeyCommands {
    private final ObjectProvider<Cases> cases;
    private final ShopKey shopKey;

    KeyCommands(ObjectProvider<Cases> cases, ShopKey shopKey) {
        this.cases = cases;
        this.shopKey = shopKey;
    }

    @Command(
            name = "key make",
            group = "Cases",
            description = "Make the key the shop signs the end of a chain with; none is needed",
            exitStatusExceptionMapper = "refusals")
    void make(CommandContext context) {
        SignedHead probe = shopKey.made(new HeadMark(new CaseId("key"), 1, CanonicalText.NO_HASH));
        Terminal.line(
                context.outputWriter(),
                "The key lies in " + shopKey.file() + "; let nobody else read it, and keep a copy elsewhere.");
        context.outputWriter().println("Give this public key to those who are to check: " + probe.key());
        context.outputWriter().println("Its fingerprint: " + probe.fingerprint());
        context.outputWriter().flush();
    }

    @Command(
            name = "case head",
            group = "Cases",
            description = "Give the end of a case's chain, signed if the shop has a key, to be kept elsewhere",
            help = "CASE; check later with: case verify CASE --head TEXT|FILE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void head(
            CommandContext context,
            @Argument(index = 0, description = "case id") CaseId id,
            @Option(longName = "out", defaultValue = "", description = OptionText.OUT) GivenPath out,
            @Option(longName = "replace", defaultValue = "false", description = OptionText.REPLACE) Boolean replace) {
        Cases from = cases.getObject();
        HeadMark mark = HeadMark.of(from.alarm(from.history(id)));
        String text = shopKey.sign(mark).map(SignedHead::text).orElse(mark.text() + "\n");
        if (out.isEmpty()) {
            context.outputWriter().print(text);
        } else {
            NewFile.write(out.path(), text.getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
            Terminal.line(context.outputWriter(), "The end of the chain of case " + id + " is written to " + out + ".");
        }
        context.outputWriter().flush();
    }
}
