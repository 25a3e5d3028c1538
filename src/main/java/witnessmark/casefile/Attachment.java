package witnessmark.casefile;

import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A file kept with the case, such as a photograph; its bytes lie in the store under their hash.
 *
 * @param name the file's own name, without any folder; it is shown, never used as a path
 * @param mediaType such as image/jpeg
 * @param sha256 of the bytes, lower-case hexadecimal
 * @param size in bytes
 * @param finding id of the finding it shows, empty where it belongs to the case as a whole
 * @param originalSha256 of the file it was made from, where it was scaled down or its location taken out; empty where
 *     it is kept as it came
 */
public record Attachment(
        String name,
        String mediaType,
        String sha256,
        long size,
        Optional<String> finding,
        Optional<String> originalSha256) {
    private static final Pattern MEDIA_TYPE = Pattern.compile("[a-z0-9][a-z0-9.+-]*/[a-z0-9][a-z0-9.+-]*");

    public Attachment {
        name = CheckedText.filledLine("attachment", name);
        if (name.contains("/") || name.contains("\\") || name.equals(".") || name.equals("..")) {
            throw new CaseRefused(
                    "attachment: '" + CheckedText.shown(name) + "' is not a file name",
                    "give the name without its folder");
        }
        if (mediaType.length() > CheckedText.LONGEST_LINE
                || !MEDIA_TYPE.matcher(mediaType).matches()) {
            throw new CaseRefused(
                    "attachment '" + name + "': '" + CheckedText.shown(mediaType) + "' is not a media type",
                    "give one such as image/jpeg or application/pdf");
        }
        sha256 = CheckedText.sha256("attachment '" + name + "', sha256", sha256);
        if (size < 0) {
            throw new CaseRefused("attachment '" + name + "': a size of " + size + " bytes", "give zero or more");
        }
        String what = "attachment '" + name + "', ";
        finding = finding.map(id -> CheckedText.id(what + "finding", id));
        originalSha256 = originalSha256.map(hash -> CheckedText.sha256(what + "original-sha256", hash));
    }

    /** A file kept as it came, belonging to the case as a whole. */
    public Attachment(String name, String mediaType, String sha256, long size) {
        this(name, mediaType, sha256, size, Optional.empty(), Optional.empty());
    }
}
