package witnessmark.document.drawing;

import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;

/** Draws text as a scannable code (QR code, ISO/IEC 18004), one black path on white. */
public final class DrawCode {
    /** Modules left white around the code, as the standard asks. */
    private static final int QUIET = 4;

    private DrawCode() {}

    /**
     * The code as one SVG element.
     *
     * @param words what the code is, for those who hear the page
     */
    public static String draw(String text, String words) {
        ByteMatrix modules = modules(text);
        int size = modules.getWidth() + 2 * QUIET;
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                if (modules.get(x, y) == 1) {
                    path.append('M')
                            .append(x + QUIET)
                            .append(' ')
                            .append(y + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"code\" role=\"img\" width=\"96\" height=\"96\""
                + " viewBox=\"0 0 " + size + " " + size + "\" shape-rendering=\"crispEdges\"><title>" + words
                + "</title><rect width=\"" + size + "\" height=\"" + size + "\" fill=\"#fff\"/><path fill=\"#000\" d=\""
                + path + "\"/></svg>";
    }

    private static ByteMatrix modules(String text) {
        try {
            return Encoder.encode(text, ErrorCorrectionLevel.M).getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("too much text for a code: " + text.length() + " characters", e);
        }
    }
}
