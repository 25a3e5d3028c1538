package witnessmark.fleet.spark;

import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import org.apache.spark.api.java.function.FlatMapGroupsFunction;
import org.apache.spark.broadcast.Broadcast;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import witnessmark.fleet.FleetFile;
import witnessmark.fleet.FleetLog;
import witnessmark.fleet.FleetTable;
import witnessmark.fleet.OtherTrucks;
import witnessmark.fleet.PoolTruck;
import witnessmark.fleet.TruckDayRow;
import witnessmark.fleet.TruckFinding;
import witnessmark.fleet.UncountedLog;

/**
 * Makes one witness of the logs of each truck. From rows of path, bytes, modified, sha256, held it makes rows of the tables
 * as texts, marked with the table; a row of {@link FleetTable#ACTS} stands for all acts of a log that counts and holds its
 * truck, path and day.
 *
 * @param shared contents that lie under more than one truck
 */
record PoolTrucks(Broadcast<Set<String>> shared) implements FlatMapGroupsFunction<String, Row, Row> {
    static final StructType TYPE = new StructType()
            .add("table", DataTypes.StringType)
            .add("cells", DataTypes.createArrayType(DataTypes.StringType));

    @Override
    public Iterator<Row> call(String truck, Iterator<Row> rows) {
        List<FleetLog> logs = new ArrayList<>();
        List<Row> made = new ArrayList<>();
        rows.forEachRemaining(row -> {
            FleetLog log = log(row);
            if (shared.value().contains(log.sha256())) {
                made.add(uncounted(OtherTrucks.setAside(log)));
            } else {
                logs.add(log);
            }
        });
        PoolTruck.Pooled pooled = PoolTruck.of(logs);
        pooled.counted()
                .forEach(log -> made.add(row(
                        FleetTable.ACTS,
                        List.of(log.truck(), log.path(), log.asDay().day()))));
        pooled.days().forEach(day -> made.add(row(FleetTable.DAYS, TruckDayRow.cells(day))));
        pooled.findings().stream().map(TruckFinding::cells).forEach(cells -> made.add(row(FleetTable.FINDINGS, cells)));
        pooled.setAside().forEach(log -> made.add(uncounted(log)));
        return made.iterator();
    }

    private static FleetLog log(Row row) {
        FleetFile file = new FleetFile(row.getAs("path"), row.getAs("bytes"), row.getAs("modified"));
        List<String> held = row.getList(row.fieldIndex("held"));
        return new FleetLog(file.path(), TruckDayRow.read(held), List.of()).at(file);
    }

    private static Row uncounted(UncountedLog log) {
        return row(FleetTable.NOT_COUNTED, log.cells());
    }

    private static Row row(FleetTable table, List<?> cells) {
        return RowFactory.create(table.name(), Rows.texts(cells).toArray(String[]::new));
    }
}
