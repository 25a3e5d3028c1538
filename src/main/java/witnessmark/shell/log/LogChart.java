package witnessmark.shell.log;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import witnessmark.document.chart.ChartLabels;
import witnessmark.document.chart.SpeedMapChart;
import witnessmark.document.chart.TripTimelineChart;
import witnessmark.shell.print.GivenPath;
import witnessmark.shell.print.NewFile;
import witnessmark.shell.print.Refused;
import witnessmark.shell.print.Terminal;
import witnessmark.shell.print.WrongUsage;
import witnessmark.triplog.TripResult;
import witnessmark.triplog.TruckResult;

/**
 * A chart of logs that is wanted as a file.
 *
 * @param out SVG file to write
 * @param replace whether an older one may be overwritten
 */
public record LogChart(Kind kind, Path out, boolean replace) {
    private static final int WIDTH = 900;
    private static final int HEIGHT = 460;

    /** Narrow on a page, so that its letters can be read on a phone. */
    private static final int WIDTH_ON_PAGE = 440;

    private static final int HEIGHT_ON_PAGE = 380;

    enum Kind {
        TIMELINE,
        MAP
    }

    /** The chart that the words ask for; empty if they ask for none. */
    static Optional<LogChart> wanted(String kind, GivenPath out, boolean replace) {
        if (kind.isEmpty() != out.isEmpty()) {
            throw new WrongUsage("--chart and --out belong together: --chart timeline|map --out FILE.svg");
        }
        if (kind.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                switch (kind) {
                    case "timeline" -> new LogChart(Kind.TIMELINE, out.path(), replace);
                    case "map" -> new LogChart(Kind.MAP, out.path(), replace);
                    default -> throw new WrongUsage(
                            "--chart '" + Terminal.harmless(kind) + "' is not known", "timeline or map");
                });
    }

    void write(LogJob.Done done) {
        TruckResult truck = only(done);
        NewFile.write(out, svg(truck).getBytes(StandardCharsets.UTF_8), NewFile.Older.of(replace));
    }

    /** The timeline of the one log read, for a page. */
    public static String timeline(LogJob.Done done, ChartLabels words) {
        return timeline(only(done), words, WIDTH_ON_PAGE, HEIGHT_ON_PAGE);
    }

    private static TruckResult only(LogJob.Done done) {
        if (done.results().size() != 1) {
            throw new Refused(
                    "the logs are of " + done.results().size() + " trucks", "a chart shows one, name its logs");
        }
        return done.results().get(0);
    }

    private String svg(TruckResult truck) {
        return switch (kind) {
            case MAP -> SpeedMapChart.svg(
                    truck.truck() + ": time by road speed and engine speed",
                    truck.speedMap(),
                    truck.table(),
                    truck.trips().get(0).factor().factor(),
                    WIDTH,
                    HEIGHT);
            case TIMELINE -> timeline(truck, ChartLabels.PLAIN, WIDTH, HEIGHT);
        };
    }

    private static String timeline(TruckResult truck, ChartLabels words, int width, int height) {
        if (truck.trips().size() != 1) {
            throw new Refused(truck.trips().size() + " logs were read", "a timeline shows one, name that one");
        }
        TripResult trip = truck.trips().get(0);
        return TripTimelineChart.svg(
                String.valueOf(trip.report().file().getFileName()),
                trip.timeline(),
                trip.events(),
                words,
                width,
                height);
    }
}
