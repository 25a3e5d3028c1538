package witnessmark.knowledge.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.document.Document;
import org.apache.lucene.document.Field;
import org.apache.lucene.document.StoredField;
import org.apache.lucene.document.TextField;
import org.apache.lucene.index.DirectoryReader;
import org.apache.lucene.index.IndexWriter;
import org.apache.lucene.index.IndexWriterConfig;
import org.apache.lucene.search.BooleanClause;
import org.apache.lucene.search.BooleanQuery;
import org.apache.lucene.search.BoostQuery;
import org.apache.lucene.search.IndexSearcher;
import org.apache.lucene.search.Query;
import org.apache.lucene.search.ScoreDoc;
import org.apache.lucene.store.ByteBuffersDirectory;
import org.apache.lucene.util.QueryBuilder;
import witnessmark.knowledge.Cause;
import witnessmark.knowledge.Finding;
import witnessmark.knowledge.KnowledgeBase;
import witnessmark.knowledge.Wording;

/** Finds causes, findings and pages by plain words, with stems and the trade's synonyms; best fit first. */
public final class FindEntries {
    private static final Map<String, Float> FIELDS = Map.of("title", 3f, "said", 3f, "asked", 1.5f, "text", 0.5f);

    private static final int SLACK = 3;
    private static final float TOGETHER = 10f;

    private final IndexSearcher searcher;
    private final Analyzer queryWords;
    private final Analyzer asTyped = TradeAnalyzer.ofText();

    /** An index of the whole knowledge base, kept in memory. */
    public FindEntries(KnowledgeBase knowledge) {
        queryWords = TradeAnalyzer.ofQuery(knowledge.synonyms());
        try {
            ByteBuffersDirectory memory = new ByteBuffersDirectory();
            IndexWriterConfig settings = new IndexWriterConfig(TradeAnalyzer.ofText());
            try (IndexWriter writer = new IndexWriter(memory, settings)) {
                for (Cause cause : knowledge.causes().values()) {
                    writer.addDocument(
                            document(Hit.Kind.CAUSE, cause.id(), cause.title(), List.of(), "", cause.mechanism()));
                }
                for (Finding finding : knowledge.findings().values()) {
                    writer.addDocument(document(
                            Hit.Kind.FINDING,
                            finding.id(),
                            finding.title(),
                            said(finding, knowledge),
                            finding.ask(),
                            finding.look() + " " + finding.looksLike()));
                }
                for (Map.Entry<String, String> page : knowledge.pages().entrySet()) {
                    writer.addDocument(document(
                            Hit.Kind.PAGE,
                            page.getKey(),
                            page.getKey().replace('-', ' '),
                            List.of(),
                            "",
                            page.getValue()));
                }
            }
            searcher = new IndexSearcher(DirectoryReader.open(memory));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** All ways to say it: those of the finding itself and those of the words files. */
    private static List<String> said(Finding finding, KnowledgeBase knowledge) {
        List<String> all = new ArrayList<>(finding.words());
        knowledge.wordings().stream()
                .filter(w -> w.of() == Wording.Of.FINDING && w.id().equals(finding.id()))
                .forEach(w -> all.addAll(w.said()));
        return all;
    }

    /** What fits the words, best first, at most {@code most}; none where no word is known. */
    public List<Hit> find(String words, int most) {
        BooleanQuery.Builder query = new BooleanQuery.Builder();
        QueryBuilder builder = new QueryBuilder(queryWords);
        FIELDS.forEach((field, boost) -> {
            Query part = builder.createBooleanQuery(field, words);
            if (part != null) {
                query.add(new BoostQuery(part, boost), BooleanClause.Occur.SHOULD);
            }
        });
        // Words said together as people say them mean more than the same words scattered.
        Query together = new QueryBuilder(asTyped).createPhraseQuery("said", words, SLACK);
        if (together != null) {
            query.add(new BoostQuery(together, TOGETHER), BooleanClause.Occur.SHOULD);
        }
        try {
            List<Hit> hits = new ArrayList<>();
            for (ScoreDoc found : searcher.search(query.build(), Math.max(1, most)).scoreDocs) {
                Document document = searcher.storedFields().document(found.doc);
                hits.add(new Hit(
                        Hit.Kind.valueOf(document.get("kind")),
                        document.get("id"),
                        document.get("shown"),
                        found.score));
            }
            return hits;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Document document(
            Hit.Kind kind, String id, String title, List<String> said, String asked, String text) {
        Document document = new Document();
        document.add(new StoredField("kind", kind.name()));
        document.add(new StoredField("id", id));
        document.add(new StoredField("shown", title));
        document.add(new TextField("title", title + " " + id.replace('-', ' '), Field.Store.NO));
        document.add(new TextField("said", String.join(". ", said).toLowerCase(Locale.ROOT), Field.Store.NO));
        document.add(new TextField("asked", asked, Field.Store.NO));
        document.add(new TextField("text", text, Field.Store.NO));
        return document;
    }
}
