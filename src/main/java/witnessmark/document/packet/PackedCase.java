package witnessmark.document.packet;

import java.util.Map;
import witnessmark.casefile.yaml.CaseDocument;

/**
 * What a packet from another shop holds, checked against its hashes.
 *
 * @param contents bytes of the attachments it brings, by SHA-256
 */
public record PackedCase(CaseDocument document, Map<String, byte[]> contents) {
    public PackedCase {
        contents = Map.copyOf(contents);
    }
}
