package witnessmark.inference;

import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * What is known of one case: reports by finding index, and causes whose presence is known, by cause index. A finding
 * without a report weighs nothing. Immutable.
 */
public record Evidence(Map<Integer, Report> reports, Map<Integer, Boolean> knownCauses) {
    private static final Evidence NONE = new Evidence(Map.of(), Map.of());

    public Evidence {
        reports = ordered(reports);
        knownCauses = ordered(knownCauses);
    }

    /** Nothing looked at, nothing known. */
    public static Evidence none() {
        return NONE;
    }

    /** Reports only. */
    public static Evidence of(Map<Integer, Report> reports) {
        return new Evidence(reports, Map.of());
    }

    /** This evidence with one report set, in place of any earlier report on the same finding. */
    public Evidence with(int finding, Report report) {
        var changed = new TreeMap<>(reports);
        changed.put(finding, report);
        return new Evidence(changed, knownCauses);
    }

    /** This evidence without the report on a finding; the same if there is none. */
    public Evidence without(int finding) {
        var changed = new TreeMap<>(reports);
        changed.remove(finding);
        return new Evidence(changed, knownCauses);
    }

    /** This evidence with a cause known to be present or absent. */
    public Evidence withCause(int cause, boolean present) {
        var changed = new TreeMap<>(knownCauses);
        changed.put(cause, present);
        return new Evidence(reports, changed);
    }

    private static <V> SortedMap<Integer, V> ordered(Map<Integer, V> map) {
        return Collections.unmodifiableSortedMap(new TreeMap<>(map));
    }
}
