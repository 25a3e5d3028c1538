package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
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
