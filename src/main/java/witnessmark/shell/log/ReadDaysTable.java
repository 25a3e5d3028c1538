package witnessmark.shell.log;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.Iterator;
import java.util.List;
import witnessmark.fleet.FleetTable;
import witnessmark.fleet.TruckDay;
import witnessmark.fleet.TruckDayRow;
import witnessmark.shell.print.CsvTable;
import witnessmark.shell.print.Refused;

/**
 * The records of a table of trucks and days.
 *
 * @param sha256 of the table as it lies there
 */
record ReadDaysTable(List<TruckDay> days, String sha256) {
    private static final int MOST_FAULTS = 10;
    private static final long MOST_BYTES = 2_000_000_000;

    /** Reads it whole; throws {@link Refused} with the faults, each with its line, if it is not whole and sound. */
    static ReadDaysTable from(Path table) {
        byte[] bytes = bytes(table);
        List<TruckDay> days = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        try (CsvReader<CsvRecord> rows = CsvReader.builder()
                .allowMissingFields(true)
                .allowExtraFields(true)
                .ofCsvRecord(new InputStreamReader(new ByteArrayInputStream(bytes), StandardCharsets.UTF_8))) {
            Iterator<CsvRecord> each = rows.iterator();
            if (!each.hasNext() || !each.next().getFields().equals(FleetTable.DAYS.header())) {
                throw new Refused(
                        "'" + table + "' is no table of trucks and days",
                        "give days.csv as log fleet or the" + " fleet's job writes it, with its first line");
            }
            while (each.hasNext() && faults.size() < MOST_FAULTS) {
                read(table, each.next(), days, faults);
            }
        } catch (IOException | CsvParseException e) {
            throw new Refused("'" + table + "' cannot be read as CSV (" + e.getMessage() + ")", "write it anew");
        }
        if (!faults.isEmpty()) {
            throw new Refused(String.join("\n", faults) + "\nnothing was stored", "have the table written anew");
        }
        return new ReadDaysTable(days, sha256(bytes));
    }

    private static void read(Path table, CsvRecord row, List<TruckDay> days, List<String> faults) {
        try {
            days.add(TruckDayRow.read(
                    row.getFields().stream().map(CsvTable::undefused).toList()));
        } catch (IllegalArgumentException e) {
            faults.add(table + ":" + row.getStartingLineNumber() + " " + e.getMessage());
        }
    }

    private static byte[] bytes(Path table) {
        try {
            if (Files.isRegularFile(table) && Files.size(table) <= MOST_BYTES) {
                return Files.readAllBytes(table);
            }
        } catch (IOException e) {
            // Said below, whatever keeps it from being read.
        }
        throw new Refused("'" + table + "' cannot be read", "give the path of a days.csv of at most 2 GB");
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
