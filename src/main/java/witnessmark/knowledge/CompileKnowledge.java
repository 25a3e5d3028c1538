package witnessmark.knowledge;

import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** The build's step that checks the knowledge base and writes it in its compiled form. */
public final class CompileKnowledge {
    private CompileKnowledge() {}

    /** @param args the knowledge folder and the file to write */
    public static void main(String[] args) throws IOException {
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(Files.newOutputStream(Path.of(args[1]))))) {
            new KnowledgeLoader().compile(KnowledgeFolder.files(Path.of(args[0])), out);
        }
    }
}
