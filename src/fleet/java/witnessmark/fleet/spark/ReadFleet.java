package witnessmark.fleet.spark;

import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.apache.spark.util.SerializableConfiguration;
import org.jspecify.annotations.Nullable;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetFolder;
import witnessmark.fleet.FleetTable;
import witnessmark.fleet.FleetTerms;
import witnessmark.fleet.WrittenText;
import witnessmark.triplog.read.ReadMapping;
import witnessmark.truck.ReadyTrucks;
import witnessmark.truck.TruckYaml;
import witnessmark.yaml.FaultyInput;

/** The job: reads what is new among a fleet's logs on the cluster, and writes the tables of all that are there. */
public final class ReadFleet {
    private static final String RUNNING = ".running";
    private static final StructType PRESENT = new StructType()
            .add("path", DataTypes.StringType)
            .add("bytes", DataTypes.LongType)
            .add("modified", DataTypes.LongType)
            .add("mark", DataTypes.StringType);

    private final SparkSession spark;
    private final JavaSparkContext context;
    private final FleetOptions options;
    private final Place logs;
    private final Place out;

    private ReadFleet(SparkSession spark, FleetOptions options) throws IOException {
        this.spark = spark;
        this.context = JavaSparkContext.fromSparkContext(spark.sparkContext());
        this.options = options;
        SerializableConfiguration settings = new SerializableConfiguration(context.hadoopConfiguration());
        this.logs = Place.of(options.logs(), settings);
        this.out = Place.of(options.out(), settings);
    }

    /**
     * What a job did.
     *
     * @param files logs that are there
     * @param read of them those that were read now, as they were new or their terms changed
     * @param rows rows by table
     */
    public record Done(long files, long read, Map<FleetTable, Long> rows) {}

