package witnessmark.document.photo;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * The block of a JPEG file in which a camera writes how it was held and where it stood (Exif in a TIFF structure:
 * CIPA DC-008, from memory). A damaged block is taken as saying nothing.
 */
final class ExifBlock {
    private static final byte[] MARK = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    private static final int APP1 = 0xE1;
    private static final int START_OF_SCAN = 0xDA;
    private static final int ORIENTATION = 0x0112;
    private static final int GPS_POINTER = 0x8825;
    private static final int ENTRY = 12;

    private final byte[] block;
    private final ByteBuffer tiff;

    private ExifBlock(byte[] block) {
        this.block = block;
        this.tiff = ByteBuffer.wrap(block, MARK.length, block.length - MARK.length)
                .slice()
                .order(block[MARK.length] == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    }

    /** The block of a JPEG file; empty if it has none. */
    static Optional<ExifBlock> of(byte[] jpeg) {
        int at = 2;
        while (at + 4 <= jpeg.length && (jpeg[at] & 0xFF) == 0xFF) {
            int marker = jpeg[at + 1] & 0xFF;
            int length = (jpeg[at + 2] & 0xFF) << 8 | jpeg[at + 3] & 0xFF;
            if (marker == START_OF_SCAN || length < 2 || at + 2 + length > jpeg.length) {
                return Optional.empty();
            }
            byte[] block = Arrays.copyOfRange(jpeg, at + 4, at + 2 + length);
            if (marker == APP1 && block.length > MARK.length + 8 && startsWithMark(block)) {
                return Optional.of(new ExifBlock(block));
            }
            at += 2 + length;
        }
        return Optional.empty();
    }

    private static boolean startsWithMark(byte[] block) {
        return Arrays.equals(block, 0, MARK.length, MARK, 0, MARK.length);
    }

    /** How the picture must be turned, 1 to 8; 1 for not at all. */
    int orientation() {
        return entry(ORIENTATION)
                .map(at -> tiff.getShort(at + 8) & 0xFFFF)
                .filter(o -> o >= 1 && o <= 8)
                .orElse(1);
    }

    boolean hasLocation() {
        return entry(GPS_POINTER).isPresent();
    }

    /** The JPEG with this block in it, said to stand upright. */
    byte[] putInto(byte[] jpeg) {
        entry(ORIENTATION).ifPresent(at -> tiff.putShort(at + 8, (short) 1));
        int length = block.length + 2;
        ByteArrayOutputStream out = new ByteArrayOutputStream(jpeg.length + length + 2);
        out.write(jpeg, 0, 2);
        out.write(0xFF);
        out.write(APP1);
        out.write(length >> 8);
        out.write(length);
        out.writeBytes(block);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    /** Where in the first directory the entry with this tag stands. */
    private Optional<Integer> entry(int tag) {
        int directory = tiff.getInt(4);
        if (directory < 8 || directory > tiff.limit() - 2) {
            return Optional.empty();
        }
        int count = tiff.getShort(directory) & 0xFFFF;
        for (int i = 0; i < count; i++) {
            int at = directory + 2 + i * ENTRY;
            if (at + ENTRY > tiff.limit()) {
                return Optional.empty();
            }
            if ((tiff.getShort(at) & 0xFFFF) == tag) {
                return Optional.of(at);
            }
        }
        return Optional.empty();
    }
}
