package witnessmark.shell.paper;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.HeadMark;
import witnessmark.document.Dossier;
import witnessmark.document.Form;
import witnessmark.document.Kind;
import witnessmark.document.Paper;
import witnessmark.document.packet.WritePacket;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;
import witnessmark.language.Language;
import witnessmark.shell.cases.ShopKey;
import witnessmark.shell.print.FileForm;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.shell.settings.ShopSettings;

/** The commands that write documents. */
@Component
class DocumentCommands {
    private static final String ZIP = "zip";
    private static final String TOW = "hauled, lifted, shafts, driveline or loose";

    private final GatherDossier dossiers;
    private final ShopKey shopKey;
    private final ShopSettings shop;

    DocumentCommands(GatherDossier dossiers, ShopKey shopKey, ShopSettings shop) {
        this.shop = shop;
        this.dossiers = dossiers;
        this.shopKey = shopKey;
    }

    @Command(
            name = "document",
            group = "Documents",
            description =
                    "Write a bench sheet, explanation, evidence record, claim sheet, coaching card, towing-prep sheet or packet",
            help = "bench|explanation|evidence|claim|coaching|towing|packet CASE|FILE.yaml [--as html|pdf|md]; a "
                    + "packet also --as zip, which another shop can import",
            exitStatusExceptionMapper = "refusals")
    void document(
            CommandContext context,
            @Argument(index = 0, description = "bench, explanation, evidence, claim, coaching, towing or packet")
                    Kind what,
            @Argument(index = 1, description = "id of a stored case, or a YAML case file") String name,
            @Option(
                            longName = "as",
                            defaultValue = "",
                            description = "html, pdf or md; a packet also zip; left out: as --out ends")
                    String as,
            @Option(longName = "out", defaultValue = "", description = OptionText.OUT) GivenPath out,
            @Option(longName = "replace", defaultValue = "false", description = OptionText.REPLACE) Boolean replace,
            @Option(longName = "language", defaultValue = "", description = OptionText.LANGUAGE) Language language,
            @Option(
                            longName = "paper",
                            defaultValue = "",
                            description = "a4 or letter, for PDF; left out: as set, else a4")
                    Paper paper,
            @Option(longName = "truck", defaultValue = "", description = "profile of the truck, for its figures")
                    String truck,
            @Option(longName = "log", defaultValue = "", description = "trip log of that truck, for its timeline")
                    String log,
            @Option(
                            longName = "tow",
                            defaultValue = "",
                            description = "how the truck will be moved, for the towing sheet: " + TOW)
                    PaperOptions.MoveSaid move,
            @Option(longName = "templates", defaultValue = "", description = "folder of the shop's own templates")
                    GivenPath templates) {
        List<String> forms = what == Kind.PACKET ? List.of(ZIP, "pdf", "html", "md") : List.of("html", "pdf", "md");
        String ending = FileForm.of(as, out.typed(), forms, forms.get(0));
        boolean zip = what == Kind.PACKET && ending.equals(ZIP);
        Form form = zip
                ? Form.PDF
                : Form.parse(ending)
                        .orElseThrow(() -> WrongUsage.unknown("--as", ending, "one of " + String.join(", ", forms)));
        WriteDocument write = new WriteDocument(
                templates.isEmpty() ? TemplateFolder.shipped() : TemplateFolder.of(templates.path()),
                paper,
                move.way());
        Dossier dossier = dossiers.find(name, truck, log, language);
        byte[] bytes = zip ? packed(write, dossier) : write.write(dossier, what, form);
        Path target = out.isEmpty() ? Path.of(usualName(dossier, what, language, ending)) : out.path();
        NewFile.write(target, bytes, NewFile.Older.of(replace));
        // Which sheet goes with a move depends on the way of it.
        String title = what == Kind.TOWING ? write.title(what, Language.ENGLISH) : what.title();
        Terminal.line(context.outputWriter(), title + " written: " + target + " (" + bytes.length + " bytes)");
        context.outputWriter().flush();
    }

    private byte[] packed(WriteDocument write, Dossier dossier) {
        if (dossier.isBroken()) {
            throw new Refused(
                    "the chain of entries is broken, and no other shop would take such a packet",
                    "bring the store back from a copy, carry on with case fork, or write the packet as pdf");
        }
        if (!dossier.damaged().isEmpty()) {
            throw new Refused(
                    "files of the case are not as they were put in, and a packet would bring none or others: "
                            + DamagedFile.sentence(dossier.damaged()),
                    DamagedFile.mend(dossier.file().id()) + "; or write the packet as pdf, which says so");
        }
        Map<String, byte[]> documents = new LinkedHashMap<>();
        documents.put("packet.pdf", write.write(dossier, Kind.PACKET, Form.PDF));
        documents.put("packet.html", write.write(dossier, Kind.PACKET, Form.HTML));
        dossier.history()
                .map(HeadMark::of)
                .flatMap(shopKey::sign)
                .ifPresent(s -> documents.put(WritePacket.SIGNED_HEAD, s.text().getBytes(StandardCharsets.UTF_8)));
        return WritePacket.pack(dossier, documents);
    }

    private static String usualName(Dossier dossier, Kind kind, Language language, String extension) {
        boolean said = language != Language.ENGLISH || kind == Kind.COACHING || kind == Kind.TOWING;
        return dossier.file().id() + "-" + kind.word() + (said ? "-" + language.tag() : "") + "." + extension;
    }
}
