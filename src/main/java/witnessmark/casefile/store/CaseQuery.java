package witnessmark.casefile.store;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import witnessmark.casefile.CaseRefused;
import witnessmark.casefile.FindingState;

/**
 * Which cases to list, those opened last first.
 *
 * @param text words that must all stand in id, title, unit or complaint, in any order and case; empty for any
 * @param findings findings that must all be in these states
 * @param signedOff only closed ones, only open ones, or empty for both
 * @param limit how many to give at most, 1 to 1000
 * @param offset how many to leave out before
 */
public record CaseQuery(
        String text, Map<String, FindingState> findings, Optional<Boolean> signedOff, int limit, long offset) {
    private static final int MOST = 1_000;

    public CaseQuery {
        findings = Collections.unmodifiableMap(new LinkedHashMap<>(findings));
        if (limit < 1 || limit > MOST) {
            throw new CaseRefused("limit: " + limit + " cases in one list", "ask for 1 to " + MOST);
        }
        if (offset < 0) {
            throw new CaseRefused("offset: " + offset + " is below zero", "begin at 0");
        }
    }

    /** Every case, the first twenty. */
    public static CaseQuery all() {
        return new CaseQuery("", Map.of(), Optional.empty(), 20, 0);
    }

    public CaseQuery withText(String words) {
        return new CaseQuery(words, findings, signedOff, limit, offset);
    }

    public CaseQuery withFinding(String finding, FindingState state) {
        Map<String, FindingState> more = new LinkedHashMap<>(findings);
        more.put(finding, state);
        return new CaseQuery(text, more, signedOff, limit, offset);
    }

    public CaseQuery withSignedOff(boolean closed) {
        return new CaseQuery(text, findings, Optional.of(closed), limit, offset);
    }

    public CaseQuery withPage(int count, long from) {
        return new CaseQuery(text, findings, signedOff, count, from);
    }
}
