package witnessmark.knowledge;

import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import witnessmark.yaml.CompiledYaml;
import witnessmark.yaml.Fault;
import witnessmark.yaml.Faults;
import witnessmark.yaml.FaultyInput;
import witnessmark.yaml.YamlNode;
import witnessmark.yaml.YamlReader;

/** Reads knowledge folders laid one on top of the other into one checked knowledge base. */
public final class KnowledgeLoader {
    private static final int MOST_BYTES = 4_000_000;

    private final YamlReader yaml = new YamlReader(MOST_BYTES);

    /**
     * The knowledge of the first layer with each later one laid on top.
     *
     * @throws FaultyInput with every fault of every file
     */
    public KnowledgeBase load(List<List<KnowledgeFile>> layers) {
        Draft draft = new Draft();
        layers.forEach(layer -> readLayer(layer, draft));
        return finish(draft);
    }

    /**
     * The compiled knowledge with each layer of files laid on top.
     *
     * @throws FaultyInput with every fault of every file
     */
    public KnowledgeBase load(ByteBuffer compiled, List<List<KnowledgeFile>> layers) throws IOException {
        Draft draft = new Draft();
        draft.nextLayer();
        CompiledYaml.read(compiled, draft.faults).forEach(d -> readForm(d.file(), d.root(), draft));
        int pages = compiled.getInt();
        for (int i = 0; i < pages; i++) {
            draft.pages.put(CompiledYaml.text(compiled), CompiledYaml.text(compiled));
        }
        layers.forEach(layer -> readLayer(layer, draft));
        return finish(draft);
    }

    /** Writes the files of one checked layer in the form that {@link #load(ByteBuffer, List)} reads. */
    public void compile(List<KnowledgeFile> layer, DataOutputStream out) throws IOException {
        load(List.of(layer));
        List<CompiledYaml.Document> documents = new ArrayList<>();
        for (KnowledgeFile file : sorted(layer)) {
            if (!isPage(file.name())) {
                yaml.read(file.name(), file.content(), new Faults())
                        .ifPresent(root -> documents.add(new CompiledYaml.Document(file.name(), root)));
            }
        }
        CompiledYaml.write(documents, out);
        List<KnowledgeFile> pages =
                sorted(layer).stream().filter(f -> isPage(f.name())).toList();
        out.writeInt(pages.size());
        for (KnowledgeFile page : pages) {
            write(pageName(page.name()).getBytes(StandardCharsets.UTF_8), out);
            write(page.content(), out);
        }
    }

    private static void write(byte[] text, DataOutputStream out) throws IOException {
        out.writeInt(text.length);
        out.write(text);
    }

    /**
     * Writes the rows by which logs are weighed, out of one checked layer, apart from the rest: whoever weighs logs needs
     * nothing else of the knowledge.
     */
    void compileLogFindings(List<KnowledgeFile> layer, DataOutputStream out) throws IOException {
        List<CompiledYaml.Document> rows = new ArrayList<>();
        layer.stream().filter(file -> file.name().equals(LogFindingForm.FILE)).forEach(file -> yaml.read(
                        file.name(), file.content(), new Faults())
                .ifPresent(root -> rows.add(new CompiledYaml.Document(file.name(), root))));
        CompiledYaml.write(rows, out);
    }

    private static KnowledgeBase finish(Draft draft) {
        if (draft.vocabulary.strengths().isEmpty()) {
            draft.faults.add(new Fault("vocabulary.yaml", 0, 0, "is missing", "the words for chances must be defined"));
        }
        return draft.finish();
    }

    private void readLayer(List<KnowledgeFile> layer, Draft draft) {
        draft.nextLayer();
        for (KnowledgeFile file : sorted(layer)) {
            if (isPage(file.name())) {
                draft.pages.put(pageName(file.name()), new String(file.content(), StandardCharsets.UTF_8));
            } else {
                yaml.read(file.name(), file.content(), draft.faults)
                        .ifPresent(root -> readForm(file.name(), root, draft));
            }
        }
    }

    /** The vocabulary first, since the others are written in its words. */
    private static List<KnowledgeFile> sorted(List<KnowledgeFile> layer) {
        return layer.stream()
                .sorted(Comparator.comparing((KnowledgeFile f) -> !f.name().equals("vocabulary.yaml"))
                        .thenComparing(KnowledgeFile::name))
                .toList();
    }

    private static boolean isPage(String name) {
        return name.startsWith("pages/") && name.endsWith(".md");
    }

    private static String pageName(String name) {
        return name.substring("pages/".length(), name.length() - ".md".length());
    }

    private static void readForm(String name, YamlNode root, Draft draft) {
        String form = name.contains("/") ? name.substring(0, name.indexOf('/')) : name.replace(".yaml", "");
        switch (form) {
            case "vocabulary" -> VocabularyForm.read(root, draft);
            case "access" -> AccessForm.read(root, draft);
            case "parts" -> PartForm.read(root, draft);
            case "measures" -> MeasureForm.read(root, draft);
            case "findings" -> FindingForm.read(root, draft);
            case "causes" -> CauseForm.read(root, draft);
            case "look-alikes" -> LookAlikeForm.read(root, draft);
            case "consistency" -> ConsistencyForm.read(root, draft);
            case "one-fact" -> OneFactForm.read(root, draft);
            case "must-look" -> MustLookForm.read(root, draft);
            case "log-findings" -> LogFindingForm.read(root, draft);
            case "before" -> BeforeForm.read(root, draft);
            case "retired" -> RetiredForm.read(root, draft);
            case "context" -> ContextForm.read(root, draft);
            case "advice" -> AdviceForm.read(root, draft);
            case "cautions" -> CautionForm.read(root, draft);
            case "sources" -> SourceForm.read(root, draft);
            case "es" -> SpanishForm.read(root, draft);
            case "words" -> WordingForm.read(root, draft);
            case "synonyms" -> SynonymForm.read(root, draft);
            default -> root.fault(
                    "is no file of the knowledge base", "see the knowledge base's README for names, or move it away");
        }
    }
}
