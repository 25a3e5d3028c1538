package witnessmark.inference;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is known of one case: reports by finding index, and causes whose presence is known, by cause index. A finding
 * without a report weighs nothing. Immutable.
 */
public record GivenEvidence(Map<Integer, Report> reports, Map<Integer, Boolean> knownCauses) {
    private static final GivenEvidence NONE = new GivenEvidence(Map.of(), Map.of());

    public GivenEvidence {
        reports = ordered(reports);
        knownCauses = ordered(knownCauses);
    }

    /** Nothing looked at, nothing known. */
    public static GivenEvidence none() {
        return NONE;
    }

    /** Reports only. */
    public static GivenEvidence of(Map<Integer, Report> reports) {
        return new GivenEvidence(reports, Map.of());
    }

    /** This evidence with one report set, in place of any earlier report on the same finding. */
    public GivenEvidence with(int finding, Report report) {
        var changed = new TreeMap<>(reports);
        changed.put(finding, report);
        return new GivenEvidence(changed, knownCauses);
    }

    /** This evidence without the report on a finding; the same if there is none. */
    public GivenEvidence without(int finding) {
        var changed = new TreeMap<>(reports);
        changed.remove(finding);
        return new GivenEvidence(changed, knownCauses);
    }

    /** This evidence with a cause known to be present. */
    public GivenEvidence withPresent(int cause) {
        return withCause(cause, true);
    }

    /** This evidence with a cause known to be absent. */
    public GivenEvidence withAbsent(int cause) {
        return withCause(cause, false);
    }

    /** This evidence with a cause known to be present or absent. */
    public GivenEvidence withCause(int cause, boolean present) {
        var changed = new TreeMap<>(knownCauses);
        changed.put(cause, present);
        return new GivenEvidence(reports, changed);
    }

    private static <V> SortedMap<Integer, V> ordered(Map<Integer, V> map) {
        return Collections.unmodifiableSortedMap(new TreeMap<>(map));
    }
}
