package witnessmark.document.photo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.document.DocumentRefused;

class PreparePhotoTest {

    @Test
    void where_it_was_taken_is_gone() throws IOException {
        byte[] original = withLocation(picture(64, 48, "jpeg"), 1);
        assertThat(contains(original, "GPSMARK")).isTrue();

        Photo photo = PreparePhoto.prepare("cone.jpg", original, false);

        assertThat(photo.hadLocation()).isTrue();
        assertThat(photo.keepsLocation()).isFalse();
        assertThat(contains(photo.bytes(), "GPSMARK")).isFalse();
        assertThat(contains(photo.bytes(), "Exif")).isFalse();
        assertThat(photo.originalSha256()).isEqualTo(CanonicalText.sha256(original));
    }

    @Test
    void kept_on_purpose_it_stays_and_the_picture_can_be_read() throws IOException {
        Photo photo = PreparePhoto.prepare("cone.jpg", withLocation(picture(64, 48, "jpeg"), 1), true);

        assertThat(photo.keepsLocation()).isTrue();
        assertThat(contains(photo.bytes(), "GPSMARK")).isTrue();
        assertThat(ImageIO.read(new ByteArrayInputStream(photo.bytes())).getWidth())
                .isEqualTo(64);
    }

    /** Orientations of Exif (CIPA DC-008, tag 0112, from memory): the dark quarter, stored where it says, ends top left. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void a_picture_held_any_way_is_stored_upright(int orientation) throws IOException {
        boolean lying = orientation >= 5;
        boolean right = orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
        boolean bottom = orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
        BufferedImage stored = new BufferedImage(80, 40, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 80; x++) {
            for (int y = 0; y < 40; y++) {
                boolean dark = (right ? x >= 40 : x < 40) && (bottom ? y >= 20 : y < 20);
                stored.setRGB(x, y, dark ? 0 : 0xFFFFFF);
            }
        }

        Photo photo = PreparePhoto.prepare("cone.jpg", withLocation(encoded(stored, "jpeg"), orientation), false);

        BufferedImage upright = ImageIO.read(new ByteArrayInputStream(photo.bytes()));
        assertThat(upright.getWidth()).isEqualTo(lying ? 40 : 80);
        assertThat(new Color(upright.getRGB(upright.getWidth() / 4, upright.getHeight() / 4)).getRed())
                .isLessThan(60);
        assertThat(new Color(upright.getRGB(3 * upright.getWidth() / 4, upright.getHeight() / 4)).getRed())
                .isGreaterThan(200);
        assertThat(new Color(upright.getRGB(upright.getWidth() / 4, 3 * upright.getHeight() / 4)).getRed())
                .isGreaterThan(200);
    }

    @ParameterizedTest
    @ValueSource(strings = {"jpeg", "png"})
    void a_large_one_is_scaled_down_and_a_small_one_left(String type) throws IOException {
        Photo large = PreparePhoto.prepare("a", picture(4000, 1000, type), false);
        Photo small = PreparePhoto.prepare("a", picture(40, 10, type), false);

        assertThat(large.width()).isEqualTo(PreparePhoto.LONGEST_SIDE);
        assertThat(large.height()).isEqualTo(PreparePhoto.LONGEST_SIDE / 4);
        assertThat(small.width()).isEqualTo(40);
        assertThat(large.mediaType()).isEqualTo("image/" + type);
    }

    @Nested
    class Refused {

        @Test
        void what_only_calls_itself_a_picture() {
            assertThatThrownBy(() -> PreparePhoto.prepare(
                            "cone.jpg", "<svg onload='alert(1)'/>".getBytes(StandardCharsets.UTF_8), false))
                    .isInstanceOf(DocumentRefused.class)
                    .hasMessageContaining("'cone.jpg' is not a JPEG or PNG picture, whatever its name says");
        }

        @Test
        void a_picture_that_unfolds_without_end() throws IOException {
            byte[] bomb = pngHead(60_000, 60_000);

            assertThat(bomb.length).isLessThan(200);
            assertThatThrownBy(() -> PreparePhoto.prepare("bomb.png", bomb, false))
                    .hasMessageContaining("60000 x 60000 pixels");
        }

        @Test
        void a_file_that_is_too_large() {
            assertThatThrownBy(() -> PreparePhoto.prepare("big.jpg", new byte[30_000_001], false))
                    .hasMessageContaining("30000001 bytes");
        }

        @Test
        void a_damaged_picture() throws IOException {
            byte[] whole = picture(640, 480, "png");
            byte[] half = java.util.Arrays.copyOf(whole, whole.length / 2);

            assertThatThrownBy(() -> PreparePhoto.prepare("half.png", half, false))
                    .hasMessageContaining("is damaged");
        }

        @Test
        void keeping_a_location_that_is_not_there() throws IOException {
            byte[] plain = picture(64, 48, "jpeg");

            assertThatThrownBy(() -> PreparePhoto.prepare("cone.jpg", plain, true))
                    .hasMessageContaining("does not say where it was taken");
        }

        @Test
        void never_by_a_fault_inside_whatever_the_camera_wrote() throws IOException {
            byte[] original = withLocation(picture(64, 48, "jpeg"), 1);
            for (int at = 20; at < 80; at++) {
                byte[] spoiled = original.clone();
                spoiled[at] = (byte) 0xFE;

                assertThat(attempt(spoiled)).isTrue();
            }
        }

        /** Taken in or refused in words. */
        private boolean attempt(byte[] bytes) {
            try {
                PreparePhoto.prepare("x.jpg", bytes, false);
            } catch (DocumentRefused refused) {
                return !refused.getMessage().isEmpty();
            }
            return true;
        }
    }

    private static byte[] picture(int width, int height, String type) throws IOException {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < width; x++) {
            for (int y = 0; y < height; y++) {
                image.setRGB(x, y, 0x10101 * ((x * 7 + y * 13) & 0xFF));
            }
        }
        return encoded(image, type);
    }

    private static byte[] encoded(BufferedImage image, String type) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ImageIO.write(image, type, out);
        return out.toByteArray();
    }

    /** The JPEG with an Exif block after its start: orientation, and a pointer to a GPS directory with a mark in it. */
    private static byte[] withLocation(byte[] jpeg, int orientation) throws IOException {
        ByteArrayOutputStream block = new ByteArrayOutputStream();
        DataOutputStream exif = new DataOutputStream(block);
        exif.writeBytes("Exif\0\0MM");
        exif.writeShort(42);
        exif.writeInt(8);
        exif.writeShort(2);
        exif.writeShort(0x0112);
        exif.writeShort(3);
        exif.writeInt(1);
        exif.writeShort(orientation);
        exif.writeShort(0);
        exif.writeShort(0x8825);
        exif.writeShort(4);
        exif.writeInt(1);
        exif.writeInt(38);
        exif.writeInt(0);
        exif.writeShort(1);
        exif.writeShort(0x001D);
        exif.writeShort(2);
        exif.writeInt(8);
        exif.writeInt(56);
        exif.writeInt(0);
        exif.writeBytes("GPSMARK\0");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        out.write(0xFF);
        out.write(0xE1);
        out.write(block.size() + 2 >> 8);
        out.write(block.size() + 2);
        block.writeTo(out);
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    /** A PNG that says it is so large and then ends (PNG specification, second edition: IHDR). */
    private static byte[] pngHead(int width, int height) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream out = new DataOutputStream(bytes);
        out.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'});
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        DataOutputStream ihdr = new DataOutputStream(head);
        ihdr.writeBytes("IHDR");
        ihdr.writeInt(width);
        ihdr.writeInt(height);
        ihdr.write(new byte[] {8, 2, 0, 0, 0});
        CRC32 sum = new CRC32();
        sum.update(head.toByteArray());
        out.writeInt(13);
        head.writeTo(out);
        out.writeInt((int) sum.getValue());
        return bytes.toByteArray();
    }

    private static boolean contains(byte[] bytes, String text) {
        return new String(bytes, StandardCharsets.ISO_8859_1).contains(text);
    }
}
