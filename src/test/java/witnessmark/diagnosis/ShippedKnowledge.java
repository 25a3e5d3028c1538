package witnessmark.diagnosis;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.casefile.yaml.CaseDocument;
import witnessmark.casefile.yaml.CaseReader;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.KnowledgeFolder;
import witnessmark.knowledge.KnowledgeLoader;

/** The knowledge base and the sample cases as they stand in the source tree. */
public final class ShippedKnowledge {
    private static final Path FOLDER = Path.of("knowledge-base");
    private static final Path SAMPLES = Path.of("sample-cases");

    private ShippedKnowledge() {}

    public static KnowledgeBase load() {
        try {
            return new KnowledgeLoader().load(List.of(KnowledgeFolder.files(FOLDER)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static List<CaseDocument> samples() {
        return cases(SAMPLES);
    }

    public static List<CaseDocument> cases(Path folder) {
        try (Stream<Path> list = Files.list(folder)) {
            return list.filter(f -> f.toString().endsWith(".yaml"))
                    .sorted()
                    .map(f -> new CaseReader().read(f))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
