package witnessmark.shell.truck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.gearbox.formula.Formula;
import witnessmark.shell.CommandLine;

/**
 * What stands on the screen, worked out again from what stands on the screen: a reader with a pocket calculator comes to the
 * printed figures, within what the rounding of the printed letters can carry. Layouts that no example has.
 */
class PrintedTextTest {
    private static final double KM_PER_MILE = 1.609344;
    private static final String NUMBER = "(-?[0-9.]+)";
    private static final Path LAYOUTS = Path.of("src/test/resources/witnessmark/fresh-trucks");

    @TempDir
    static Path folder;

    private static CommandLine shell;

    @BeforeAll
    static void open() {
        shell = new CommandLine(folder.resolve("store"));
    }

    @AfterAll
    static void close() {
        shell.close();
    }

    static List<Path> layouts() {
        return Stream.of("nine", "ten", "thirteen", "eighteen", "under", "deep", "plain-six", "plain-split")
                .map(name -> LAYOUTS.resolve("fresh-" + name + ".yaml"))
                .toList();
    }

    /** The layouts that have a range to shift. */
    static List<Path> withRange() {
        return layouts().stream()
                .filter(path -> !path.toString().contains("plain"))
                .toList();
    }

    private static String screen(String line) {
        CommandLine.Run run = shell.type(line);
        assertThat(run.messages()).isEmpty();
        return run.out();
    }

    /** The letters that stand below the formulas, each with its number as it is printed. */
    private static Map<String, Double> letters(String screen) {
        Map<String, Double> letters = new HashMap<>();
        Pattern letter =
                Pattern.compile("(\\w+): .*?, " + NUMBER + "(?: [^ ,]+(?: \\([^)]*\\))?)?(?:$|, given|, assumed)");
        items(screen.substring(screen.indexOf("What the letters stand for"))).forEach(item -> {
            Matcher found = letter.matcher(item);
            if (found.lookingAt()) {
                letters.put(found.group(1), Double.parseDouble(found.group(2)));
            }
        });
        return letters;
    }

    /** Items of a list, their lines put together again. */
    private static List<String> items(String text) {
        List<String> items = new ArrayList<>();
        text.lines().forEach(line -> {
            if (line.startsWith("  - ")) {
                items.add(line.substring(4));
            } else if (line.startsWith("    ") && !items.isEmpty()) {
                items.add(items.remove(items.size() - 1) + " " + line.strip());
            }
        });
        return items;
    }

    /** Half a unit of the last digit that a printed number shows, whole engine speeds among them. */
    private static double half(double printed) {
        String digits = Double.toString(Math.abs(printed));
        double whole = Math.abs(printed) >= 1000 ? Math.pow(10, Math.floor(Math.log10(Math.abs(printed))) - 2) : 1;
        return digits.endsWith(".0") ? whole / 2 : Math.pow(10, digits.indexOf('.') + 1 - digits.length()) / 2;
    }

    /** How far the rounding of each letter can carry the figure. */
    private static double carried(Map<String, Double> letters, Function<Map<String, Double>, Double> work) {
        double plain = work.apply(letters);
        double sum = 0;
        for (String letter : letters.keySet()) {
            Map<String, Double> moved = new HashMap<>(letters);
            moved.merge(letter, half(letters.get(letter)), Double::sum);
            double other = work.apply(moved);
            sum += Double.isFinite(other) ? Math.abs(other - plain) : 0;
        }
        return 1.01 * sum + 1e-9 * Math.abs(plain);
    }

    private record Printed(String name, double value, String formula) {}

    /** A figure and, indented below it, its formula. */
    private static List<Printed> figures(String screen) {
        Map<String, StringBuilder> formulas = new LinkedHashMap<>();
        Map<String, Double> values = new HashMap<>();
        Pattern row = Pattern.compile("  (\\S.*?)  +" + NUMBER + "(?: .*)?");
        String[] last = {""};
        screen.substring(screen.indexOf("\nFigures\n") + 9, screen.indexOf("\nWhat the letters"))
                .lines()
                .forEach(line -> {
                    Matcher found = row.matcher(line);
                    if (line.startsWith("      ") && !line.startsWith(" ".repeat(30))) {
                        formulas.get(last[0]).append(line.strip()).append(' ');
                    } else if (found.matches()) {
                        last[0] = found.group(1);
                        formulas.put(last[0], new StringBuilder());
                        values.put(last[0], Double.parseDouble(found.group(2)));
                    }
                });
        return formulas.entrySet().stream()
                .map(entry -> new Printed(
                        entry.getKey(),
                        values.get(entry.getKey()),
                        entry.getValue().toString().strip()))
                .toList();
    }

