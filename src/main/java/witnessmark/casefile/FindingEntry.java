package witnessmark.casefile;

/**
 * What the technician says of one finding.
 *
 * @param finding id of the finding in the knowledge base
 * @param note the technician's own words, empty for none
 */
public record FindingEntry(String finding, FindingState state, String note) {
    public FindingEntry {
        finding = CheckedText.id("finding", finding);
        note = CheckedText.free("finding '" + finding + "', note", note);
    }

    public FindingEntry(String finding, FindingState state) {
        this(finding, state, "");
    }
}
