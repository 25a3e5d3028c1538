package witnessmark.document.photo;

import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Iterator;
import java.util.Optional;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.document.DocumentRefused;

/**
 * Takes a photograph in: JPEG or PNG by content, drawn anew so that nothing but the picture remains, no longer than
 * {@value #LONGEST_SIDE} pixels, upright. Where it was taken is left out unless it is to be kept.
 */
public final class PreparePhoto {
    /** The longer side of what is kept, in pixels. */
    public static final int LONGEST_SIDE = 1600;

    private static final int LARGEST_BYTES = 30_000_000;
    private static final long MOST_PIXELS = 100_000_000;
    private static final float JPEG_QUALITY = 0.85f;
    private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

    private PreparePhoto() {}

    /** The photograph as it is to be kept; {@link DocumentRefused} if it is none, too large, or damaged. */
    public static Photo prepare(String name, byte[] original, boolean keepLocation) {
        String shown = CheckedText.shown(name);
        if (original.length > LARGEST_BYTES) {
            throw new DocumentRefused(
                    "photograph '" + shown + "': " + original.length + " bytes",
                    "keep it to " + LARGEST_BYTES + " at most");
        }
        String type = type(shown, original);
        Optional<ExifBlock> exif = type.equals("jpeg") ? ExifBlock.of(original) : Optional.empty();
        BufferedImage read = read(shown, type, original);
        BufferedImage picture =
                drawnAnew(read, type, exif.map(ExifBlock::orientation).orElse(1));
        byte[] kept = written(picture, type);
        boolean located = exif.filter(ExifBlock::hasLocation).isPresent();
        if (keepLocation && !located) {
            throw new DocumentRefused(
                    "photograph '" + shown + "' does not say where it was taken", "leave --keep-location out");
        }
        return new Photo(
                keepLocation ? exif.orElseThrow().putInto(kept) : kept,
                "image/" + type,
                picture.getWidth(),
                picture.getHeight(),
                CanonicalText.sha256(original),
                located,
                keepLocation);
    }

    private static String type(String name, byte[] bytes) {
        if (bytes.length > 3 && (bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xD8 && (bytes[2] & 0xFF) == 0xFF) {
            return "jpeg";
        }
        if (bytes.length > PNG.length && java.util.Arrays.equals(bytes, 0, PNG.length, PNG, 0, PNG.length)) {
            return "png";
        }
        throw new DocumentRefused(
                "'" + name + "' is not a JPEG or PNG picture, whatever its name says", "save it as one of these first");
    }

    private static BufferedImage read(String name, String type, byte[] bytes) {
        Iterator<ImageReader> readers = ImageIO.getImageReadersByFormatName(type);
        ImageReader reader = readers.next();
        try (var in = new MemoryCacheImageInputStream(new ByteArrayInputStream(bytes))) {
            reader.setInput(in, true, true);
            int width = reader.getWidth(0);
            int height = reader.getHeight(0);
            if ((long) width * height > MOST_PIXELS) {
                throw new DocumentRefused(
                        "photograph '" + name + "': " + width + " x " + height + " pixels",
                        "keep it to " + MOST_PIXELS + " pixels at most");
            }
            ImageReadParam param = reader.getDefaultReadParam();
            int every = Math.max(1, Math.max(width, height) / (2 * LONGEST_SIDE));
            param.setSourceSubsampling(every, every, 0, 0);
            return reader.read(0, param);
        } catch (IOException | IllegalArgumentException | IndexOutOfBoundsException e) {
            throw new DocumentRefused(
                    "photograph '" + name + "' is damaged or of a kind that cannot be read: " + e.getMessage(),
                    "save it anew as JPEG or PNG");
        } finally {
            reader.dispose();
        }
    }

    private static BufferedImage drawnAnew(BufferedImage read, String type, int orientation) {
        double scale = Math.min(1, LONGEST_SIDE / (double) Math.max(read.getWidth(), read.getHeight()));
        int width = Math.max(1, (int) Math.round(scale * read.getWidth()));
        int height = Math.max(1, (int) Math.round(scale * read.getHeight()));
        boolean lying = orientation >= 5;
        boolean clear = type.equals("png") && read.getColorModel().hasAlpha();
        BufferedImage out = new BufferedImage(
                lying ? height : width,
                lying ? width : height,
                clear ? BufferedImage.TYPE_INT_ARGB : BufferedImage.TYPE_INT_RGB);
        Graphics2D graphics = out.createGraphics();
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
        graphics.transform(upright(orientation, width, height));
        graphics.drawImage(read, 0, 0, width, height, null);
        graphics.dispose();
        return out;
    }

    /** From the picture as stored to the picture upright, for the eight ways a camera can be held. */
    private static AffineTransform upright(int orientation, int width, int height) {
        return switch (orientation) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }

    private static byte[] written(BufferedImage picture, String type) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName(type).next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (var out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            ImageWriteParam param = writer.getDefaultWriteParam();
            if (type.equals("jpeg")) {
                param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                param.setCompressionQuality(JPEG_QUALITY);
            }
            writer.write(null, new IIOImage(picture, null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
