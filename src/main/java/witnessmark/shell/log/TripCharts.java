package witnessmark.shell.log;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.gear.GearTable;
import witnessmark.triplog.gear.InHand;
import witnessmark.triplog.summary.SpeedMap;
import witnessmark.triplog.summary.Timeline;

/** The timeline and the speed map in plain characters, for a terminal of any kind. */
public final class TripCharts {
    private static final String DEPTH = " .:-=+*#%@";
    private static final int MAP_ROWS = 20;

    private TripCharts() {}

    /**
     * Road speed as a curve of the given height, and what was in hand below it: for a gear the last letter of its number
     * ({@code 0} for 10), for the rest the letters that the last line explains.
     */
    public static List<String> timeline(List<Timeline.Bin> bins, GearTable table, int columns, int height, Unit speed) {
        int width = Math.min(columns, bins.size());
        double[] speeds = new double[width];
        StringBuilder hand = new StringBuilder();
        double most = 1;
        for (int c = 0; c < width; c++) {
            int from = c * bins.size() / width;
            int to = (c + 1) * bins.size() / width;
            for (Timeline.Bin bin : bins.subList(from, to)) {
                speeds[c] = Math.max(speeds[c], Unit.KILOMETRE_PER_HOUR.convert(bin.highestKmh(), speed));
            }
            most = Math.max(most, speeds[c]);
            hand.append(letter(bins.get((from + to) / 2).inHand(), table));
        }
        List<String> lines = new ArrayList<>();
        for (int row = height; row >= 1; row--) {
            StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%4.0f |", most * row / height));
            for (double value : speeds) {
                line.append(value >= most * (row - 0.5) / height ? '#' : ' ');
            }
            lines.add(line.toString().stripTrailing());
        }
        lines.add(String.format("%-5s+", speed.symbol()) + "-".repeat(width));
        lines.add("gear  " + hand);
        lines.add("      by the last figure of its number; n neutral, p pedal down, s standing,");
        lines.add("      e engine stopped, ? cannot tell");
        return lines;
    }

    private static char letter(int code, GearTable table) {
        return switch (code) {
            case InHand.NEUTRAL -> 'n';
            case InHand.PEDAL_DOWN -> 'p';
            case InHand.STANDING -> 's';
            case InHand.ENGINE_OFF -> 'e';
            case InHand.CANNOT_TELL -> '?';
            default -> gearLetter(table.gear(code).name());
        };
    }

    private static char gearLetter(String name) {
        String number = name.replaceFirst("^(\\d+).*", "$1");
        boolean counted = !number.isEmpty() && Character.isDigit(number.charAt(0));
        return number.isEmpty() ? '#' : number.charAt(counted ? number.length() - 1 : 0);
    }

    /** Engine speed upwards, road speed across, darker characters for more time; at most {@code columns} of the map. */
    public static List<String> speedMap(SpeedMap map, int columns, Unit speed) {
        int last = lastColumn(map);
        int join = Math.max(1, (last + columns) / columns);
        int top = highestRow(map);
        int perRow = Math.max(1, (top + MAP_ROWS) / MAP_ROWS);
        double[][] cells = cells(map, join, last / join + 1, perRow, top / perRow + 1);
        double most = Arrays.stream(cells).flatMapToDouble(Arrays::stream).reduce(1, Math::max);
        List<String> lines = new ArrayList<>();
        for (int row = top / perRow; row >= 0; row--) {
            StringBuilder line =
                    new StringBuilder(String.format(Locale.ROOT, "%5.0f |", row * perRow * SpeedMap.RPM_STEP));
            for (double[] column : cells) {
                line.append(character(column[row], most));
            }
            lines.add(line.toString().stripTrailing());
        }
        lines.add("  rpm +" + "-".repeat(cells.length));
        lines.add(String.format(
                Locale.ROOT,
                "       0 to %1$.0f %3$s, %2$.3g %3$s for each column",
                Unit.KILOMETRE_PER_HOUR.convert(cells.length * join * SpeedMap.KMH_STEP, speed),
                Unit.KILOMETRE_PER_HOUR.convert(join * SpeedMap.KMH_STEP, speed),
                speed.symbol()));
        return lines;
    }

    private static double[][] cells(SpeedMap map, int join, int columns, int perRow, int rows) {
        double[][] cells = new double[columns][rows];
        for (int c = 0; c < map.kmhBins(); c++) {
            for (int r = 0; r < map.rpmBins(); r++) {
                double seconds = map.seconds(c, r);
                if (seconds > 0) {
                    cells[c / join][r / perRow] = Math.max(cells[c / join][r / perRow], seconds);
                }
            }
        }
        return cells;
    }

    private static int lastColumn(SpeedMap map) {
        int last = 0;
        for (int c = 0; c < map.kmhBins(); c++) {
            for (int r = 0; r < map.rpmBins(); r++) {
                last = map.seconds(c, r) > 0 ? c : last;
            }
        }
        return last;
    }

    private static int highestRow(SpeedMap map) {
        int highest = 0;
        for (int c = 0; c < map.kmhBins(); c++) {
            for (int r = 0; r < map.rpmBins(); r++) {
                highest = map.seconds(c, r) > 0 ? Math.max(highest, r) : highest;
            }
        }
        return highest;
    }

    private static char character(double seconds, double most) {
        if (seconds <= 0) {
            return ' ';
        }
        int depth = 1 + (int) (Math.log1p(seconds) / Math.log1p(most) * (DEPTH.length() - 2));
        return DEPTH.charAt(Math.min(DEPTH.length() - 1, depth));
    }
}
