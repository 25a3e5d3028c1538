package witnessmark.knowledge;

import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import witnessmark.yaml.Fault;
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
        for (List<KnowledgeFile> layer : layers) {
            draft.nextLayer();
            layer.stream()
                    .sorted(Comparator.comparing((KnowledgeFile f) -> !f.name().equals("vocabulary.yaml"))
                            .thenComparing(KnowledgeFile::name))
                    .forEach(file -> read(file, draft));
        }
        if (draft.vocabulary.strengths().isEmpty()) {
            draft.faults.add(new Fault("vocabulary.yaml", 0, 0, "is missing", "the words for chances must be defined"));
        }
        return draft.finish();
    }

    private void read(KnowledgeFile file, Draft draft) {
        String name = file.name();
        if (name.startsWith("pages/") && name.endsWith(".md")) {
            String page = name.substring("pages/".length(), name.length() - ".md".length());
            draft.pages.put(page, new String(file.content(), StandardCharsets.UTF_8));
            return;
        }
        Optional<YamlNode> root = yaml.read(name, file.content(), draft.faults);
        root.ifPresent(node -> readForm(name, node, draft));
    }

    private static void readForm(String name, YamlNode root, Draft draft) {
        String form = name.contains("/") ? name.substring(0, name.indexOf('/')) : name.replace(".yaml", "");
        switch (form) {
            case "vocabulary" -> VocabularyForm.read(root, draft);
            case "access" -> AccessForm.read(root, draft);
            case "measures" -> MeasureForm.read(root, draft);
            case "findings" -> FindingForm.read(root, draft);
            case "causes" -> CauseForm.read(root, draft);
            case "look-alikes" -> LookAlikeForm.read(root, draft);
            case "consistency" -> ConsistencyForm.read(root, draft);
            case "context" -> ContextForm.read(root, draft);
            case "advice" -> AdviceForm.read(root, draft);
            case "cautions" -> CautionForm.read(root, draft);
            case "sources" -> SourceForm.read(root, draft);
            case "synonyms" -> SynonymForm.read(root, draft);
            default -> root.fault(
                    "is no file of the knowledge base", "see the knowledge base's README for names, or move it away");
        }
    }
}
