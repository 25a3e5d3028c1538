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
import witnessmark.casefile.history.AttachmentAdded;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.Change;
import witnessmark.casefile.store.CaseStore;
import witnessmark.document.photo.Photo;
import witnessmark.document.photo.PreparePhoto;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.shell.knowledge.KnownIds;
import witnessmark.shell.print.OptionText;
import witnessmark.shell.print.Page;
import witnessmark.shell.run.GivenFile;

/** The command that puts photographs with findings. */
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

    /** Whether the photograph is on the case already but its bytes were lost or changed, and are now put in again. */
    private static boolean isBroughtBack(CaseStore store, CaseId id, String name, Photo photo) {
        String sha256 = CanonicalText.sha256(photo.bytes());
        Optional<Attachment> there = store.read(id).present().attachments().stream()
                .filter(a -> a.sha256().equals(sha256) && !store.isWhole(id, a))
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
