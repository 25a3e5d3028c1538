package witnessmark.knowledge.search;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.lucene.analysis.Analyzer;
import org.apache.lucene.analysis.CharArraySet;
import org.apache.lucene.analysis.LowerCaseFilter;
import org.apache.lucene.analysis.StopFilter;
import org.apache.lucene.analysis.TokenStream;
import org.apache.lucene.analysis.Tokenizer;
import org.apache.lucene.analysis.en.PorterStemFilter;
import org.apache.lucene.analysis.standard.StandardTokenizer;
import org.apache.lucene.analysis.synonym.SynonymGraphFilter;
import org.apache.lucene.analysis.synonym.SynonymMap;
import org.apache.lucene.analysis.tokenattributes.CharTermAttribute;
import org.apache.lucene.util.CharsRef;
import org.apache.lucene.util.CharsRefBuilder;

/** Splits text into stems; for a query it adds the trade's synonyms. Words that carry meaning here are no stop words. */
final class TradeAnalyzer extends Analyzer {
    private static final CharArraySet STOP = new CharArraySet(
            List.of(
                    "a", "an", "and", "are", "as", "be", "by", "for", "from", "has", "have", "is", "it", "its", "of",
                    "or", "so", "that", "the", "then", "this", "to", "was", "were", "when", "with", "does", "do"),
            true);

    private final SynonymMap synonyms;

    private TradeAnalyzer(SynonymMap synonyms) {
        this.synonyms = synonyms;
    }

    /** For what is searched. */
    static TradeAnalyzer ofText() {
        return new TradeAnalyzer(emptyMap());
    }

    /** For what is asked, with the words of each group taken for one another. */
    static TradeAnalyzer ofQuery(List<List<String>> groups) {
        return new TradeAnalyzer(map(groups));
    }

    @Override
    protected TokenStreamComponents createComponents(String fieldName) {
        Tokenizer source = new StandardTokenizer();
        TokenStream stems = stems(source);
        boolean expands = synonyms.fst != null;
        return new TokenStreamComponents(source, expands ? new SynonymGraphFilter(stems, synonyms, true) : stems);
    }

    private static TokenStream stems(TokenStream source) {
        return new PorterStemFilter(new StopFilter(new LowerCaseFilter(source), STOP));
    }

    private static SynonymMap emptyMap() {
        try {
            return new SynonymMap.Builder(true).build();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Each expression of a group stands for each other one; both are stemmed as the text is. */
    private static SynonymMap map(List<List<String>> groups) {
        SynonymMap.Builder builder = new SynonymMap.Builder(true);
        for (List<String> group : groups) {
            List<CharsRef> stemmed = group.stream()
                    .map(TradeAnalyzer::stemmed)
                    .filter(w -> w.length > 0)
                    .toList();
            for (CharsRef from : stemmed) {
                stemmed.stream().filter(to -> !to.equals(from)).forEach(to -> builder.add(from, to, true));
            }
        }
        try {
            return builder.build();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static CharsRef stemmed(String expression) {
        CharsRefBuilder words = new CharsRefBuilder();
        StandardTokenizer source = new StandardTokenizer();
        source.setReader(new java.io.StringReader(expression));
        try (TokenStream stems = stems(source)) {
            CharTermAttribute term = stems.addAttribute(CharTermAttribute.class);
            stems.reset();
            while (stems.incrementToken()) {
                if (words.length() > 0) {
                    words.append(SynonymMap.WORD_SEPARATOR);
                }
                words.append(term.buffer(), 0, term.length());
            }
            stems.end();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return words.toCharsRef();
    }
}
