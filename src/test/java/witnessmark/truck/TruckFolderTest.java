package witnessmark.truck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import witnessmark.gearbox.TruckProfile;
import witnessmark.yaml.FaultyInput;

class TruckFolderTest {

    private static final String YAML = ReadyTrucks.yaml("ten-ratio").replace("truck: ten-ratio", "truck: unit-seven");
    private static final TruckProfile TRUCK = TruckYaml.read("t.yaml", YAML);

    @TempDir
    Path folder;

    private TruckFolder kept() {
        return new TruckFolder(folder.resolve("trucks"));
    }

    @Test
    void a_folder_that_is_not_there_yet_holds_nothing() {
        assertThat(kept().names()).isEmpty();
        assertThat(kept().holds("unit-seven")).isFalse();
    }

    @Test
    void what_is_kept_is_read_again_as_it_was_written() {
        kept().keep(TRUCK, YAML, false);

        assertThat(kept().names()).containsExactly("unit-seven");
        assertThat(kept().yaml("unit-seven")).isEqualTo(YAML);
        assertThat(kept().read("unit-seven")).isEqualTo(TRUCK);
        assertThat(folder.resolve("trucks"))
                .isDirectoryNotContaining(file -> file.toString().endsWith(".part"));
    }

    @Test
    void one_of_the_same_name_is_replaced_only_when_told() {
        kept().keep(TRUCK, YAML, false);
        String changed = YAML.replace("3.25", "3.55");

        assertThatThrownBy(() -> kept().keep(TRUCK, changed, false))
                .isInstanceOf(TruckRefused.class)
                .hasMessageContaining("add --replace");
        assertThat(kept().yaml("unit-seven")).isEqualTo(YAML);
        kept().keep(TRUCK, changed, true);

        assertThat(kept().yaml("unit-seven")).isEqualTo(changed);
    }

    @Test
    void a_file_damaged_by_hand_is_told_with_its_place() throws IOException {
        kept().keep(TRUCK, YAML, false);
        Files.writeString(folder.resolve("trucks/unit-seven.yaml"), YAML.replace("axle-ratio: 3.25", "axle-ratio: 0"));

        assertThatThrownBy(() -> kept().read("unit-seven"))
                .isInstanceOf(FaultyInput.class)
                .hasMessageContaining("unit-seven.yaml:")
                .hasMessageContaining("axle-ratio: 0 is not from 1 to 20");
    }

    @Test
    void a_file_renamed_by_hand_is_told() throws IOException {
        kept().keep(TRUCK, YAML, false);
        Files.move(folder.resolve("trucks/unit-seven.yaml"), folder.resolve("trucks/unit-eight.yaml"));

        assertThatThrownBy(() -> kept().read("unit-eight")).hasMessageContaining("says it is truck 'unit-seven'");
    }

    @ParameterizedTest
    @ValueSource(strings = {"../outside", "..", "a/b", "a\\b", "", ".lock", "UNIT", "unit-seven.yaml"})
    void a_name_cannot_lead_out_of_the_folder(String name) throws IOException {
        Files.writeString(folder.resolve("outside.yaml"), YAML);
        kept().keep(TRUCK, YAML, false);

        assertThat(kept().holds(name)).isFalse();
        assertThatThrownBy(() -> kept().read(name)).isInstanceOf(TruckRefused.class);
        assertThatThrownBy(() -> kept().remove(name)).isInstanceOf(TruckRefused.class);
    }

    @Test
    void a_link_out_of_the_folder_is_not_followed() throws IOException {
        Path outside = Files.writeString(folder.resolve("outside.yaml"), YAML);
        kept().keep(TRUCK, YAML, false);
        Files.createSymbolicLink(folder.resolve("trucks/linked.yaml"), outside);

        assertThat(kept().holds("linked")).isFalse();
    }

    @Test
    void text_that_is_too_long_or_not_utf_8_is_refused() throws IOException {
        Path huge = Files.write(folder.resolve("huge.yaml"), new byte[400_001]);
        Path latin =
                Files.write(folder.resolve("latin.yaml"), "title: Gr\u00fcn".getBytes(StandardCharsets.ISO_8859_1));

        assertThatThrownBy(() -> TruckFolder.text(huge)).hasMessageContaining("more than 400000 bytes");
        assertThatThrownBy(() -> TruckFolder.text(latin)).hasMessageContaining("is not UTF-8 text");
    }
}
