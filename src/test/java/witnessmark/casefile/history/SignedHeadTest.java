package witnessmark.casefile.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.EdECPrivateKeySpec;
import java.security.spec.NamedParameterSpec;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import witnessmark.casefile.CaseId;

class SignedHeadTest {
    private static final HeadMark MARK = new HeadMark(new CaseId("t-1"), 8, "ab".repeat(32));

    @Test
    void the_signing_used_is_that_of_the_standard() throws Exception {
        // RFC 8032, 7.1, test 1 (from memory): secret key and signature of the empty message.
        PrivateKey key = KeyFactory.getInstance("Ed25519")
                .generatePrivate(new EdECPrivateKeySpec(
                        NamedParameterSpec.ED25519,
                        HexFormat.of().parseHex("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60")));
        Signature sign = Signature.getInstance("Ed25519");
        sign.initSign(key);

        assertThat(HexFormat.of().formatHex(sign.sign()))
                .isEqualTo(
                        "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9"
                                + "b46bd25bf5f0595bbe24655141438e7a100b");
    }

    @Test
    void a_signed_end_reads_back_and_a_changed_one_or_one_of_another_key_is_not_true() throws Exception {
        KeyPair shop = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
        KeyPair other = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
        SignedHead signed = SignedHead.of(MARK, shop.getPrivate(), shop.getPublic());
        SignedHead foreign = SignedHead.of(MARK, other.getPrivate(), other.getPublic());

        assertThat(SignedHead.parse(signed.text())).contains(signed);
        assertThat(signed.isTrue()).isTrue();
        assertThat(new SignedHead(new HeadMark(MARK.id(), 7, MARK.hash()), signed.key(), signed.signature()).isTrue())
                .isFalse();
        assertThat(new SignedHead(MARK, foreign.key(), signed.signature()).isTrue())
                .isFalse();
        assertThat(new SignedHead(MARK, "no key", signed.signature()).isTrue()).isFalse();
        assertThat(foreign.fingerprint()).isNotEqualTo(signed.fingerprint());
    }
}
