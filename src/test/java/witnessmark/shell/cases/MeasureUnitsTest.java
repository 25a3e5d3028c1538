package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.shell.CommandLine;

/** A value is taken in any unit of its kind, and a refusal names all of them. */
class MeasureUnitsTest {
    private CommandLine shop;

    @BeforeEach
    void open_a_case(@TempDir Path folder) {
        shop = new CommandLine(folder.resolve("store"));
        shop.type("case new air");
    }

    @AfterEach
    void close() {
        shop.close();
    }

    @Test
    void a_unit_of_another_kind_is_refused_with_every_unit_that_fits() {
        CommandLine.Run run = shop.type("case measure air range-regulator-pressure 60 mm");

        assertThat(run.exitCode()).isEqualTo(1);
        assertThat(run.messages())
                .contains("not measured in mm", "kPa", "bar", "psi")
                .doesNotContain("rpm");
    }

    /** Common practice, no source: of air the trade says pounds. */
    @Test
    void pounds_of_air_are_taken_with_their_limits() {
        assertThat(shop.type("case measure air range-regulator-pressure 58 lb --low 57 --high 62 --limit-unit lbs"
                                + " --limit-from manual")
                        .exitCode())
                .isZero();
        assertThat(shop.type("case show air").out().replaceAll("\\s+", " "))
                .contains("58 psi, limit from 57 psi to 62 psi");
    }
}
