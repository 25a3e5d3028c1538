package witnessmark.shell;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.core.env.Environment;
import org.springframework.core.io.Resource;
import org.springframework.core.io.support.PathMatchingResourcePatternResolver;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.KnowledgeFile;
import witnessmark.knowledge.KnowledgeLoader;

/** Finds the shipped knowledge on the class path and a site's own folder on disk, and loads both. */
final class KnowledgeFolders {
    private static final String SHIPPED = "knowledge-base/";
    private static final int MOST_FILES = 500;

    private final Environment environment;

    KnowledgeFolders(Environment environment) {
        this.environment = environment;
    }

    KnowledgeBase load() {
        List<List<KnowledgeFile>> layers = new ArrayList<>();
        layers.add(shipped());
        String own = environment.getProperty("witnessmark.knowledge", "");
        if (!own.isEmpty()) {
            layers.add(onDisk(Path.of(own)));
        }
        return new KnowledgeLoader().load(layers);
    }

    private static List<KnowledgeFile> shipped() {
        try {
            List<KnowledgeFile> files = new ArrayList<>();
            Resource[] found =
                    new PathMatchingResourcePatternResolver().getResources("classpath:" + SHIPPED + "**/*.*");
            for (Resource resource : found) {
                String url = resource.getURL().toString();
                String name = url.substring(url.lastIndexOf(SHIPPED) + SHIPPED.length());
                if (isKnowledge(name)) {
                    files.add(new KnowledgeFile(name, resource.getContentAsByteArray()));
                }
            }
            return files;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<KnowledgeFile> onDisk(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new Refused("knowledge folder '" + folder + "' is no folder; give the path of one after --knowledge");
        }
        try (Stream<Path> walk = Files.walk(folder, 4)) {
            List<Path> paths = walk.filter(Files::isRegularFile).sorted().toList();
            refuseRules(folder, paths);
            List<KnowledgeFile> files = new ArrayList<>();
            for (Path path : paths) {
                String name = folder.relativize(path).toString().replace('\\', '/');
                if (isKnowledge(name)) {
                    files.add(new KnowledgeFile(name, Files.readAllBytes(path)));
                }
            }
            if (files.size() > MOST_FILES) {
                throw new Refused("knowledge folder '" + folder + "' holds " + files.size() + " files; at most "
                        + MOST_FILES + " are read");
            }
            return files;
        } catch (IOException e) {
            throw new Refused("knowledge folder '" + folder + "' cannot be read: " + e.getMessage());
        }
    }

    private static boolean isKnowledge(String name) {
        return name.endsWith(".yaml") || (name.startsWith("pages/") && name.endsWith(".md"));
    }

    private static void refuseRules(Path folder, List<Path> paths) {
        paths.stream().filter(p -> p.toString().endsWith(".drl")).findFirst().ifPresent(rule -> {
            throw new Refused("'" + folder.relativize(rule)
                    + "' is a rule file: rules are code and are compiled in when the program is built; put it into"
                    + " knowledge-base/witnessmark/rules and build, or take it out");
        });
    }
}
