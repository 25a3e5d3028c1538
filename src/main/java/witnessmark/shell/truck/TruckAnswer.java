package witnessmark.shell.truck;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.gearbox.TruckProfile;
import witnessmark.gearbox.evidence.ComputedFinding;
import witnessmark.shell.print.Page;

/**
 * What a truck command has worked out.
 *
 * @param truck the profile it was worked out with; empty where none was needed
 * @param text writes it on a page
 * @param json the same for a program
 * @param findings what a case may hold of it
 * @param evidence id it gets in a case where the user gives none
 */
record TruckAnswer(
        Optional<TruckProfile> truck,
        Consumer<Page> text,
        Record json,
        List<ComputedFinding> findings,
        String evidence) {}
