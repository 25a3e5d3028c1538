package witnessmark.knowledge;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** The files of a knowledge folder on disk. */
public final class KnowledgeFolder {
    private static final int DEEPEST = 4;

    private KnowledgeFolder() {}

    /** Every YAML file and page below the folder, by path. */
    public static List<KnowledgeFile> files(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder, DEEPEST)) {
            List<KnowledgeFile> files = new ArrayList<>();
            for (Path path : walk.filter(Files::isRegularFile).sorted().toList()) {
                String name = folder.relativize(path).toString().replace('\\', '/');
                if (name.endsWith(".yaml") || (name.startsWith("pages/") && name.endsWith(".md"))) {
                    files.add(new KnowledgeFile(name, Files.readAllBytes(path)));
                }
            }
            return files;
        }
    }
}
