package witnessmark.document.packet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CheckedText;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.HeadMark;
import witnessmark.casefile.history.SignedHead;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.document.DocumentRefused;

/**
 * Reads a packet that came from outside. Nothing is written: names in it are compared, never used as paths; its size is
 * bounded unpacked; every file must be as its list of hashes says.
 */
public final class ReadPacket {
    private static final int MOST_FILES = 500;
    private static final long MOST_BYTES = 300_000_000;
    private static final Pattern HASH_LINE = Pattern.compile("([0-9a-f]{64})  (.{1,200})");
    private static final Pattern ATTACHMENT = Pattern.compile("attachments/[0-9a-f]{64}");

    private final String name;
    private final Map<String, byte[]> files = new LinkedHashMap<>();

    private ReadPacket(String name) {
        this.name = CheckedText.shown(name);
    }

    /** The case in the packet; {@link DocumentRefused} if it is none, or not as its hashes say. */
    public static PackedCase read(String name, byte[] zip) {
        ReadPacket packet = new ReadPacket(name);
        packet.unpack(zip);
        packet.checkHashes();
        return packet.packedCase();
    }

    private void unpack(byte[] bytes) {
        long room = MOST_BYTES;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = zip.readNBytes((int) Math.min(room + 1, Integer.MAX_VALUE));
                room -= content.length;
                if (room < 0 || files.size() >= MOST_FILES) {
                    throw refused("unpacked it holds more than " + MOST_BYTES + " bytes or " + MOST_FILES + " files");
                }
                if (files.put(entry.getName(), content) != null) {
                    throw refused("'" + CheckedText.shown(entry.getName()) + "' stands in it twice");
                }
            }
        } catch (IOException | IllegalArgumentException e) {
            throw refused("it is damaged: " + e.getMessage());
        }
        if (!files.containsKey(WritePacket.CASE) || !files.containsKey(WritePacket.HASHES)) {
            throw refused("it holds no " + WritePacket.CASE + " or no " + WritePacket.HASHES);
        }
    }

    private void checkHashes() {
        Map<String, String> hashes = new HashMap<>();
        for (String line : new String(files.get(WritePacket.HASHES), StandardCharsets.UTF_8)
                .lines()
                .toList()) {
            var match = HASH_LINE.matcher(line);
            if (match.matches()) {
                hashes.put(match.group(2), match.group(1));
            }
        }
        files.forEach((file, bytes) -> {
            boolean listed = file.equals(WritePacket.HASHES)
                    || CanonicalText.sha256(bytes).equals(hashes.get(file));
            if (!listed) {
                throw refused("'" + CheckedText.shown(file) + "' is not as its list of hashes says");
            }
        });
        hashes.keySet().stream()
                .filter(file -> !files.containsKey(file))
                .findFirst()
                .ifPresent(file -> {
                    throw refused("'" + CheckedText.shown(file) + "' stands in its list of hashes but is missing");
                });
    }

    private PackedCase packedCase() {
        CaseDocument document = new CaseReader().read(name + ": " + WritePacket.CASE, files.get(WritePacket.CASE));
        Map<String, byte[]> contents = new LinkedHashMap<>();
        for (Attachment attachment : document.present().attachments()) {
            byte[] bytes = files.get(WritePacket.ATTACHMENTS + attachment.sha256());
            if (bytes != null && CanonicalText.sha256(bytes).equals(attachment.sha256())) {
                contents.put(attachment.sha256(), bytes);
            }
        }
        long given = files.keySet().stream()
                .filter(f -> ATTACHMENT.matcher(f).matches())
                .count();
        if (given != contents.size()) {
            throw refused("it brings attachments that the case does not name, or that are not what their names say");
        }
        return new PackedCase(document, contents, signed(document));
    }

    /** The signed end of the chain, which must be of this chain. */
    private Optional<SignedHead> signed(CaseDocument document) {
        byte[] text = files.get(WritePacket.SIGNED_HEAD);
        if (text == null) {
            return Optional.empty();
        }
        Optional<SignedHead> signed = SignedHead.parse(new String(text, StandardCharsets.UTF_8));
        boolean fits = signed.filter(SignedHead::isTrue)
                .filter(s -> document.history()
                        .filter(h -> HeadMark.of(h).equals(s.mark()))
                        .isPresent())
                .isPresent();
        if (!fits) {
            throw refused("its signature '" + WritePacket.SIGNED_HEAD + "' is not that of the case in it");
        }
        return signed;
    }

    private DocumentRefused refused(String what) {
        return new DocumentRefused("packet '" + name + "': " + what, "ask the sender for it anew");
    }
}
