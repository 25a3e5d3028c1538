package witnessmark.knowledge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.diagnosis.ShippedKnowledge;

/** Work that can hurt somebody carries a caution of its own kind, by the words it is written in. Common practice, no source. */
class CautionsAtWorkTest {
    private static final KnowledgeBase KNOWLEDGE = ShippedKnowledge.load();

    /** Words of a work, and the cautions of which one must go with it. */
    private record Work(String name, Pattern words, Set<String> cautions) {}

    private static final List<Work> WORKS = List.of(
            work(
                    "opens a line",
                    "(open|loosen|crack|disconnect|slacken|take off|cap|plug)\\w* [^.;]{0,40}\\b(line|hose|fitting|tube)s?\\b",
                    "air-stored",
                    "air-leak-search",
                    "plug-loaded",
                    "oil-under-pressure",
                    "oil-hot"),
            work(
                    "runs",
                    "engine runs\\b|idling engine|start the engine|run the engine|at idle, engine",
                    "engine-in-the-cab",
                    "running-checks",
                    "yard-moves",
                    "road-test-licensed",
                    "mount-load"),
            work("lifts", "\\b(jack up|hoist|on stands|lift out)", "heavy-parts", "wheel-raised", "chock-wheels"),
            work("drains", "drain(ed|ing)? the (oil|box|gearbox|sump)|drain plug", "oil-hot"),
            work("presses", "press(ed)? (off|on|out|in)\\b|drive (out|in)\\b|puller", "pressing"),
            work("washes", "(^|[.;] )Wash\\b|wipe with solvent|degrease", "solvent", "penetrant"),
            work("flushes", "\\bflush\\b(?! if)", "oil-hot", "solvent"),
            work("fits bearings", "(New|Replace( the)?) bearings?\\b|new (pilot and )?bearings?\\b", "pressing"),
            work("looks for cracks", "crack test", "penetrant"),
            work("opens coolant", "coolant (cap|hose|level|out)|whether water or coolant", "coolant-hot"),
            work("turns a yoke nut", "yoke nut|output nut", "heavy-torque"),
            work("takes clutch off", "(?-i:New (clutch|discs?|cover)\\b)|flywheel off", "friction-dust"),
            work("takes the gearbox out", "\\b(new|replace) discs?\\b|take it down", "gearbox-lowered"));

    private static Work work(String name, String words, String... cautions) {
        return new Work(name, Pattern.compile(words, Pattern.CASE_INSENSITIVE), Set.of(cautions));
    }

    static Stream<Arguments> checks() {
        return KNOWLEDGE.findings().values().stream().map(f -> Arguments.of(f.id(), f.look(), cautionsOf(f)));
    }

    static Stream<Arguments> repairs() {
        return KNOWLEDGE.causes().values().stream()
                .map(c -> Arguments.of(c.id(), String.valueOf(c.repair()), new HashSet<>(c.cautions())));
    }

    private static Set<String> cautionsOf(Finding finding) {
        Set<String> cautions = new HashSet<>(finding.cautions());
        KNOWLEDGE.wayTo(finding.access()).forEach(step -> cautions.addAll(step.cautions()));
        return cautions;
    }

    @ParameterizedTest
    @MethodSource({"checks", "repairs"})
    void work_carries_its_own_caution(String id, String text, Set<String> cautions) {
        assertThat(missing(text, cautions)).as(id + ": " + text).isEmpty();
    }

    private static List<String> missing(String text, Set<String> cautions) {
        return WORKS.stream()
                .filter(work -> work.words().matcher(text).find())
                .filter(work -> work.cautions().stream().noneMatch(cautions::contains))
                .map(Work::name)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("written")
    void the_words_are_seen(String text, String work) {
        assertThat(missing(text, Set.of())).contains(work);
    }

    static Stream<Arguments> written() {
        return Map.of(
                        "Loosen the air line at the cover.", "opens a line",
                        "Listen while the engine runs.", "runs",
                        "Drain the oil into a clean pan.", "drains",
                        "Bearing pressed off with a puller.", "presses",
                        "Wash, look with a glass.", "washes",
                        "Jack up one wheel.", "lifts",
                        "Flush screens and cooler.", "flushes",
                        "New bearing and snap rings.", "fits bearings",
                        "Crack test every shaft.", "looks for cracks")
                .entrySet()
                .stream()
                .map(e -> Arguments.of(e.getKey(), e.getValue()));
    }
}
