package witnessmark.document.page;

import java.util.Base64;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.DamagedFile;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.FindingState;
import witnessmark.document.Dossier;

/**
 * A file kept with the case.
 *
 * @param number its number in the photo index, from one
 * @param shows the finding it shows, in words; empty where it belongs to the case as a whole
 * @param picture the picture as a data address; empty for other files and where its bytes are not at hand or
 *     not those that were put in
 * @param note what the reader should know of its bytes
 */
public record KeptFile(
        String number,
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
        List<Attachment> all = dossier.file().attachments();
        return IntStream.range(0, all.size())
                .mapToObj(i -> of(dossier, i + 1, all.get(i)))
                .toList();
    }

    /** The numbers of the photographs that show a finding, as words; empty without one. */
    static String numbersShowing(Dossier dossier, String finding) {
        List<Attachment> all = dossier.file().attachments();
        return IntStream.range(0, all.size())
                .filter(i -> all.get(i).finding().filter(finding::equals).isPresent())
                .mapToObj(i -> numbered(dossier, i + 1, all.get(i)))
                .collect(Collectors.joining(", "));
    }

    /** One that is damaged bears that beside its number, wherever it is named. */
    private static String numbered(Dossier dossier, int number, Attachment attachment) {
        return dossier.faultOf(attachment)
                .map(fault -> new SayOnPaper(dossier).say("photo-" + state(dossier, attachment), number))
                .orElse(String.valueOf(number));
    }

    private static KeptFile of(Dossier dossier, int number, Attachment attachment) {
        byte[] bytes = dossier.contents().get(attachment.sha256());
        boolean picture = bytes != null && PICTURES.contains(attachment.mediaType());
        return new KeptFile(
                String.valueOf(number),
                attachment.name(),
                attachment.mediaType(),
                attachment.size() < 1024 ? attachment.size() + " B" : attachment.size() / 1024 + " KiB",
                attachment.sha256(),
                attachment.originalSha256().orElse(""),
                attachment.finding().map(f -> shown(dossier, f)).orElse(""),
                picture
                        ? "data:" + attachment.mediaType() + ";base64,"
                                + Base64.getEncoder().encodeToString(bytes)
                        : "",
                bytes == null ? new SayOnPaper(dossier).say("file-" + state(dossier, attachment)) : "");
    }

    /** A picture of a part that was seen sound, or not for certain otherwise, must not be said to show the damage. */
    private static String shown(Dossier dossier, String finding) {
        String title = FoundRow.title(dossier, finding);
        FindingEntry entry = dossier.file().findings().get(finding);
        return entry == null
                        || entry.state() == FindingState.PRESENT
                                && entry.toldBy().isEmpty()
                ? title
                : title + ": " + FoundRow.stateWord(new SayOnPaper(dossier), entry);
    }

    /** The key of what is said of bytes that are not at hand. */
    static String state(Dossier dossier, Attachment attachment) {
        return dossier.faultOf(attachment)
                .map(fault -> fault == DamagedFile.Fault.MISSING ? "missing" : "changed")
                .orElse("no-bytes");
    }
}
