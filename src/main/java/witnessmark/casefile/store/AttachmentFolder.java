package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CanonicalText;

/** The bytes of attachments: attachments/case/hash. Names from outside are never part of a path. */
final class AttachmentFolder {
    private final Path folder;

    AttachmentFolder(Path store) {
        this.folder = store.resolve("attachments");
    }

    /** Keeps the bytes, on the disk when this returns. */
    void keep(CaseId id, String sha256, byte[] bytes) {
        Path target = file(id, sha256);
        try {
            OwnerOnly.folder(target.getParent());
            OwnerOnly.close(folder);
            Path part = Files.createTempFile(target.getParent(), "incoming-", ".part");
            try {
                writeSynced(part, bytes);
                Files.move(part, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(part);
            }
            OwnerOnly.sync(target.getParent());
        } catch (IOException e) {
            throw new StoreUnavailable(
                    folder.toString(),
                    "the attachment cannot be written",
                    "check that the folder can be written to and has room",
                    e);
        }
    }

    /** The bytes, sure to be those that were kept. */
    byte[] read(CaseId id, Attachment attachment) {
        Path file = file(id, attachment.sha256());
        try {
            byte[] bytes = Files.size(file) == attachment.size() ? Files.readAllBytes(file) : new byte[0];
            if (bytes.length == attachment.size() && CanonicalText.sha256(bytes).equals(attachment.sha256())) {
                return bytes;
            }
        } catch (NoSuchFileException e) {
            throw damaged(file, attachment, "is missing");
        } catch (IOException e) {
            throw damaged(file, attachment, "cannot be read");
        }
        throw damaged(file, attachment, "is not as it was put in");
    }

    /** What is wrong with the kept bytes, or empty if they are as they were put in. */
    Optional<String> fault(CaseId id, Attachment attachment) {
        try {
            read(id, attachment);
            return Optional.empty();
        } catch (StoreUnavailable e) {
            return Optional.of(e.what());
        }
    }

    private static StoreUnavailable damaged(Path file, Attachment attachment, String how) {
        return new StoreUnavailable(
                file.toString(), "attachment '" + attachment.name() + "' " + how, "put the same file in again");
    }

    private Path file(CaseId id, String sha256) {
        return folder.resolve(id.text()).resolve(sha256);
    }

    private static void writeSynced(Path file, byte[] bytes) throws IOException {
        try (FileChannel out = FileChannel.open(file, StandardOpenOption.WRITE)) {
            ByteBuffer rest = ByteBuffer.wrap(bytes);
            while (rest.hasRemaining()) {
                out.write(rest);
            }
            out.force(true);
        }
    }
}
