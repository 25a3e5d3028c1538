package witnessmark.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import witnessmark.document.packet.WritePacket;
import witnessmark.document.template.TemplateFolder;
import witnessmark.document.write.WriteDocument;

class ReproducibleTest {

    /** Everything made anew, so that nothing is the same by being the same object. */
    private static byte[] written(Kind kind, Form form) {
        Dossier dossier = Cases.stored(Cases.sample("slow-into-low-low-air"), Map.of());
        return new WriteDocument(TemplateFolder.shipped(), Paper.A4).write(dossier, kind, form);
    }

    @ParameterizedTest
    @EnumSource(Form.class)
    void the_same_case_gives_the_same_bytes(Form form) {
        for (Kind kind : Kind.values()) {
            assertThat(written(kind, form)).isEqualTo(written(kind, form));
        }
    }

    @Test
    void a_pdf_bears_the_time_of_the_last_entry_and_no_other() {
        String raw = new String(written(Kind.COACHING, Form.PDF), StandardCharsets.ISO_8859_1);

        assertThat(raw).doesNotContain("D:" + java.time.Year.now().getValue() + "0");
    }

    @Test
    void another_case_gives_other_bytes() {
        Dossier other = Cases.of(Cases.sample("scored-hubs-after-a-tow"));

        assertThat(new WriteDocument(TemplateFolder.shipped(), Paper.A4).write(other, Kind.BENCH, Form.PDF))
                .isNotEqualTo(written(Kind.BENCH, Form.PDF));
    }

    @Test
    void a_packet_is_the_same_bytes_too() {
        Dossier dossier = Cases.stored(Cases.sample("slow-into-low-low-air"), Map.of());

        assertThat(WritePacket.pack(dossier, Map.of())).isEqualTo(WritePacket.pack(dossier, Map.of()));
    }
}
