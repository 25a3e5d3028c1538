package witnessmark.fleet.spark;

import java.util.ArrayList;
import java.util.List;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;
import witnessmark.fleet.FleetColumn;
import witnessmark.fleet.FleetTable;

/** Cells of the fleet's tables as typed rows and back; where a number is not known, the row holds null. */
final class Rows {
    /** The columns of an act that the log alone tells: its number and those after the day. */
    static final List<FleetColumn> OF_AN_ACT = ofAnAct();

    private Rows() {}

    private static List<FleetColumn> ofAnAct() {
        List<FleetColumn> all = FleetTable.ACTS.columns();
        List<FleetColumn> own = new ArrayList<>(List.of(all.get(2)));
        own.addAll(all.subList(4, all.size()));
        return List.copyOf(own);
    }

    static StructType type(List<FleetColumn> columns) {
        StructType type = new StructType();
        for (FleetColumn column : columns) {
            type = type.add(column.name(), type(column.type()));
        }
        return type;
    }

    private static DataType type(FleetColumn.Type type) {
        return switch (type) {
            case TEXT -> DataTypes.StringType;
            case COUNT -> DataTypes.LongType;
            case NUMBER -> DataTypes.DoubleType;
        };
    }

    static Row row(List<FleetColumn> columns, List<?> cells) {
        Object[] values = new Object[columns.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value(columns.get(i).type(), cells.get(i));
        }
        return RowFactory.create(values);
    }

    private static @Nullable Object value(FleetColumn.Type type, Object cell) {
        boolean unknown = type != FleetColumn.Type.TEXT && cell.toString().isEmpty();
        return unknown ? null : cell;
    }

    static List<Object> cells(Row row) {
        List<Object> cells = new ArrayList<>();
        for (int i = 0; i < row.size(); i++) {
            cells.add(row.isNullAt(i) ? "" : row.get(i));
        }
        return cells;
    }

    static List<String> texts(List<?> cells) {
        return cells.stream().map(String::valueOf).toList();
    }
}
