package witnessmark.document.photo;

/**
 * A photograph as it is kept.
 *
 * @param originalSha256 of the file it was made from
 * @param hadLocation whether the original said where it was taken
 * @param keepsLocation whether the kept one still says so
 */
public record Photo(
        byte[] bytes,
        String mediaType,
        int width,
        int height,
        String originalSha256,
        boolean hadLocation,
        boolean keepsLocation) {}
