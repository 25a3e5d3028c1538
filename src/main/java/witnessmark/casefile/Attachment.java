package witnessmark.casefile;

import java.util.regex.Pattern;

/**
 * A file kept with the case, such as a photograph; its bytes lie in the store under their hash.
 *
 * @param name the file's own name, without any folder; it is shown, never used as a path
 * @param mediaType such as image/jpeg
 * @param sha256 of the bytes, lower-case hexadecimal
 * @param size in bytes
 */
public record Attachment(String name, String mediaType, String sha256, long size) {
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
    }
}
