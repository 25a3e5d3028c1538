package witnessmark.shell.cases;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.shell.core.command.CommandContext;
import org.springframework.shell.core.command.annotation.Argument;
import org.springframework.shell.core.command.annotation.Command;
import org.springframework.shell.core.command.annotation.Option;
import org.springframework.stereotype.Component;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.AttachmentRemoved;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.store.CaseStore;
import witnessmark.document.photo.Photo;
import witnessmark.document.photo.PreparePhoto;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.run.GivenFile;

/** The commands that put photographs with findings and take them off. */
@Component
class PhotoCommands {
    private static final int LARGEST_BYTES = 30_000_000;

    private final ObjectProvider<Cases> cases;
    private final ObjectProvider<KnowledgeBase> knowledge;

    PhotoCommands(ObjectProvider<Cases> cases, ObjectProvider<KnowledgeBase> knowledge) {
        this.cases = cases;
        this.knowledge = knowledge;
    }

    @Command(
            name = "photo add",
            group = "Cases",
            description = "Put a photograph with a finding; its location is taken out unless it is to be kept",
            help = "CASE FINDING FILE.jpg|FILE.png",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void add(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case") CaseId id,
            @Argument(index = 1, description = "id of the finding it shows") String finding,
            @Argument(index = 2, description = "JPEG or PNG file") String file,
            @Option(longName = "keep-location", defaultValue = "false", description = "keep where it was taken")
                    Boolean keepLocation,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        new KnownIds(knowledge.getObject()).finding(finding);
        CaseStore store = cases.getObject().store();
        String own = String.valueOf(Path.of(file).getFileName());
        Photo photo = PreparePhoto.prepare(own, GivenFile.read(Path.of(file), LARGEST_BYTES), keepLocation);
        if (isBroughtBack(store, id, own, photo)) {
            cases.getObject().alarm(store.read(id));
            new Page(context.outputWriter())
                    .line("The bytes of '" + own + "' are back with case '" + id + "', as they were put in first.")
                    .flush();
            return;
        }
        Attachment kept = store.keepBytes(id, own, photo.mediaType(), photo.bytes());
        Change added = new AttachmentAdded(new Attachment(
                kept.name(),
                kept.mediaType(),
                kept.sha256(),
                kept.size(),
                Optional.of(finding),
                Optional.of(photo.originalSha256())));
        cases.getObject().enter(id, List.of(added), reason);
        new Page(context.outputWriter())
                .line("'" + own + "' is with the finding " + finding + " of case '" + id + "': " + photo.width() + " x "
                        + photo.height() + " pixels, " + kept.size() + " bytes" + location(photo))
                .line("SHA-256 of the original: " + photo.originalSha256() + ". Keep the original file.")
                .flush();
    }

    @Command(
            name = "photo remove",
            group = "Cases",
            description = "Take a photograph off a case; that it was there stays in the history",
            help = "CASE NAME; the name or the SHA-256 as: case show CASE",
            completionProvider = "completeCase",
            exitStatusExceptionMapper = "refusals")
    void remove(
            CommandContext context,
            @Argument(index = 0, description = "id of a stored case") CaseId id,
            @Argument(index = 1, description = "name of the file, or its SHA-256") String name,
            @Option(longName = "reason", defaultValue = "", description = OptionText.REASON) String reason) {
        Cases from = cases.getObject();
        CaseHistory seen = from.alarm(from.history(id));
        List<Attachment> meant = seen.present().attachments().stream()
                .filter(a -> a.name().equals(name) || a.sha256().equals(name))
                .toList();
        if (meant.size() != 1) {
            throw new Refused(
                    "case '" + id + "' holds " + (meant.isEmpty() ? "no file" : meant.size() + " files") + " '"
                            + Terminal.harmless(name) + "'",
                    meant.isEmpty()
                            ? "see which it holds: case show " + id
                            : "name the one that is meant by its SHA-256: case show " + id);
        }
        CaseHistory now = from.enterAfter(seen, List.of(new AttachmentRemoved(meant.get(0))), reason);
        new Page(context.outputWriter())
                .line("'" + meant.get(0).name() + "' is taken off case '" + id + "' (entry "
                        + now.last().number() + ").")
                .flush();
    }

    /** Whether the photograph is on the case already but its bytes were lost or changed, and are now put in again. */
    private static boolean isBroughtBack(CaseStore store, CaseId id, String name, Photo photo) {
        String sha256 = CanonicalText.sha256(photo.bytes());
        Optional<Attachment> there = store.damagedFiles(store.read(id)).stream()
                .map(DamagedFile::file)
                .filter(a -> a.sha256().equals(sha256))
                .findFirst();
        there.ifPresent(a -> store.keepBytes(id, name, photo.mediaType(), photo.bytes()));
        return there.isPresent();
    }

    private static String location(Photo photo) {
        if (photo.keepsLocation()) {
            return "; it still says where it was taken";
        }
        return photo.hadLocation() ? "; where it was taken was removed" : "";
    }
}
