package witnessmark.shell.cases;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import witnessmark.casefile.Attachment;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.Claim;
import witnessmark.casefile.ClaimField;
import witnessmark.casefile.PartLine;
import witnessmark.shell.print.CsvTable;

/**
 * A claim as columns of a table: each fact in one, numbers as numbers, then the part lines together and the photographs
 * together. Each is itself a line of CSV, so that it can be taken apart again: old part, new part, quantity, whereabouts
 * and tag; number as on paper, name, finding shown and SHA-256.
 */
final class ClaimColumns {
    private static final String PARTS = "parts";
    private static final String PHOTOGRAPHS = "photographs";

    private ClaimColumns() {}

    static List<String> names() {
        List<String> names = new ArrayList<>(Arrays.stream(ClaimField.values())
                .map(f -> f.word().replace('-', '_'))
                .toList());
        names.add(PARTS);
        names.add(PHOTOGRAPHS);
        return List.copyOf(names);
    }

    /** In the order of {@link #names()}; an empty text for what was not said. */
    static List<Object> cells(CaseFile file) {
        Claim claim = file.claim();
        List<Object> cells = new ArrayList<>();
        for (ClaimField field : ClaimField.values()) {
            String fact = claim.fact(field);
            cells.add(field.isNumber() && !fact.isEmpty() ? (Object) Double.valueOf(fact) : fact);
        }
        cells.add(claim.parts().stream().map(ClaimColumns::line).collect(Collectors.joining("\n")));
        List<Attachment> kept = file.attachments();
        cells.add(IntStream.range(0, kept.size())
                .mapToObj(i -> line(i + 1, kept.get(i)))
                .collect(Collectors.joining("\n")));
        return List.copyOf(cells);
    }

    private static String line(int number, Attachment kept) {
        return CsvTable.line(List.of(number, kept.name(), kept.finding().orElse(""), kept.sha256()));
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
