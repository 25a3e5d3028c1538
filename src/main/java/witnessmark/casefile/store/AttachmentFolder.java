package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
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
    public Optional<byte[]> kept(CaseId id, Attachment attachment) throws IOException {
        Path file = file(id, attachment.sha256());
        try {
            // A file of another size is another, and may be too large to be read.
            return Optional.of(Files.size(file) == attachment.size() ? Files.readAllBytes(file) : new byte[0]);
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    @Override
    public String where(CaseId id, Attachment attachment) {
        return file(id, attachment.sha256()).toString();
    }

    private Path file(CaseId id, String sha256) {
        return folder.resolve(id.text()).resolve(sha256);
    }
}
