package witnessmark.triplog.summary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;

/** The timeline and the speed map in plain characters, for a terminal of any kind. */
public final class TerminalCharts {
    private static final String DEPTH = " .:-=+*#%@";
    private static final int KMH_PER_COLUMN = 2;
    private static final int MAP_ROWS = 20;

    private TerminalCharts() {}

    /**
     * Road speed as a curve of the given height, and what was in hand below it: the first letter of each gear's name,
     * {@code n} neutral, {@code s} standing, {@code e} engine off, {@code ?} cannot tell.
     */
    public static List<String> timeline(List<Timeline.Bin> bins, GearTable table, int columns, int height) {
        int width = Math.min(columns, bins.size());
        double[] kmh = new double[width];
        StringBuilder hand = new StringBuilder();
        double most = 1;
        for (int c = 0; c < width; c++) {
            int from = c * bins.size() / width;
            int to = (c + 1) * bins.size() / width;
            for (Timeline.Bin bin : bins.subList(from, to)) {
                kmh[c] = Math.max(kmh[c], bin.highestKmh());
            }
            most = Math.max(most, kmh[c]);
            hand.append(letter(bins.get((from + to) / 2).inHand(), table));
        }
        List<String> lines = new ArrayList<>();
        for (int row = height; row >= 1; row--) {
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%4.0f |", most * row / height));
            for (double value : kmh) {
                line.append(value >= most * (row - 0.5) / height ? '#' : ' ');
            }
            lines.add(line.toString().stripTrailing());
        }
        lines.add("km/h +" + "-".repeat(width));
        lines.add("gear  " + hand);
        return lines;
    }

    private static char letter(int code, GearTable table) {
        return switch (code) {
            case InHand.NEUTRAL -> 'n';
            case InHand.PEDAL_DOWN -> 'p';
            case InHand.STANDING -> 's';
            case InHand.ENGINE_OFF -> 'e';
            case InHand.CANNOT_TELL -> '?';
            default -> table.gear(code).name().isEmpty()
                    ? '#'
                    : table.gear(code).name().charAt(0);
        };
    }

    /** Engine speed upwards, road speed across, darker characters for more time. */
    public static List<String> speedMap(SpeedMap map) {
        int lastColumn = 0;
        double most = 1;
        for (int c = 0; c < map.kmhBins(); c++) {
            for (int r = 0; r < map.rpmBins(); r++) {
                most = Math.max(most, map.seconds(c, r));
                lastColumn = map.seconds(c, r) > 0 ? c : lastColumn;
            }
        }
        int perRow = (map.rpmBins() + MAP_ROWS - 1) / MAP_ROWS;
        List<String> lines = new ArrayList<>();
        for (int row = MAP_ROWS - 1; row >= 0; row--) {
            StringBuilder line =
                    new StringBuilder(String.format(Locale.ROOT, "%5.0f |", row * perRow * SpeedMap.RPM_STEP));
            for (int c = 0; c <= lastColumn; c++) {
                double seconds = 0;
                for (int r = row * perRow; r < Math.min(map.rpmBins(), (row + 1) * perRow); r++) {
                    seconds = Math.max(seconds, map.seconds(c, r));
                }
                line.append(character(seconds, most));
            }
            lines.add(line.toString().stripTrailing());
        }
        lines.add("  rpm +" + "-".repeat(lastColumn + 1));
        lines.add(String.format(
                Locale.ROOT,
                "       0 to %d km/h, %d km/h for each column",
                (lastColumn + 1) * KMH_PER_COLUMN,
                KMH_PER_COLUMN));
        return lines;
    }

    private static char character(double seconds, double most) {
        if (seconds <= 0) {
            return ' ';
        }
        int depth = 1 + (int) (Math.log1p(seconds) / Math.log1p(most) * (DEPTH.length() - 2));
        return DEPTH.charAt(Math.min(DEPTH.length() - 1, depth));
    }
}
