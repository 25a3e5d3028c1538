package witnessmark.casefile.store;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseId;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;

/**
 * Which cases to list, those opened last first unless turned round.
 *
 * @param text words that must all stand in id, title, unit or complaint, in any order and case; empty for any. Words of
 *     one or two letters stand where a word begins, longer ones anywhere
 * @param findings findings that must all be in these states
 * @param signedOff only closed ones, only open ones, or empty for both
 * @param limit how many to give at most, 1 to 1000
 * @param offset how many to leave out before, 0 to 10,000; what lies deeper is reached by {@link #after}
 * @param after the case whose successors are listed, or empty to begin at the first
 * @param oldestFirst whether those opened first come first
 */
public record CaseQuery(
        String text,
        Map<String, FindingState> findings,
        Optional<Boolean> signedOff,
        int limit,
        long offset,
        Optional<CaseId> after,
        boolean oldestFirst) {
    private static final int MOST = 1_000;
    /** Each one left out is walked past, which a million cases would make slow. */
    private static final long MOST_LEFT_OUT = 10_000;

    public CaseQuery {
        findings = Collections.unmodifiableMap(new LinkedHashMap<>(findings));
        if (limit < 1 || limit > MOST) {
            throw new CaseRefused("limit: " + limit + " cases in one list", "ask for 1 to " + MOST);
        }
        if (offset < 0) {
            throw new CaseRefused("offset: " + offset + " is below zero", "begin at 0");
        }
        if (offset > MOST_LEFT_OUT) {
            throw new CaseRefused(
                    "offset: " + offset + " cases to leave out",
                    "leave out at most " + MOST_LEFT_OUT + "; go on after the last case seen, or from the other end");
        }
    }

    /** Every case, the first twenty. */
    public static CaseQuery all() {
        return new CaseQuery("", Map.of(), Optional.empty(), 20, 0, Optional.empty(), false);
    }

    public CaseQuery withText(String words) {
        return new CaseQuery(words, findings, signedOff, limit, offset, after, oldestFirst);
    }

    public CaseQuery withFinding(String finding, FindingState state) {
        Map<String, FindingState> more = new LinkedHashMap<>(findings);
        more.put(finding, state);
        return new CaseQuery(text, more, signedOff, limit, offset, after, oldestFirst);
    }

    /** Those that are signed off alone. */
    public CaseQuery closedOnly() {
        return new CaseQuery(text, findings, Optional.of(true), limit, offset, after, oldestFirst);
    }

    /** Those that are not signed off alone. */
    public CaseQuery openOnly() {
        return new CaseQuery(text, findings, Optional.of(false), limit, offset, after, oldestFirst);
    }

    public CaseQuery withPage(int count, long from) {
        return new CaseQuery(text, findings, signedOff, count, from, after, oldestFirst);
    }

    /** The cases that come after this one in the list. */
    public CaseQuery after(CaseId last) {
        return new CaseQuery(text, findings, signedOff, limit, offset, Optional.of(last), oldestFirst);
    }

    /** The list from its other end. */
    public CaseQuery turnedRound() {
        return new CaseQuery(text, findings, signedOff, limit, offset, after, !oldestFirst);
    }
}
