package witnessmark.knowledge;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The build's step that checks the knowledge base and writes it in its compiled form. */
public final class CompileKnowledge {
    private CompileKnowledge() {}

    private static final String LOG_FINDINGS = "log-findings.compiled";

    /** @param args the knowledge folder and the file to write; the rows by which logs are weighed go beside it */
    public static void main(String[] args) throws IOException {
        List<KnowledgeFile> files = KnowledgeFolder.files(Path.of(args[0]));
        Path compiled = Path.of(args[1]);
        try (DataOutputStream out = open(compiled)) {
            new KnowledgeLoader().compile(files, out);
        }
        try (DataOutputStream out = open(compiled.resolveSibling(LOG_FINDINGS))) {
            new KnowledgeLoader().compileLogFindings(files, out);
        }
    }

    private static DataOutputStream open(Path file) throws IOException {
        return new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(file)));
    }
}