    public static void main(String[] words) throws IOException {
        try {
            FleetOptions options = FleetOptions.of(words);
            SparkSession spark =
                    SparkSession.builder().appName("witnessmark fleet").getOrCreate();
            Done done = run(spark, options);
            System.out.println(done.files() + " logs, " + done.read() + " of them read now; "
                    + done.rows().get(FleetTable.DAYS) + " records of a truck and day, "
                    + done.rows().get(FleetTable.ACTS) + " acts, "
                    + done.rows().get(FleetTable.NOT_COUNTED) + " logs not counted; the tables are in "
                    + options.out());
            spark.stop();
        } catch (Refused e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
    }

    /** Throws {@link Refused} if it cannot be begun; what is wrong with single logs stands in the table of those. */
    public static Done run(SparkSession spark, FleetOptions options) throws IOException {
        return new ReadFleet(spark, options).run();
    }

    private Done run() throws IOException {
        if (out.isIn(logs)) {
            throw new Refused(
                    "--out '" + options.out() + "' lies in the folder of the logs, where the tables would be taken"
                            + " for logs; give a folder outside of it");
        }
        if (!out.mark(RUNNING) && !options.takeOver()) {
            throw new Refused(
                    "another job writes to '" + options.out() + "'; wait for it, or if it died, say" + " --take-over");
        }
        try {
            return marked();
        } finally {
            out.remove(RUNNING);
        }
    }

    private Done marked() throws IOException {
        FleetFolder listed = logs.listed();
        if (listed.logs().isEmpty() && listed.unlisted().isEmpty()) {
            throw new Refused(
                    "'" + options.logs() + "' holds no log files (looked for .csv .log .txt .candump .asc, also .gz)");
        }
        FleetTerms terms = terms(listed);
        String program = program();
        Dataset<Row> present = spark.createDataFrame(
                listed.logs().stream()
                        .map(f -> RowFactory.create(f.path(), f.bytes(), f.modifiedMillis(), terms.mark(f, program)))
                        .toList(),
                PRESENT);
        KeptLogs kept = new KeptLogs(spark, out);
        List<ReadTask> tasks = tasks(present, kept);
        if (!tasks.isEmpty()) {
            List<List<ReadTask>> bins = ReadTask.spread(tasks, context.defaultParallelism());
            ReadFiles read = new ReadFiles(logs, context.broadcast(terms));
            kept.add(
                    spark.createDataFrame(context.parallelize(bins, bins.size()).mapPartitions(read), KeptLogs.TYPE));
        }
        Map<FleetTable, Long> rows =
                new WriteTables(spark, out, kept).write(present, !tasks.isEmpty(), listed.unlisted());
        return new Done(listed.logs().size(), tasks.size(), rows);
    }

    /** The files that are not kept by path, size and time, with the contents that they may be under another name. */
    private static List<ReadTask> tasks(Dataset<Row> present, KeptLogs kept) {
        Dataset<Row> files = kept.files();
        Dataset<Row> unknown = present.join(
                files,
                scala.jdk.javaapi.CollectionConverters.asScala(List.of(PRESENT.fieldNames()))
                        .toSeq(),
                "left_anti");
        Dataset<Row> bySize = files.groupBy("bytes", "mark")
                .agg(functions.collect_set("sha256").as("likely"));
        return unknown
                .join(
                        bySize,
                        scala.jdk.javaapi.CollectionConverters.asScala(List.of("bytes", "mark"))
                                .toSeq(),
                        "left")
                .collectAsList()
                .stream()
                .map(ReadFleet::task)
                .toList();
    }

    private static ReadTask task(Row row) {
        FleetFile file = new FleetFile(row.getAs("path"), row.getAs("bytes"), row.getAs("modified"));
        int likely = row.fieldIndex("likely");
        return new ReadTask(
                file, row.getAs("mark"), row.isNullAt(likely) ? List.of() : List.copyOf(row.getList(likely)));
    }

    private FleetTerms terms(FleetFolder listed) throws IOException {
        Map<String, WrittenText> profiles = options.profiles().isPresent()
                ? Place.of(options.profiles().get(), logs.settings()).profiles(listed)
                : Map.of();
        return new FleetTerms(profiles, general(), logs.mappings(listed), mapping(), options.load());
    }

    private @Nullable String general() throws IOException {
        String truck = options.truck().orElse("");
        if (truck.isEmpty()) {
            return null;
        }
        String yaml = ReadyTrucks.names().contains(truck) ? ReadyTrucks.yaml(truck) : file(truck);
        try {
            TruckYaml.read(truck, yaml);
        } catch (FaultyInput e) {
            throw new Refused("--truck: " + e.getMessage());
        }
        return yaml;
    }

    private @Nullable String mapping() throws IOException {
        if (options.mapping().isEmpty()) {
            return null;
        }
        String yaml = file(options.mapping().get());
        try {
            ReadMapping.from(options.mapping().get(), yaml);
        } catch (FaultyInput e) {
            throw new Refused("--mapping: " + e.getMessage());
        }
        return yaml;
    }

    private String file(String place) throws IOException {
        int name = place.lastIndexOf('/') + 1;
        Place folder = Place.of(name == 0 ? "." : place.substring(0, Math.max(1, name - 1)), logs.settings());
        if (!folder.files().exists(folder.path(place.substring(name)))) {
            throw new Refused("no file '" + place + "'; give a ready example (" + String.join(", ", ReadyTrucks.names())
                    + ") or the place of a YAML file");
        }
        return folder.text(place.substring(name));
    }

    /** The hash of this program's jar: what another build read is read again. */
    private static String program() throws IOException {
        try (InputStream jar = ReadFleet.class
                        .getProtectionDomain()
                        .getCodeSource()
                        .getLocation()
                        .openStream();
                DigestInputStream in = new DigestInputStream(jar, MessageDigest.getInstance("SHA-256"))) {
            in.transferTo(java.io.OutputStream.nullOutputStream());
            return HexFormat.of().formatHex(in.getMessageDigest().digest());
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
