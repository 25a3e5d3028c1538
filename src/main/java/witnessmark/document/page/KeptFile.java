package witnessmark.document.page;

import java.util.Base64;
import java.util.List;
import witnessmark.casefile.Attachment;
import witnessmark.document.Dossier;

/**
 * A file kept with the case.
 *
 * @param shows the finding it shows, in words; empty where it belongs to the case as a whole
 * @param picture the picture as a data address; empty for other files and where its bytes are not at hand
 * @param note what the reader should know of its bytes
 */
public record KeptFile(
        String name,
        String mediaType,
        String size,
        String sha256,
        String original,
        String shows,
        String picture,
        String note) {
    private static final List<String> PICTURES = List.of("image/jpeg", "image/png");

    static List<KeptFile> of(Dossier dossier) {
        return dossier.file().attachments().stream().map(a -> of(dossier, a)).toList();
    }

    private static KeptFile of(Dossier dossier, Attachment attachment) {
        byte[] bytes = dossier.contents().get(attachment.sha256());
        boolean picture = bytes != null && PICTURES.contains(attachment.mediaType());
        return new KeptFile(
                attachment.name(),
                attachment.mediaType(),
                attachment.size() + " bytes",
                attachment.sha256(),
                attachment.originalSha256().orElse(""),
                attachment.finding().map(f -> FoundRow.title(dossier, f)).orElse(""),
                picture
                        ? "data:" + attachment.mediaType() + ";base64,"
                                + Base64.getEncoder().encodeToString(bytes)
                        : "",
                bytes == null ? "its bytes were not at hand when this was written" : "");
    }
}
