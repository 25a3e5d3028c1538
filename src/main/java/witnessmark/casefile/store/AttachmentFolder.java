package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;

/** The bytes of attachments: attachments/case/hash. Names from outside are never part of a path. */
final class AttachmentFolder implements AttachmentBytes {
    private final Path folder;

    AttachmentFolder(Path store) {
        this.folder = store.resolve("attachments");
    }

    @Override
    public void keep(CaseId id, String sha256, byte[] bytes) {
        Path target = file(id, sha256);
        try {
            WholeFile.write(target, bytes);
            OwnerOnly.close(folder);
        } catch (IOException e) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "the attachment cannot be written",
                    "check that the folder can be written to and has room",
                    e);
        }
    }

    @Override
    public byte[] read(CaseId id, Attachment attachment) {
        Path file = file(id, attachment.sha256());
        try {
            byte[] bytes = Files.size(file) == attachment.size() ? Files.readAllBytes(file) : new byte[0];
            if (AttachmentBytes.areOf(attachment, bytes)) {
                return bytes;
            }
        } catch (NoSuchFileException e) {
            throw AttachmentBytes.damaged(file.toString(), attachment, "is missing");
        } catch (IOException e) {
            throw AttachmentBytes.damaged(file.toString(), attachment, "cannot be read");
        }
        throw AttachmentBytes.damaged(file.toString(), attachment, "is not as it was put in");
    }

    @Override
    public boolean hasSome(CaseId id, Attachment attachment) {
        return Files.exists(file(id, attachment.sha256()));
    }

    private Path file(CaseId id, String sha256) {
        return folder.resolve(id.text()).resolve(sha256);
    }
}
