package witnessmark.diagnosis;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.knowledge.KnowledgeBase;

/** Puts titles where a rule's sentence names ids. */
final class Titles {
    private static final Pattern ID = Pattern.compile("\\{(finding|cause|measure):([a-z0-9-]+)}");
    private final KnowledgeBase knowledge;

    Titles(KnowledgeBase knowledge) {
        this.knowledge = knowledge;
    }

    String fill(String sentence) {
        return ID.matcher(sentence)
                .replaceAll(match -> Matcher.quoteReplacement(title(match.group(1), match.group(2))));
    }

    private String title(String kind, String id) {
        return switch (kind) {
            case "finding" -> "\"" + knowledge.findings().get(id).title() + "\"";
            case "cause" -> "\"" + knowledge.causes().get(id).title() + "\"";
            default -> knowledge.measures().get(id).title();
        };
    }
}
