package witnessmark.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CardAndPageTest {
    /** A speed, an engine speed, a step of the shift plan, a start gear. */
    private static final Pattern FIGURE = Pattern.compile("\\d+ km/h \\(\\d+ mph\\)|\\d+( - \\d+)? rpm"
            + "|\\w+-\\w+ \\d{3,4}\\b|[Ss]tart (loaded|empty) in: \\w+, no higher than \\w+");

    @ParameterizedTest
    @ValueSource(strings = {"nine-ratio", "ten-ratio", "thirteen-ratio", "eighteen-ratio"})
    void every_figure_of_the_driver_s_page_stands_on_the_truck_s_card(String truck, @TempDir Path folder)
            throws Exception {
        Path page = folder.resolve("page.md");
        String card;
        try (CommandLine commands = new CommandLine(folder.resolve("store"))) {
            card = commands.type("truck card " + truck).out().replaceAll("\\s+", " ");
            commands.type("document coaching sample-cases/slow-into-low-low-air.yaml --as md --truck " + truck
                    + " --out " + page);
        }

        List<String> figures = FIGURE.matcher(Files.readString(page).replace("\\", ""))
                .results()
                .map(MatchResult::group)
                .distinct()
                .toList();

        assertThat(figures).hasSizeGreaterThan(5);
        figures.forEach(figure -> assertThat(card).containsIgnoringCase(figure));
    }
}
