package witnessmark.casefile.history;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.List;
import java.util.Optional;

/**
 * The end of a case's chain signed with a key of the shop (Ed25519, RFC 8032). Whoever knows the shop's public key from
 * elsewhere sees that the shop, and nobody else, vouches for this chain.
 *
 * @param key the public key in its X.509 form, Base64
 * @param signature over the UTF-8 bytes of the mark's text, Base64
 */
public record SignedHead(HeadMark mark, String key, String signature) {
    private static final String ALGORITHM = "Ed25519";
    private static final int LINES = 3;

    public static SignedHead of(HeadMark mark, PrivateKey with, PublicKey key) {
        try {
            Signature sign = Signature.getInstance(ALGORITHM);
            sign.initSign(with);
            sign.update(mark.text().getBytes(StandardCharsets.UTF_8));
            return new SignedHead(
                    mark,
                    Base64.getEncoder().encodeToString(key.getEncoded()),
                    Base64.getEncoder().encodeToString(sign.sign()));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("the key cannot sign", e);
        }
    }

    /** Three lines: the mark, the public key, the signature. */
    public String text() {
        return mark.text() + "\n" + key + "\n" + signature + "\n";
    }

    /** What the three lines say; empty if they are none such. */
    public static Optional<SignedHead> parse(String text) {
        List<String> lines = text.strip().lines().map(String::strip).toList();
        return lines.size() == LINES
                ? HeadMark.parse(lines.get(0)).map(m -> new SignedHead(m, lines.get(1), lines.get(2)))
                : Optional.empty();
    }

    /** Whether the signature is that of the mark by the key; false too where one of them cannot be read. */
    public boolean isTrue() {
        try {
            Signature check = Signature.getInstance(ALGORITHM);
            check.initVerify(KeyFactory.getInstance(ALGORITHM)
                    .generatePublic(new X509EncodedKeySpec(Base64.getDecoder().decode(key))));
            check.update(mark.text().getBytes(StandardCharsets.UTF_8));
            return check.verify(Base64.getDecoder().decode(signature));
        } catch (GeneralSecurityException | IllegalArgumentException e) {
            return false;
        }
    }

    /** The hash by which people compare keys: the first 16 digits of the key's SHA-256. */
    public String fingerprint() {
        return CanonicalText.sha256(key.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
    }
}
