package witnessmark.casefile;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.gearbox.EnumWord;
import witnessmark.triplog.evidence.LogRecord;

/**
 * A result kept with the case together with what it came from, so that another can work it out again.
 *
 * @param id names the result within the case
 * @param kind how it was found
 * @param summary the result in one or two plain sentences, in English
 * @param formula the formula or method and where it comes from, empty where the summary says it
 * @param inputs what went in: name to value with its unit, in order
 * @param file the file it was read from, by hash; empty for none
 * @param findings findings that follow, each with its state; empty where nothing follows
 * @param likelihoods for findings that follow only more or less surely, how well the result fits either way; a finding
 *     without one follows outright
 * @param record what the logs held, so that all logs of a case can be weighed as one; empty for other results and for
 *     logs stored before counts were kept. Findings and likelihoods beside it tell what these logs say alone
 * @param reckoned by finding the figure that decides about it, so that the result can be said in the reader's language;
 *     empty for other results and for those stored before figures were kept
 */
public record Evidence(
        String id,
        Kind kind,
        String summary,
        String formula,
        Map<String, String> inputs,
        Optional<SourceFile> file,
        Map<String, FindingState> findings,
        Map<String, Likelihood> likelihoods,
        Optional<LogRecord> record,
        Map<String, Reckoned> reckoned) {

    /** How a result was found. */
    public enum Kind {
        COMPUTED,
        LOGGED;

        public String word() {
            return EnumWord.of(this);
        }
    }

    /** A file that was read, known again by its hash. */
    public record SourceFile(String name, String sha256) {
        public SourceFile {
            name = CheckedText.filledLine("file", name);
            sha256 = CheckedText.sha256("sha256", sha256);
        }
    }

    public Evidence {
        id = CheckedText.id("evidence", id);
        summary = CheckedText.free("evidence '" + id + "', summary", summary);
        formula = CheckedText.free("evidence '" + id + "', formula", formula);
        inputs = checked(inputs);
        findings.keySet().forEach(finding -> CheckedText.id("finding", finding));
        findings = Collections.unmodifiableMap(new LinkedHashMap<>(findings));
        for (String finding : likelihoods.keySet()) {
            if (!findings.containsKey(finding)) {
                throw new CaseRefused(
                        "evidence '" + id + "': a likelihood for '" + finding + "', which is not among its findings",
                        "name the finding with its state, or take the likelihood out");
            }
        }
        likelihoods = Collections.unmodifiableMap(new LinkedHashMap<>(likelihoods));
        if (record.isPresent() && kind != Kind.LOGGED) {
            throw new CaseRefused(
                    "evidence '" + id + "': the record of a log in a result that is " + kind.word(),
                    "take record out, or write kind: logged");
        }
        record.ifPresent(r -> r.tallies().keySet().forEach(finding -> CheckedText.id("finding", finding)));
        record = record.map(r -> r.with(r.doubts().stream()
                .map(doubt -> CheckedText.filledLine("doubts", doubt))
                .toList()));
        if (!reckoned.isEmpty() && kind != Kind.COMPUTED) {
            throw new CaseRefused(
                    "evidence '" + id + "': figures reckoned in a result that is " + kind.word(),
                    "take reckoned out, or write kind: computed");
        }
        reckoned.keySet().forEach(finding -> CheckedText.id("finding", finding));
        reckoned = Collections.unmodifiableMap(new LinkedHashMap<>(reckoned));
    }

    /** A result without figures reckoned. */
    public Evidence(
            String id,
            Kind kind,
            String summary,
            String formula,
            Map<String, String> inputs,
            Optional<SourceFile> file,
            Map<String, FindingState> findings,
            Map<String, Likelihood> likelihoods,
            Optional<LogRecord> record) {
        this(id, kind, summary, formula, inputs, file, findings, likelihoods, record, Map.of());
    }

    /** A result without counts of logs. */
    public Evidence(
            String id,
            Kind kind,
            String summary,
            String formula,
            Map<String, String> inputs,
            Optional<SourceFile> file,
            Map<String, FindingState> findings,
            Map<String, Likelihood> likelihoods) {
        this(id, kind, summary, formula, inputs, file, findings, likelihoods, Optional.empty());
    }

    /** A result from which its findings follow outright. */
    public Evidence(
            String id,
            Kind kind,
            String summary,
            String formula,
            Map<String, String> inputs,
            Optional<SourceFile> file,
            Map<String, FindingState> findings) {
        this(id, kind, summary, formula, inputs, file, findings, Map.of());
    }

    /** The same result as if these findings did not follow from it. */
    public Evidence without(Collection<String> gone) {
        Map<String, FindingState> left = new LinkedHashMap<>(findings);
        Map<String, Likelihood> fits = new LinkedHashMap<>(likelihoods);
        left.keySet().removeAll(gone);
        fits.keySet().removeAll(gone);
        return new Evidence(id, kind, summary, formula, inputs, file, left, fits, record, reckoned);
    }

    /** The findings it speaks of: those that follow, and those that its logs were looked through for. */
    public Set<String> spokenOf() {
        Set<String> all = new LinkedHashSet<>(findings.keySet());
        record.ifPresent(r -> all.addAll(r.tallies().keySet()));
        return all;
    }

    private static Map<String, String> checked(Map<String, String> inputs) {
        Map<String, String> plain = new LinkedHashMap<>();
        inputs.forEach((name, value) -> plain.put(CheckedText.id("input", name), CheckedText.line(name, value)));
        return Collections.unmodifiableMap(plain);
    }
}
