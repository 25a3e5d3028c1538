package witnessmark.shell.cases;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;
import witnessmark.casefile.history.HeadMark;
import witnessmark.casefile.history.SignedHead;
import witnessmark.shell.print.Refused;

/** The key the shop signs the end of a chain with, if it made one: a file that only its owner can read. */
@Component
public class ShopKey {
    private static final String ALGORITHM = "Ed25519";
    private static final String FILE = "shop-key";
    private static final int LINES = 2;

    private final Path file;

    ShopKey(Environment environment) {
        file = Cases.folder(environment).resolve(FILE);
    }

    Path file() {
        return file;
    }

    /** Makes the key; {@link Refused} where there is one. */
    SignedHead made(HeadMark probe) {
        try {
            KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
            String text = Base64.getEncoder().encodeToString(pair.getPrivate().getEncoded()) + "\n"
                    + Base64.getEncoder().encodeToString(pair.getPublic().getEncoded()) + "\n";
            Files.createDirectories(file.toAbsolutePath().getParent());
            try (var out = Files.newByteChannel(
                    file, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), ownerOnly())) {
                out.write(StandardCharsets.UTF_8.encode(text));
            }
            return SignedHead.of(probe, pair.getPrivate(), pair.getPublic());
        } catch (FileAlreadyExistsException e) {
            throw new Refused("there is a key already, '" + file + "'", "what was signed with it needs it, keep it");
        } catch (IOException e) {
            throw new Refused(
                    "the key '" + file + "' cannot be written: " + e.getMessage(), "check that its folder lets you");
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform from 15 on has " + ALGORITHM, e);
        }
    }

    /** The mark signed; empty where the shop made no key. */
    public Optional<SignedHead> sign(HeadMark mark) {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        try {
            List<String> lines = Files.readAllLines(file);
            if (lines.size() != LINES) {
                throw new IllegalArgumentException("not two lines");
            }
            KeyFactory keys = KeyFactory.getInstance(ALGORITHM);
            PrivateKey with = keys.generatePrivate(
                    new PKCS8EncodedKeySpec(Base64.getDecoder().decode(lines.get(0))));
            PublicKey key = keys.generatePublic(
                    new X509EncodedKeySpec(Base64.getDecoder().decode(lines.get(1))));
            return Optional.of(SignedHead.of(mark, with, key));
        } catch (IOException | GeneralSecurityException | IllegalArgumentException e) {
            throw new Refused(
                    "the key '" + file + "' cannot be read: " + e.getMessage(),
                    "bring it back from a copy," + " or take it away and make a new one with: key make");
        }
    }

    private FileAttribute<?>[] ownerOnly() {
        return file.getFileSystem().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
                }
                : new FileAttribute<?>[0];
    }
}
