package witnessmark.casefile.store;

import java.util.Optional;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.history.CanonicalText;

/** The bytes of attachments, beside the entries that name them. */
sealed interface AttachmentBytes permits AttachmentFolder, AttachmentRows {
    /** Keeps the bytes, on the disk when this returns; what was kept under the same hash is replaced. */
    void keep(CaseId id, String sha256, byte[] bytes);

    /** The bytes, sure to be those that were kept; {@link StoreUnavailable} if they are missing or not the same. */
    byte[] read(CaseId id, Attachment attachment);

    /** Whether any bytes are kept for it, be they those that were put in or not. */
    boolean hasSome(CaseId id, Attachment attachment);

    /** What is wrong with the kept bytes, or empty if they are as they were put in. */
    default Optional<String> fault(CaseId id, Attachment attachment) {
        try {
            read(id, attachment);
            return Optional.empty();
        } catch (StoreUnavailable e) {
            return Optional.of(e.what());
        }
    }

    /** Whether these are the bytes that the attachment names. */
    static boolean areOf(Attachment attachment, byte[] bytes) {
        return bytes.length == attachment.size() && CanonicalText.sha256(bytes).equals(attachment.sha256());
    }

    static StoreUnavailable damaged(String where, Attachment attachment, String how) {
        return new StoreUnavailable(
                where, "attachment '" + attachment.name() + "' " + how, "put the same file in again");
    }
}
