package witnessmark.fleet.spark;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.hadoop.fs.FileStatus;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.functions;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;

/**
 * What earlier jobs read, kept beside the tables: each job adds a part, none changes one. A file is known again by path,
 * size and time without being read, a content by its hash; both only under the same terms. A part that a job left
 * unfinished is thrown away.
 */
final class KeptLogs {
    private static final String FOLDER = "kept";
    private static final String DONE = "_SUCCESS";

    /** One file and what became of it: its record and acts, or that a content with this hash is kept, or a reason. */
    static final StructType TYPE = new StructType()
            .add("path", DataTypes.StringType)
            .add("bytes", DataTypes.LongType)
            .add("modified", DataTypes.LongType)
            .add("mark", DataTypes.StringType)
            .add("sha256", DataTypes.StringType)
            .add("reason", DataTypes.StringType)
            .add("held", DataTypes.createArrayType(DataTypes.StringType))
            .add("acts", DataTypes.createArrayType(Rows.type(Rows.OF_AN_ACT)));

    private final SparkSession spark;
    private final Place out;
    private final List<String> parts = new ArrayList<>();

    KeptLogs(SparkSession spark, Place out) throws IOException {
        this.spark = spark;
        this.out = out;
        if (out.files().exists(out.path(FOLDER))) {
            for (FileStatus part : out.files().listStatus(out.path(FOLDER))) {
                String inside = FOLDER + "/" + part.getPath().getName();
                if (out.files().exists(out.path(inside + "/" + DONE))) {
                    parts.add(inside);
                } else {
                    out.remove(inside);
                }
            }
        }
    }

    /** Adds what was newly read; it is kept when this returns. */
    void add(Dataset<Row> read) {
        String part = FOLDER + "/part-" + System.currentTimeMillis() + "-" + parts.size();
        read.write().parquet(out.path(part).toString());
        parts.add(part);
    }

    /** The files whose content is kept. */
    Dataset<Row> files() {
        return all().where("sha256 is not null").select("path", "bytes", "modified", "mark", "sha256");
    }

    /** The contents, once for each hash and mark. */
    Dataset<Row> contents() {
        return all().where("held is not null")
                .select("sha256", "mark", "held", "acts")
                .dropDuplicates(new String[] {"sha256", "mark"});
    }

    /** The files that the last part could not read, with the reason. */
    Dataset<Row> unreadable() {
        return spark.read()
                .schema(TYPE)
                .parquet(out.path(parts.get(parts.size() - 1)).toString())
                .where(functions.col("reason").isNotNull())
                .select("path", "reason");
    }

    private Dataset<Row> all() {
        return parts.isEmpty()
                ? spark.createDataFrame(List.of(), TYPE)
                : spark.read()
                        .schema(TYPE)
                        .parquet(parts.stream().map(p -> out.path(p).toString()).toArray(String[]::new));
    }
}