    private static void holds(String screen) {
        Map<String, Double> letters = letters(screen);
        List<Printed> figures = figures(screen);
        figures.forEach(
                figure -> Formula.of(figure.formula()).letter().ifPresent(own -> letters.put(own, figure.value())));
        assertThat(figures).isNotEmpty();
        for (Printed figure : figures) {
            Formula formula = Formula.of(figure.formula());
            assertThat(formula.value(letters))
                    .as(figure.toString())
                    .isCloseTo(figure.value(), within(carried(letters, formula::value) + half(figure.value())));
        }
    }

    @ParameterizedTest
    @MethodSource("withRange")
    void of_range_shifts(Path layout) {
        List<String> low = gears(layout, "low");
        List<String> high = gears(layout, "high");
        for (String how :
                List.of("", " --lever home", " --lever home --clutch down --rolling-back", " --lever neutral")) {
            holds(screen("truck shift " + layout + " --from " + high.get(0) + " --to " + low.get(low.size() - 1)
                    + " --speed 23 --formulas" + how));
            holds(screen("truck shift " + layout + " --from " + low.get(0) + " --to " + high.get(high.size() - 1)
                    + " --speed 7 --formulas" + how));
        }
    }

    /** Gear names as the table of speeds has them; the ceilings name those of low range. */
    private static List<String> gears(Path layout, String range) {
        String screen = screen("truck speeds " + layout);
        List<String> low = all(">> (\\S+) +never above", screen).stream()
                .map(found -> found.group(1))
                .toList();
        return all("(?m)^  (\\d\\S*) +" + NUMBER + " ", screen).stream()
                .map(found -> found.group(1))
                .filter(gear -> low.contains(gear) == range.equals("low"))
                .toList();
    }

    private static List<MatchResult> all(String pattern, String text) {
        return Pattern.compile(pattern).matcher(text).results().toList();
    }

    @ParameterizedTest
    @MethodSource("layouts")
    void of_starts_and_rolling(Path layout) {
        String gear = gears(layout, layout.toString().contains("plain") ? "high" : "low")
                .get(0);
        holds(screen("truck start " + layout + " --gear " + gear + " --grade 12 --formulas"));
        holds(screen("truck start " + layout + " --gear " + gear + " --mass 29000 --grade -4 --formulas"));
        holds(screen("truck tow " + layout + " --speed 87 --distance 131 --formulas"));
        holds(screen("truck coast " + layout + " --speed 52 --minutes 7 --formulas"));
    }

    /** Speed 60 n / (ratio, axle, turns in a km), its limit rounded down, and what a step takes: from the profile's numbers. */
    @ParameterizedTest
    @MethodSource("layouts")
    void of_speeds_ceilings_and_steps(Path layout) {
        String screen = screen("truck speeds " + layout + " --units both");
        Map<String, Double> letters = letters(screen("truck plan " + layout + " --formulas"));
        double turns = letters.get("i_axle") * letters.get("N_km");
        List<Double> rpms = all(
                        NUMBER,
                        screen.lines()
                                .filter(line -> line.startsWith("  gear   ratio"))
                                .findFirst()
                                .orElseThrow())
                .stream()
                .map(found -> Double.parseDouble(found.group(1)))
                .toList();
        Map<String, Double> ratios = new HashMap<>();
        all("(?m)^  (\\S+) +([0-9]+\\.[0-9]{3}) +([0-9.]+ .*)$", screen).forEach(row -> {
            ratios.put(row.group(1), Double.parseDouble(row.group(2)));
            List<MatchResult> cells = all(NUMBER + " \\(" + NUMBER + "\\)", row.group(3));
            assertThat(cells).hasSameSizeAs(rpms);
            for (int i = 0; i < rpms.size(); i++) {
                double kmh = 60 * rpms.get(i) / (ratios.get(row.group(1)) * turns);
                assertThat(Double.parseDouble(cells.get(i).group(1))).isCloseTo(kmh, within(0.051 + 3e-4 * kmh));
                assertThat(Double.parseDouble(cells.get(i).group(2)))
                        .isCloseTo(kmh / KM_PER_MILE, within(0.051 + 3e-4 * kmh));
            }
        });
        double governed = letters.get("n_governed");
        all(">> (\\S+) +never above " + NUMBER + " km/h \\(" + NUMBER + " mph\\)", screen)
                .forEach(row -> {
                    double kmh = 60 * governed / (ratios.get(row.group(1)) * turns);
                    below(Double.parseDouble(row.group(2)), kmh);
                    below(Double.parseDouble(row.group(3)), kmh / KM_PER_MILE);
                });
        List<MatchResult> steps = all("(?m)^  (\\S+) to (\\S+) +([0-9.]+) +([0-9]+) +([0-9.]+) % ", screen);
        assertThat(steps).hasSizeGreaterThanOrEqualTo(ratios.size() / 2);
        steps.forEach(row -> {
            double step = ratios.get(row.group(1)) / ratios.get(row.group(2));
            assertThat(Double.parseDouble(row.group(3))).isCloseTo(step, within(5e-4 + 1e-3 * step));
            assertThat(Double.parseDouble(row.group(4))).isCloseTo(governed * (1 - 1 / step), within(1.5));
            assertThat(Double.parseDouble(row.group(5))).isCloseTo(100 * (1 - 1 / step), within(0.12));
        });
    }

