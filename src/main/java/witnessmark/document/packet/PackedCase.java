package witnessmark.document.packet;

import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.history.SignedHead;
import witnessmark.casefile.yaml.CaseDocument;

/**
 * What a packet from another shop holds, checked against its hashes.
 *
 * @param contents bytes of the attachments it brings, by SHA-256
 * @param signed the end of its chain as the sender signed it; empty where no key was used
 */
public record PackedCase(CaseDocument document, Map<String, byte[]> contents, Optional<SignedHead> signed) {
    public PackedCase {
        contents = Map.copyOf(contents);
    }
}
