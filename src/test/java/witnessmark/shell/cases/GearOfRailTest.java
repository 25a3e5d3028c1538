package witnessmark.shell.cases;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.shell.CommandLine;

/** A yoke moves two gears, so that a finding of it may name both. Common practice, no source. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class GearOfRailTest {
    private CommandLine shop;

    @BeforeAll
    void open_a_case(@TempDir Path folder) {
        shop = new CommandLine(folder.resolve("store"));
        assertThat(shop.type("case new rail --complaint Stuck").exitCode()).isZero();
    }

    @AfterAll
    void close() {
        shop.close();
    }

    @Test
    void both_gears_of_a_rail_are_kept_and_shown_and_judged() {
        CommandLine.Run set = shop.type("case set rail yoke-screw-out=present --gear 4-3");

        assertThat(set.exitCode()).as(set.messages()).isZero();
        assertThat(shop.type("case show rail").out()).contains("gear 3-4");
        assertThat(shop.type("diagnose rail").exitCode()).isZero();
    }

    @ParameterizedTest
    @CsvSource({
        "teeth-pitted-progressive, 3-4, finding 'teeth-pitted-progressive' is not of a rail",
        "yoke-screw-out, 3-5, gear '3-5' is none",
        "yoke-screw-out, 9-10, such as 3-4 or R-1"
    })
    void two_gears_of_what_has_one_or_that_are_no_neighbours_are_refused(String finding, String gear, String why) {
        CommandLine.Run set = shop.type("case set rail " + finding + "=present --gear " + gear);

        assertThat(set.exitCode()).isNotZero();
        assertThat(set.messages()).contains(why);
    }
}
