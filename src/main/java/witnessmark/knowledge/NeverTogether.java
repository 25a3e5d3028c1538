package witnessmark.knowledge;

import java.util.List;

/** Findings that cannot all be present in one gearbox. */
public record NeverTogether(List<String> findings, String why) {}
