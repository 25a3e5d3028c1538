package witnessmark.casefile.store;

import java.io.IOException;
import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.DamagedFile.Fault;
import witnessmark.casefile.history.CanonicalText;

/** The bytes of attachments, beside the entries that name them. */
sealed interface AttachmentBytes permits AttachmentFolder, AttachmentRows {
    /** Keeps the bytes, on the disk when this returns; what was kept under the same hash is replaced. */
    void keep(CaseId id, String sha256, byte[] bytes);

    /** The bytes kept for it, be they those that were put in or not; empty where there are none. */
    Optional<byte[]> kept(CaseId id, Attachment attachment) throws IOException;

    /** Where they are kept, for messages. */
    String where(CaseId id, Attachment attachment);

    /** The bytes, sure to be those that were kept; {@link StoreUnavailable} if they are missing or not the same. */
    default byte[] read(CaseId id, Attachment attachment) {
        Fault fault = Fault.UNREADABLE;
        try {
            Optional<byte[]> kept = kept(id, attachment);
            if (kept.isPresent() && areOf(attachment, kept.get())) {
                return kept.get();
            }
            fault = kept.isPresent() ? Fault.CHANGED : Fault.MISSING;
        } catch (IOException e) {
            // said below, as all else that may be wrong with them
        }
        throw new StoreUnavailable(
                where(id, attachment),
                "attachment " + new DamagedFile(attachment, fault).sentence(),
                "put the same file in again");
    }

    /** What is wrong with the kept bytes, or empty if they are as they were put in. */
    default Optional<Fault> fault(CaseId id, Attachment attachment) {
        try {
            Optional<byte[]> kept = kept(id, attachment);
            if (kept.isEmpty()) {
                return Optional.of(Fault.MISSING);
            }
            return areOf(attachment, kept.get()) ? Optional.empty() : Optional.of(Fault.CHANGED);
        } catch (IOException e) {
            return Optional.of(Fault.UNREADABLE);
        }
    }

    /** Whether these are the bytes that the attachment names. */
    static boolean areOf(Attachment attachment, byte[] bytes) {
        return bytes.length == attachment.size() && CanonicalText.sha256(bytes).equals(attachment.sha256());
    }
}
