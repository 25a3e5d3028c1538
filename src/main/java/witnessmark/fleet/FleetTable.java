package witnessmark.fleet;

import static witnessmark.fleet.FleetColumn.count;
import static witnessmark.fleet.FleetColumn.number;
import static witnessmark.fleet.FleetColumn.text;

import java.util.List;
import java.util.Locale;

/** The tables that a fleet's logs come to. */
public enum FleetTable {
    /** One row for each act, by truck, file and act. */
    ACTS(
            3,
            List.of(
                    text("truck"),
                    text("file"),
                    count("act"),
                    text("day"),
                    text("kind"),
                    text("start"),
                    number("seconds"),
                    number("road_kmh"),
                    number("engine_rpm"),
                    text("gear_before"),
                    text("gear_after"),
                    number("severity"),
                    text("grade"),
                    number("confidence"),
                    count("first_line"),
                    count("last_line"),
                    text("followed_by"),
                    text("sentence"))),
    /** One record for each truck and day, in that order; what cases take in. */
    DAYS(
            2,
            List.of(
                    text("truck"),
                    text("day"),
                    text("profile"),
                    count("forward_ratios"),
                    text("splitter"),
                    count("logs"),
                    count("acts"),
                    number("km"),
                    number("covered_hours"),
                    number("moving_hours"),
                    number("telling_hours"),
                    number("fitting_hours"),
                    number("coast_km"),
                    number("odometer_from_km"),
                    number("odometer_to_km"),
                    text("times"),
                    text("tallies"),
                    text("files"),
                    text("remarks"),
                    text("doubts"))),
    /** What all logs of a truck say for and against findings, weighed as one witness; by truck. */
    FINDINGS(
            2,
            List.of(
                    text("truck"),
                    text("finding"),
                    text("state"),
                    text("speaks"),
                    count("count"),
                    number("chances"),
                    number("times_likelier"),
                    count("logs"),
                    text("sentence"),
                    text("thin"))),
    /** The logs that count nowhere, and why; by truck and file. */
    NOT_COUNTED(2, List.of(text("truck"), text("file"), text("reason")));

    private final int keys;
    private final List<FleetColumn> columns;

    FleetTable(int keys, List<FleetColumn> columns) {
        this.keys = keys;
        this.columns = columns;
    }

    public List<FleetColumn> columns() {
        return columns;
    }

    /** The first columns, which tell its rows apart and by which it is sorted, texts by their UTF-8 bytes. */
    public List<String> keys() {
        return header().subList(0, keys);
    }

    public List<String> header() {
        return columns.stream().map(FleetColumn::name).toList();
    }

    /** The name of its file, without ending. */
    public String fileName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
