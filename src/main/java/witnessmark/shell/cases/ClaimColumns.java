package witnessmark.shell.cases;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.shell.print.CsvTable;

/**
 * A claim as columns of a table: each fact in one, numbers as numbers, and the part lines together in the last. A part
 * line is itself a line of CSV, old part, new part, quantity, whereabouts and tag, so that it can be taken apart again.
 */
final class ClaimColumns {
    private static final String PARTS = "parts";

    private ClaimColumns() {}

    static List<String> names() {
        List<String> names = new ArrayList<>(Arrays.stream(ClaimField.values())
                .map(f -> f.word().replace('-', '_'))
                .toList());
        names.add(PARTS);
        return List.copyOf(names);
    }

    /** In the order of {@link #names()}; an empty text for what was not said. */
    static List<Object> cells(Claim claim) {
        List<Object> cells = new ArrayList<>();
        for (ClaimField field : ClaimField.values()) {
            String fact = claim.fact(field);
            cells.add(field.isNumber() && !fact.isEmpty() ? (Object) Double.valueOf(fact) : fact);
        }
        cells.add(claim.parts().stream().map(ClaimColumns::line).collect(Collectors.joining("\n")));
        return List.copyOf(cells);
    }

    private static String line(PartLine part) {
        return CsvTable.line(List.of(
                part.old(),
                part.fitted(),
                part.quantity(),
                part.whereabouts().map(PartLine.Whereabouts::word).orElse(""),
                part.tag()));
    }
}
