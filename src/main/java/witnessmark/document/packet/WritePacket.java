package witnessmark.document.packet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseWriter;
import witnessmark.document.Dossier;

/**
 * Packs a case as one ZIP file: the documents, the case in its YAML form, its attachments by hash, and the hash of each
 * file in the form {@code sha256sum --check} reads. The same case gives the same bytes.
 */
public final class WritePacket {
    static final String CASE = "case.yaml";
    static final String HASHES = "SHA256SUMS";
    /** The end of the chain signed, where the shop has a key. */
    public static final String SIGNED_HEAD = "signed-head.txt";

    static final String ATTACHMENTS = "attachments/";
    /** The earliest whole year a ZIP entry can bear; a later case's own time is used. */
    private static final LocalDateTime EARLIEST = LocalDateTime.of(1981, 1, 1, 0, 0);

    private WritePacket() {}

    /**
     * The packet.
     *
     * @param documents by file name, to lie beside the case
     */
    public static byte[] pack(Dossier dossier, Map<String, byte[]> documents) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        files.put(CASE, caseText(dossier));
        files.putAll(documents);
        dossier.file().attachments().forEach(a -> {
            byte[] bytes = dossier.contents().get(a.sha256());
            if (bytes != null) {
                files.put(ATTACHMENTS + a.sha256(), bytes);
            }
        });
        StringBuilder hashes = new StringBuilder();
        files.forEach((name, bytes) -> hashes.append(CanonicalText.sha256(bytes))
                .append("  ")
                .append(name)
                .append('\n'));
        files.put(HASHES, hashes.toString().getBytes(StandardCharsets.UTF_8));
        return zipped(files, time(dossier));
    }

    private static byte[] caseText(Dossier dossier) {
        CaseDocument document =
                dossier.history().map(CaseDocument::of).orElseGet(() -> CaseDocument.of(dossier.file()));
        return new CaseWriter().write(document).getBytes(StandardCharsets.UTF_8);
    }

    private static LocalDateTime time(Dossier dossier) {
        LocalDateTime time = dossier.asOf()
                .map(t -> LocalDateTime.ofInstant(t, ZoneOffset.UTC))
                .orElse(EARLIEST);
        return time.isBefore(EARLIEST) ? EARLIEST : time;
    }

    private static byte[] zipped(Map<String, byte[]> files, LocalDateTime time) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes, StandardCharsets.UTF_8)) {
            for (Map.Entry<String, byte[]> file : files.entrySet()) {
                ZipEntry entry = new ZipEntry(file.getKey());
                entry.setTimeLocal(time);
                zip.putNextEntry(entry);
                zip.write(file.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }
}
