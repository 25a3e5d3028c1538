package witnessmark.shell.interview;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;
import witnessmark.jobcard.ReadJobCard;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindEntries;
import witnessmark.language.Language;

/**
 * What takes people's words for entries of the program's one knowledge base. Made when first asked for and kept, one for a
 * language: learning all ways to say a thing takes ten times as long as reading a card.
 */
@Component
class UnderstandSpeech {
    private final Map<Language, FindEntries> searches = new ConcurrentHashMap<>();
    private final Map<Language, ReadJobCard> readers = new ConcurrentHashMap<>();

    FindEntries search(KnowledgeBase knowledge) {
        return searches.computeIfAbsent(knowledge.language(), language -> new FindEntries(knowledge));
    }

    ReadJobCard reader(KnowledgeBase knowledge) {
        return readers.computeIfAbsent(knowledge.language(), language -> new ReadJobCard(knowledge));
    }
}
