package witnessmark.casefile.store;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.KeyStore;
import java.util.Base64;

/** A certificate that vouches for itself, made by the JDK's keytool, in the form servers read. */
public final class TestCertificate {
    private static final String PASSWORD = "of this file";

    private TestCertificate() {}

    /** Writes certificate and key of a host. */
    public static void write(String host, Path certificate, Path key) throws Exception {
        Path store = Files.createTempDirectory("key").resolve("key.p12");
        Process made = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "server",
                        "-keyalg",
                        "EC",
                        "-dname",
                        "CN=" + host,
                        "-ext",
                        "san=dns:" + host,
                        "-validity",
                        "30",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        PASSWORD)
                .redirectErrorStream(true)
                .start();
        String said = new String(made.getInputStream().readAllBytes(), US_ASCII);
        if (made.waitFor() != 0) {
            throw new IllegalStateException("keytool: " + said);
        }
        KeyStore keys = KeyStore.getInstance("PKCS12");
        try (InputStream in = Files.newInputStream(store)) {
            keys.load(in, PASSWORD.toCharArray());
        }
        Files.deleteIfExists(store);
        write(certificate, "CERTIFICATE", keys.getCertificate("server").getEncoded());
        write(key, "PRIVATE KEY", keys.getKey("server", PASSWORD.toCharArray()).getEncoded());
        Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
    }

    private static void write(Path file, String what, byte[] bytes) throws Exception {
        Files.writeString(
                file,
                "-----BEGIN " + what + "-----\n"
                        + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(bytes) + "\n-----END " + what
                        + "-----\n");
    }
}
