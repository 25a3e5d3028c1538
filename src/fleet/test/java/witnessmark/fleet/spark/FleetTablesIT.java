package witnessmark.fleet.spark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.List;
import java.util.Optional;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.util.SerializableConfiguration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.fleet.FleetTable;
import witnessmark.triplog.event.HabitLimits;
import witnessmark.truck.ReadyTrucks;

/**
 * The tables of the job against those of the program on one machine, which reads the same folder by {@code log fleet};
 * run after run on a folder that changes, in the order given.
 */
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class FleetTablesIT {
    @TempDir
    static Path folder;

    private static SparkSession spark;
    private static Path profiles;
    private static Path logs;
    private static Path out;

    @BeforeAll
    static void begin() throws IOException {
        spark = SparkSession.builder()
                .master("local[2]")
                .appName("fleet")
                .config("spark.ui.enabled", false)
                .config("spark.driver.host", "127.0.0.1")
                .config("spark.driver.bindAddress", "127.0.0.1")
                .config("spark.sql.shuffle.partitions", 2)
                // Tables so small are made sooner without compiling their queries.
                .config("spark.sql.codegen.wholeStage", false)
                .config("spark.sql.codegen.factoryMode", "NO_CODEGEN")
                .config("spark.sql.adaptive.enabled", false)
                .config("spark.sql.warehouse.dir", folder.resolve("warehouse").toString())
                .getOrCreate();
        logs = folder.resolve("logs");
        InventedFleet.mixed(logs);
        profiles = Files.createDirectories(folder.resolve("profiles"));
        Files.writeString(
                profiles.resolve("own.yaml"),
                ReadyTrucks.yaml("ten-ratio").replaceFirst("(?m)^truck: .*$", "truck: own"));
        out = folder.resolve("out");
    }

    @AfterAll
    static void end() {
        spark.stop();
    }

    private static FleetOptions options() {
        return new FleetOptions(
                logs.toUri().toString(),
                out.toUri().toString(),
                Optional.of("thirteen-ratio"),
                Optional.of(profiles.toUri().toString()),
                Optional.empty(),
                HabitLimits.Load.UNKNOWN,
                false);
    }

    private static ReadFleet.Done runAndCompare() throws Exception {
        ReadFleet.Done done = ReadFleet.run(spark, options());
        Path one = new OneMachine(folder).tables(logs, "--truck", "thirteen-ratio", "--profiles", profiles.toString());
        OneMachine.assertSame(out, one);
        return done;
    }

    private static Dataset<Row> parquet(FleetTable table) {
        return spark.read().parquet(out.resolve(table.fileName() + ".parquet").toString());
    }

    /** Contents that the parts of the given number, by their order, read in full. */
    private static long contentsRead(int part) throws IOException {
        try (var parts = Files.list(out.resolve("kept"))) {
            Path one = parts.sorted().skip(part).findFirst().orElseThrow();
            return spark.read()
                    .schema(KeptLogs.TYPE)
                    .parquet(one.toString())
                    .where("held is not null")
                    .count();
        }
    }

    @Test
    @Order(1)
    void a_mixed_folder_comes_to_the_same_tables_as_on_one_machine() throws Exception {
        ReadFleet.Done done = runAndCompare();

        assertThat(done.read()).isEqualTo(done.files());
        assertThat(done.rows().get(FleetTable.ACTS)).isGreaterThan(100);
        assertThat(done.rows().get(FleetTable.DAYS)).isEqualTo(3 * 2 + 3 + 5);
        assertThat(Files.readString(out.resolve("not-counted.csv")))
                .contains("haul-1,haul-1/day0-early.candump,\"the same log as haul-1/again.candump")
                .contains("haul-2/packed.log.gz,\"the same log as haul-2/day1-early.candump")
                .contains("haul-3/other-recorder.candump,\"covers the same time as haul-3/day0-early.candump")
                .contains("haul-3/day0-late.candump,\"the same log lies under another truck too")
                .contains("haul-lost/whose.candump,\"the same log lies under another truck too")
                .contains("bad/noise.csv,", "bad/empty.csv,\"the file is empty", "bad/wide.csv,", "bad/cut.log.gz,")
                .contains("odd-mapping/log.csv,")
                .doesNotContain("README", "too-deep");
    }

    @Test
    @Order(2)
    void parquet_holds_the_same_rows_with_types() {
        Dataset<Row> days = parquet(FleetTable.DAYS);

        assertThat(days.columns()).containsExactlyElementsOf(FleetTable.DAYS.header());
        assertThat(days.where("truck = 'haul-1'").count()).isEqualTo(2);
        assertThat(days.where("km > 1 and acts >= 0 and odometer_from_km is null")
                        .count())
                .isPositive();
        assertThat(days.where("truck = 'own'").first().<String>getAs("profile")).isEqualTo("own");
        assertThat(parquet(FleetTable.ACTS).where("severity >= 1").count()).isPositive();
    }

    @Test
    @Order(3)
    void a_second_run_reads_only_what_could_not_be_read_before() throws Exception {
        ReadFleet.Done again = runAndCompare();

        assertThat(again.read()).as("files that are no logs are tried again").isBetween(5L, 7L);
        assertThat(contentsRead(1)).isZero();
    }

    @Test
    @Order(4)
    void a_log_under_another_name_or_time_is_known_by_its_hash_and_a_new_one_is_read() throws Exception {
        Files.move(logs.resolve("haul-1/day1-late.candump"), logs.resolve("haul-1/renamed.candump"));
        Files.setLastModifiedTime(logs.resolve("haul-2/day0-late.candump"), FileTime.fromMillis(1_700_000_000_000L));
        Files.delete(logs.resolve("haul-many/part-3.candump"));
        new InventedFleet(logs).bus("haul-1/new.candump", 123, 4, 8);

        runAndCompare();

        assertThat(contentsRead(2)).isEqualTo(1);
    }

    @Test
    @Order(5)
    void another_profile_has_the_logs_of_its_truck_read_again() throws Exception {
        Files.writeString(
                profiles.resolve("own.yaml"),
                ReadyTrucks.yaml("eighteen-ratio").replaceFirst("(?m)^truck: .*$", "truck: own"));

        runAndCompare();

        assertThat(contentsRead(3)).isEqualTo(1);
    }

    @Test
    @Order(6)
    void a_log_in_an_object_store_is_read_as_a_stream() throws Exception {
        Path before = Files.createDirectories(folder.resolve("before"));
        for (FleetTable table : FleetTable.values()) {
            Files.copy(out.resolve(table.fileName() + ".csv"), before.resolve(table.fileName() + ".csv"));
        }
        spark.sparkContext().hadoopConfiguration().set("fs.objects.impl", ObjectStore.class.getName());
        Path fresh = folder.resolve("from-objects");

        ReadFleet.run(
                spark,
                new FleetOptions(
                        "objects://bucket" + logs.toUri().getRawPath(),
                        fresh.toUri().toString(),
                        Optional.of("thirteen-ratio"),
                        Optional.of("objects://bucket" + profiles.toUri().getRawPath()),
                        Optional.empty(),
                        HabitLimits.Load.UNKNOWN,
                        false));

        OneMachine.assertSame(fresh, before);
    }

    @Test
    @Order(7)
    void a_job_that_cannot_be_begun_says_why() throws Exception {
        Files.createFile(out.resolve(".running"));
        assertThatThrownBy(() -> ReadFleet.run(spark, options()))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("another job writes")
                .hasMessageContaining("--take-over");
        for (List<String> words : List.of(
                List.of("--logs", "a"),
                List.of("--logs", "a", "--out", "b", "--speed", "9"),
                List.of("--logs", "a", "--logs", "b", "--out", "c"),
                List.of("--logs", "a", "--out", "b", "--load", "heavy"))) {
            assertThatThrownBy(() -> FleetOptions.of(words.toArray(String[]::new)))
                    .isInstanceOf(Refused.class);
        }
    }

    @Test
    @Order(8)
    void tables_are_not_put_among_the_logs_by_whatever_way() throws Exception {
        Path link = Files.createSymbolicLink(folder.resolve("link-to-logs"), logs);
        for (Path among : List.of(logs, logs.resolve("tables"), link.resolve("tables/of/today"))) {
            FleetOptions options = new FleetOptions(
                    logs.toUri().toString(),
                    among.toString(),
                    Optional.of("thirteen-ratio"),
                    Optional.empty(),
                    Optional.empty(),
                    HabitLimits.Load.UNKNOWN,
                    false);
            assertThatThrownBy(() -> ReadFleet.run(spark, options))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("lies in the folder of the logs");
        }
        assertThat(logs.resolve("tables")).doesNotExist();
    }

    @Test
    @Order(9)
    void whatever_lies_in_the_folder_comes_to_the_same_tables_as_on_one_machine() throws Exception {
        Files.delete(out.resolve(".running"));
        new InventedFleet(logs).odd();
        Path cut = profiles.resolve("linked-folder.yaml");
        Files.write(cut, new byte[] {(byte) 0xFF, (byte) 0xFE, 't', 0});

        runAndCompare();

        assertThat(Files.readString(out.resolve("days.csv"), StandardCharsets.UTF_8))
                .contains("2026-03-02T06%3A00%3A00.csv", "two%0Alines.csv", "%231", "back%5Cslash.csv", "PACKED.CSV.GZ")
                .doesNotContain("hidden", ".xz", ".zip");
        assertThat(Files.readString(out.resolve("not-counted.csv")))
                .contains("gone,gone_log.csv,\"cannot be read (it is gone, or a link that leads nowhere)")
                .contains("itself,itself_log.csv,\"cannot be read (")
                .contains("pipe,pipe_log.csv,\"cannot be read (it is no plain file)")
                .contains("back,back/,this folder cannot be listed (it leads back to the folder of the logs)")
                .contains("no-mapping,no-mapping/log.csv,\"its mapping file cannot be read (it is gone,")
                .contains("wide-mapping,wide-mapping/log.csv,its mapping file cannot be read (it is not UTF-8 text)")
                .contains("linked-folder,linked-folder/log.csv,\"its truck's profile cannot be read (");
    }

    @Test
    @Order(10)
    void a_place_is_made_whole_where_the_job_is_handed_in_as_workers_start_elsewhere() throws Exception {
        SerializableConfiguration settings =
                new SerializableConfiguration(spark.sparkContext().hadoopConfiguration());

        assertThat(Place.of("some logs", settings).path().toUri())
                .hasScheme("file")
                .hasPath(Path.of("some logs").toAbsolutePath().toString());
    }
}
