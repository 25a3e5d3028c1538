package witnessmark.shell.interview;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.springframework.stereotype.Component;
import witnessmark.jobcard.ReadJobCard;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.search.FindWords;
import witnessmark.language.Language;

/**
 * What takes people's words for entries of the program's one knowledge base. Made when first asked for and kept, one for a
 * language: learning all ways to say a thing takes ten times as long as reading a card.
 */
@Component
class SpokenWords {
    private final Map<Language, FindWords> searches = new ConcurrentHashMap<>();
    private final Map<Language, ReadJobCard> readers = new ConcurrentHashMap<>();

    FindWords search(KnowledgeBase knowledge) {
        return searches.computeIfAbsent(knowledge.language(), language -> new FindWords(knowledge));
    }

    ReadJobCard reader(KnowledgeBase knowledge) {
        return readers.computeIfAbsent(knowledge.language(), language -> new ReadJobCard(knowledge));
    }
}