    /** A ceiling is never over the speed itself, and less than a unit of its last digit under it. */
    private static void below(double printed, double exact) {
        assertThat(printed).isLessThanOrEqualTo(exact * (1 + 3e-4));
        assertThat(exact - printed).isLessThan((exact < 2 ? 0.1 : 1) + 3e-4 * exact);
    }

    @ParameterizedTest
    @MethodSource("layouts")
    void of_plans(Path layout) {
        for (String road : List.of("", " --grade 2.5", " --mass empty --grade 0", " --grade 0 --careful")) {
            String screen = screen("truck plan " + layout + road + " --units metric --formulas");
            Map<String, Double> letters = letters(screen);
            Map<String, Double> ratios = ratios(layout);
            double turns = letters.get("i_axle") * letters.get("N_km");
            Formula limit = Formula.of(item(screen, "limit: "));
            Map<String, Double> torque = new HashMap<>();
            all("n_torque for gear (\\S+): " + NUMBER, screen)
                    .forEach(found -> torque.put(found.group(1), Double.parseDouble(found.group(2))));
            List<MatchResult> rows = all(
                    "(?m)^  (\\S+)-(\\S+) +(\\d+)  ([0-9.]+) km/h +(\\d+) +(\\d+)([* ]) +([0-9.]+) km/h +(\\d+)$",
                    screen);
            assertThat(rows).isNotEmpty();
            double sum = 0;
            for (MatchResult row : rows) {
                double from = ratios.get(row.group(1));
                double to = ratios.get(row.group(2));
                double at = Double.parseDouble(row.group(3));
                Map<String, Double> here = new HashMap<>(letters);
                here.put("i_to", to);
                here.put("n_torque", torque.get(row.group(2)));
                double least = limit.value(here);
                assertThat(Double.parseDouble(row.group(6))).as(row.group()).isCloseTo(least, within(1.5));
                assertThat(at)
                        .as(row.group())
                        .isGreaterThanOrEqualTo(
                                Math.min(letters.get("n_governed"), least * from / to) * (1 - 1e-3) - 1);
                assertThat(Double.parseDouble(row.group(4)))
                        .isCloseTo(60 * at / (from * turns), speed(at / from / turns));
                assertThat(Double.parseDouble(row.group(5))).isCloseTo(at * to / from, ofRatios(at));
                assertThat(Double.parseDouble(row.group(9)))
                        .isCloseTo(letters.get("n_governed") * to / from, ofRatios(letters.get("n_governed")));
                assertThat(row.group(7).equals("*")).isEqualTo(least * from / to > letters.get("n_governed") + 1);
                sum += at;
            }
            assertThat(Double.parseDouble(
                            all("mean shift speed " + NUMBER, screen).get(0).group(1)))
                    .isCloseTo(sum / rows.size(), within(1.0));
        }
    }

    /** Both ratios are printed to four digits, both engine speeds whole. */
    private static Offset<Double> ofRatios(double rpm) {
        return within(1 + 1e-3 * rpm);
    }

    private static Offset<Double> speed(double turnsOver) {
        return within((60 * turnsOver < 2 ? 0.05 : 0.5) + 60 * turnsOver * 2e-3);
    }

    private static Map<String, Double> ratios(Path layout) {
        Map<String, Double> ratios = new HashMap<>();
        all("(\\w+)=" + NUMBER, screen("truck show " + layout))
                .forEach(found -> ratios.put(found.group(1), Double.parseDouble(found.group(2))));
        return ratios;
    }

    private static String item(String screen, String begins) {
        return items(screen).stream()
                .filter(item -> item.startsWith(begins))
                .findFirst()
                .orElseThrow()
                .substring(begins.length());
    }
}
