package witnessmark.shell.cases;

import java.nio.file.Path;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.store.CaseStore;
import witnessmark.document.packet.PackedCase;
import witnessmark.document.packet.ReadPacket;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.Page;
import witnessmark.shell.run.GivenFile;

/** The command that takes in a case packet from another shop. */
@Component
class PacketCommands {
    private static final int LARGEST_BYTES = 300_000_000;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    PacketCommands(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    @Command(
            name = "packet import",
            group = "Documents",
            description = "Take in a case packet from another shop, checked against its hashes",
            help = "FILE.zip",
            exitStatusExceptionMapper = "refusals")
    void importPacket(
            CommandContext context,
            @Argument(index = 0, description = "a packet written with: document packet") String file,
            @Option(longName = "as", defaultValue = "", description = "another id for it here") String newId) {
        PackedCase packed = ReadPacket.read(file, GivenFile.read(Path.of(file), LARGEST_BYTES));
        new KnownIds(knowledge.getObject()).checkOpen(packed.document().present());
        CaseStore store = cases.getObject().store();
        String who = cases.getObject().who();
        CaseHistory kept = cases.getObject()
                .alarm(
                        newId.isEmpty()
                                ? store.importCase(packed.document(), packed.contents(), who)
                                : store.importAs(new CaseId(newId), packed.document(), packed.contents(), who));
        CaseFile now = kept.present();
        new Page(context.outputWriter())
                .line("Case '" + now.id() + "' taken in: " + kept.entries().size() + " entries, "
                        + packed.contents().size() + " files"
                        + packed.signed()
                                .map(s -> ", signed with key " + s.fingerprint()
                                        + "; compare it with the one the shop gave you")
                                .orElse(", not signed with a key of a shop"))
                .flush();
    }
}
