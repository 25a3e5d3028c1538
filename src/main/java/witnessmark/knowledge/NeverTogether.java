package witnessmark.knowledge;

import java.util.List;

/**
 * Findings that cannot all be present in one gearbox.
 *
 * @param twoSources whether each comes from a source of its own (two papers, a paper and a gauge), so that one is worth
 *     asking for although the other excludes it: sources can be wrong, and only the second shows it
 */
public record NeverTogether(List<String> findings, boolean twoSources, String why) {}
