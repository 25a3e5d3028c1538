package witnessmark.knowledge;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/** The build's step that checks the knowledge base and writes it in its compiled form. */
public final class CompileKnowledge {
    private CompileKnowledge() {}

    private static final String LOG_FINDINGS = "log-findings.compiled";
    private static final String DIGEST = "knowledge-base.sha256";

    /** @param args the knowledge folder and the file to write; the rows by which logs are weighed and its digest go beside it */
    public static void main(String[] args) throws IOException {
        List<KnowledgeFile> files = KnowledgeFolder.files(Path.of(args[0]));
        Path compiled = Path.of(args[1]);
        try (DataOutputStream out = open(compiled)) {
            new KnowledgeLoader().compile(files, out);
        }
        try (DataOutputStream out = open(compiled.resolveSibling(LOG_FINDINGS))) {
            new KnowledgeLoader().compileLogFindings(files, out);
        }
        Files.writeString(compiled.resolveSibling(DIGEST), sha256(Files.readAllBytes(compiled)));
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    private static DataOutputStream open(Path file) throws IOException {
        return new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)));
    }
}
