package witnessmark.fleet.spark;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.spark.api.java.JavaSparkContext;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Column;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.storage.StorageLevel;
import witnessmark.fleet.FleetColumn;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetTable;
import witnessmark.fleet.UncountedLog;
import witnessmark.shell.print.CsvTable;

/** Pools what is kept of the present files and writes the tables, each as Parquet and as one CSV file. */
final class WriteTables {
    private static final String NEW = ".new-";

    private final SparkSession spark;
    private final Place out;
    private final KeptLogs kept;

    WriteTables(SparkSession spark, Place out, KeptLogs kept) {
        this.spark = spark;
        this.out = out;
        this.kept = kept;
    }

    /**
     * Writes them all, then puts them in the place of the older ones.
     *
     * @param present path, bytes, modified and mark of the files that are there now
     * @param newlyRead whether the last part kept is of this job
     * @param unlisted folders that could not be looked into
     * @return rows by table
     */
    Map<FleetTable, Long> write(Dataset<Row> present, boolean newlyRead, List<UncountedLog> unlisted)
            throws IOException {
        Dataset<Row> located = present.join(kept.files().dropDuplicates("path", "bytes", "modified", "mark"), Kept.FILE)
                .join(kept.contents().drop("acts"), Kept.CONTENT)
                .persist(StorageLevel.MEMORY_AND_DISK());
        Dataset<Row> pooled = located.groupByKey(
                        (MapFunction<Row, String>) r -> new FleetFile(r.getAs("path"), 0, 0).truck(), Encoders.STRING())
                .flatMapGroups(new PoolTrucks(shared(located)), Encoders.row(PoolTrucks.TYPE))
                .persist(StorageLevel.MEMORY_AND_DISK());
        Map<FleetTable, Long> rows = new EnumMap<>(FleetTable.class);
        for (FleetTable table : FleetTable.values()) {
            Dataset<Row> unsorted =
                    switch (table) {
                        case ACTS -> acts(pooled, located);
                        case NOT_COUNTED -> of(table, pooled)
                                .union(unreadable(newlyRead))
                                .union(rows(unlisted));
                        default -> of(table, pooled);
                    };
            rows.put(table, write(table, unsorted));
        }
        for (FleetTable table : FleetTable.values()) {
            out.replace(NEW + table.fileName() + ".parquet", table.fileName() + ".parquet");
            out.replace(NEW + table.fileName() + ".csv", table.fileName() + ".csv");
        }
        pooled.unpersist();
        located.unpersist();
        return rows;
    }

    /** What tells a file, and a content, in what is kept. */
    private static final class Kept {
        static final String[] FILE = {"path", "bytes", "modified", "mark"};
        static final String[] CONTENT = {"sha256", "mark"};
    }

    private Broadcast<Set<String>> shared(Dataset<Row> located) {
        Dataset<Row> shared = located.map(
                        (MapFunction<Row, scala.Tuple2<String, String>>) r ->
                                new scala.Tuple2<>(r.getAs("sha256"), new FleetFile(r.getAs("path"), 0, 0).truck()),
                        Encoders.tuple(Encoders.STRING(), Encoders.STRING()))
                .toDF("sha256", "truck")
                .groupBy("sha256")
                .agg(functions.countDistinct("truck").as("trucks"))
                .where("trucks > 1")
                .select("sha256");
        Set<String> hashes = new HashSet<>(shared.as(Encoders.STRING()).collectAsList());
        return JavaSparkContext.fromSparkContext(spark.sparkContext()).broadcast(hashes);
    }

    private static Dataset<Row> of(FleetTable table, Dataset<Row> pooled) {
        return pooled.where(functions.col("table").equalTo(table.name()))
                .map((MapFunction<Row, Row>) r -> typed(table, r.getList(1)), Encoders.row(Rows.type(table.columns())));
    }

    private static Row typed(FleetTable table, List<String> cells) {
        List<Object> values = new ArrayList<>();
        for (int i = 0; i < cells.size(); i++) {
            String cell = cells.get(i);
            FleetColumn.Type type = table.columns().get(i).type();
            values.add(
                    cell.isEmpty() || type == FleetColumn.Type.TEXT
                            ? cell
                            : type == FleetColumn.Type.COUNT
                                    ? (Object) Long.valueOf(cell)
                                    : (Object) Double.valueOf(cell));
        }
        return Rows.row(table.columns(), values);
    }

    private Dataset<Row> rows(List<UncountedLog> uncounted) {
        List<FleetColumn> columns = FleetTable.NOT_COUNTED.columns();
        return spark.createDataFrame(
                uncounted.stream().map(u -> Rows.row(columns, u.cells())).toList(), Rows.type(columns));
    }

    private Dataset<Row> unreadable(boolean newlyRead) {
        List<FleetColumn> columns = FleetTable.NOT_COUNTED.columns();
        if (!newlyRead) {
            return spark.createDataFrame(List.of(), Rows.type(columns));
        }
        return kept.unreadable()
                .map(
                        (MapFunction<Row, Row>) r -> {
                            FleetFile file = new FleetFile(r.getString(0), 0, 0);
                            return Rows.row(
                                    columns, new UncountedLog(file.truck(), file.path(), r.getString(1)).cells());
                        },
                        Encoders.row(Rows.type(columns)));
    }

    private Dataset<Row> acts(Dataset<Row> pooled, Dataset<Row> located) {
        Dataset<Row> counted = pooled.where(functions.col("table").equalTo(FleetTable.ACTS.name()))
                .select(
                        functions.col("cells").getItem(0).as("truck"),
                        functions.col("cells").getItem(1).as("path"),
                        functions.col("cells").getItem(2).as("day"));
        return counted.join(located.select("path", "sha256", "mark"), "path")
                .join(kept.contents().select("sha256", "mark", "acts"), Kept.CONTENT)
                .withColumnRenamed("path", "file")
                .withColumn("one", functions.explode(functions.col("acts")))
                .select(FleetTable.ACTS.columns().stream()
                        .map(c -> column(c.name()))
                        .toArray(Column[]::new));
    }

    private static Column column(String name) {
        boolean ofTheLog = List.of("truck", "file", "day").contains(name);
        return ofTheLog ? functions.col(name) : functions.col("one." + name).as(name);
    }

    private long write(FleetTable table, Dataset<Row> unsorted) throws IOException {
        String parquet = NEW + table.fileName() + ".parquet";
        Column[] keys = table.keys().stream().map(functions::col).toArray(Column[]::new);
        unsorted.sort(keys).write().mode("overwrite").parquet(out.path(parquet).toString());
        Dataset<Row> written = spark.read()
                .schema(Rows.type(table.columns()))
                .parquet(out.path(parquet).toString());
        long rows = 0;
        try (Writer text = new BufferedWriter(
                new OutputStreamWriter(out.write(NEW + table.fileName() + ".csv"), StandardCharsets.UTF_8))) {
            CsvTable csv = new CsvTable(text);
            csv.row(table.header());
            for (Iterator<Row> each = written.sort(keys).toLocalIterator(); each.hasNext(); rows++) {
                csv.row(Rows.cells(each.next()));
            }
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return rows;
    }
}
