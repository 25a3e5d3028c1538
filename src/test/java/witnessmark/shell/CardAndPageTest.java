package witnessmark.shell;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CardAndPageTest {

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

        String text = Files.readString(page);
        List<String> figures = text.substring(0, text.indexOf("## "))
                .lines()
                .filter(line -> line.startsWith("- "))
                .map(line -> line.replaceFirst("^- (Low range: never above|[^:]+): ", ""))
                .flatMap(line -> Arrays.stream(line.replace("\\", "").split("; ")))
                .map(String::strip)
                .toList();

        assertThat(figures).hasSizeGreaterThan(5);
        figures.forEach(figure -> assertThat(card).contains(figure));
    }
}
