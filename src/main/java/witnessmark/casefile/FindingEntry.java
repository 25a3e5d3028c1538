package witnessmark.casefile;

import java.util.Optional;
import witnessmark.gearbox.LoadPath;

/**
 * What is said of one finding.
 *
 * @param finding id of the finding in the knowledge base
 * @param note the technician's own words, empty for none
 * @param gear the main-box gear it was heard in or seen on, or the two gears of the rail that it is of, as
 *     {@link witnessmark.gearbox.LoadPath} writes them
 * @param toldBy who told it, where nobody of the shop looked; present it was told so, absent it was denied
 */
public record FindingEntry(
        String finding, FindingState state, String note, Optional<Teller> toldBy, Optional<String> gear) {
    public FindingEntry {
        finding = CheckedText.id("finding", finding);
        note = CheckedText.free("finding '" + finding + "', note", note);
        gear = gear.map(FindingEntry::checkedGear);
    }

    /** What the shop itself found. */
    public FindingEntry(String finding, FindingState state, String note) {
        this(finding, state, note, Optional.empty(), Optional.empty());
    }

    public FindingEntry(String finding, FindingState state) {
        this(finding, state, "");
    }

    /** Whether its gear is that of a rail, two gears in one word. */
    public boolean namesRail() {
        return gear.flatMap(LoadPath::parseRail).isPresent();
    }

    private static String checkedGear(String gear) {
        return LoadPath.parse(gear)
                .or(() -> LoadPath.parseRail(gear))
                .orElseThrow(() -> new CaseRefused(
                        "gear '" + gear + "' is none",
                        "give " + LoadPath.WORDS + "; of a rail " + LoadPath.RAIL_WORDS));
    }

    /** Who told or denied it, in words that follow the state; empty where the shop looked itself. */
    public String toldWords() {
        return toldBy.map(t -> (state == FindingState.ABSENT ? "denied by the " : "told by the ")
                        + t.word().replace('-', ' '))
                .map(words -> words.replace("the other", "somebody else"))
                .orElse("");
    }
}
