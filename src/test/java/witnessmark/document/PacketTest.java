package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseSheet;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.ChainCheck;
import witnessmark.casefile.store.CaseStore;
import witnessmark.casefile.store.StoreLocation;
import witnessmark.document.packet.PackedCase;
import witnessmark.document.packet.ReadPacket;
import witnessmark.document.packet.WritePacket;

class PacketTest {
    private static final byte[] PICTURE = "the bytes of a picture".getBytes(StandardCharsets.UTF_8);
    private static final Attachment ATTACHMENT = new Attachment(
            "cone.jpg",
            "image/jpeg",
            CanonicalText.sha256(PICTURE),
            PICTURE.length,
            Optional.of("range-cone-low-burned"),
            Optional.of("cd".repeat(32)));

    private static Dossier dossier() {
        CaseFile file = new CaseSheet(Cases.hostile()).attachment(ATTACHMENT).toCaseFile();
        return Cases.stored(file, Map.of(ATTACHMENT.sha256(), PICTURE));
    }

    @Test
    void another_shop_takes_the_case_in_with_its_chain_and_its_picture(@TempDir Path folder) {
        Dossier dossier = dossier();
        byte[] packet = WritePacket.pack(dossier, Map.of("packet.pdf", new byte[] {1}));

        PackedCase packed = ReadPacket.read("packet.zip", packet);
        try (CaseStore store =
                new CaseStore(StoreLocation.in(folder), Clock.fixed(Cases.STAMP.time(), ZoneOffset.UTC))) {
            CaseHistory kept = store.importCase(packed.document(), "other shop");
            store.keepBytes(
                    kept.id(),
                    ATTACHMENT.name(),
                    ATTACHMENT.mediaType(),
                    packed.contents().get(ATTACHMENT.sha256()));

            assertThat(kept).isEqualTo(dossier.history().orElseThrow());
            assertThat(store.verify(kept.id())).isInstanceOf(ChainCheck.Intact.class);
            assertThat(store.readAttachment(kept.id(), ATTACHMENT)).isEqualTo(PICTURE);
            assertThat(kept.present().attachments()).containsExactly(ATTACHMENT);
        }
    }

    @Nested
    class Refused {

        @Test
        void a_packet_whose_case_was_changed() throws IOException {
            byte[] changed = rewritten("case.yaml", text -> text.replace("44.25", "60"), Map.of());

            assertThatThrownBy(() -> ReadPacket.read("p.zip", changed))
                    .hasMessageContaining("'case.yaml' is not as its list of hashes says");
        }

        @Test
        void a_packet_with_a_file_that_its_list_does_not_name() throws IOException {
            byte[] more = rewritten("", text -> text, Map.of("../../evil", "x"));

            assertThatThrownBy(() -> ReadPacket.read("p.zip", more)).hasMessageContaining("'../../evil'");
        }

        @Test
        void what_is_no_packet() {
            assertThatThrownBy(() -> ReadPacket.read("p.zip", "no zip".getBytes(StandardCharsets.UTF_8)))
                    .isInstanceOf(DocumentRefused.class)
                    .hasMessageContaining("holds no case.yaml");
        }

        @Test
        void a_packet_that_unpacks_without_end() throws IOException {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
                zip.putNextEntry(new ZipEntry("case.yaml"));
                byte[] zeros = new byte[1_000_000];
                for (int i = 0; i < 301; i++) {
                    zip.write(zeros);
                }
                zip.closeEntry();
            }

            assertThatThrownBy(() -> ReadPacket.read("p.zip", bytes.toByteArray()))
                    .hasMessageContaining("more than 300000000 bytes");
        }

        private byte[] rewritten(
                String name, java.util.function.UnaryOperator<String> change, Map<String, String> added)
                throws IOException {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            byte[] packet = WritePacket.pack(dossier(), Map.of());
            try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(packet));
                    ZipOutputStream out = new ZipOutputStream(bytes)) {
                for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                    byte[] content = in.readAllBytes();
                    out.putNextEntry(new ZipEntry(entry.getName()));
                    out.write(
                            entry.getName().equals(name)
                                    ? change.apply(new String(content, StandardCharsets.UTF_8))
                                            .getBytes(StandardCharsets.UTF_8)
                                    : content);
                }
                for (Map.Entry<String, String> file : added.entrySet()) {
                    out.putNextEntry(new ZipEntry(file.getKey()));
                    out.write(file.getValue().getBytes(StandardCharsets.UTF_8));
                }
            }
            return bytes.toByteArray();
        }
    }
}
