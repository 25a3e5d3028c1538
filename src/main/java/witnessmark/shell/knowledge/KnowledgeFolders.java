package witnessmark.shell.knowledge;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.core.env.Environment;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.KnowledgeFile;
import witnessmark.knowledge.KnowledgeFolder;
import witnessmark.knowledge.KnowledgeLoader;
import witnessmark.shell.print.Refused;

/** Finds the shipped knowledge on the class path and a site's own folder on disk, and loads both. */
public final class KnowledgeFolders {
    private static final String COMPILED = "/knowledge-base.compiled";
    /** Of the compiled knowledge, reckoned by the build: at each start it would take a thirtieth of the time. */
    private static final String DIGEST = "/knowledge-base.sha256";

    private static final int MOST_FILES = 500;

    private final Environment environment;

    public KnowledgeFolders(Environment environment) {
        this.environment = environment;
    }

    public KnowledgeBase load() {
        List<List<KnowledgeFile>> layers = new ArrayList<>();
        String own = environment.getProperty("witnessmark.knowledge", "");
        if (!own.isEmpty()) {
            layers.add(onDisk(Path.of(own)));
        }
        try {
            return new KnowledgeLoader().load(ByteBuffer.wrap(shipped(COMPILED)), layers);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What judgements of this run are made with. */
    public MadeWith madeWith() {
        String own = environment.getProperty("witnessmark.knowledge", "");
        return new MadeWith(
                environment.getProperty("witnessmark.version", "unknown"),
                new String(shipped(DIGEST), StandardCharsets.UTF_8),
                own.isEmpty() ? Optional.empty() : Optional.of(digest(onDisk(Path.of(own)))));
    }

    private static byte[] shipped(String name) {
        try (InputStream in = KnowledgeFolders.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the compiled knowledge is missing: build the program anew");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String digest(List<KnowledgeFile> files) {
        StringBuilder sums = new StringBuilder();
        files.stream().sorted(Comparator.comparing(KnowledgeFile::name)).forEach(f -> sums.append(
                        CanonicalText.sha256(f.content()))
                .append("  ")
                .append(f.name())
                .append('\n'));
        return CanonicalText.sha256(sums.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static List<KnowledgeFile> onDisk(Path folder) {
        if (!Files.isDirectory(folder)) {
            throw new Refused(
                    "knowledge folder '" + folder + "' is no folder", "give the path of one after --knowledge");
        }
        try {
            refuseRules(folder);
            List<KnowledgeFile> files = KnowledgeFolder.files(folder);
            if (files.size() > MOST_FILES) {
                throw new Refused(
                        "knowledge folder '" + folder + "' holds " + files.size() + " files",
                        "at most " + MOST_FILES + " are read");
            }
            return files;
        } catch (IOException e) {
            throw new Refused(
                    "knowledge folder '" + folder + "' cannot be read: " + e.getMessage(),
                    "check that you may read it");
        }
    }

    private static void refuseRules(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder, 4)) {
            walk.filter(p -> p.toString().endsWith(".drl")).findFirst().ifPresent(rule -> {
                throw new Refused(
                        "'" + folder.relativize(rule)
                                + "' is a rule file: rules are code and are compiled in when the program is built",
                        "put it into" + " knowledge-base/witnessmark/rules and build, or take it out");
            });
        }
    }
}
