package witnessmark.shell;

import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import witnessmark.gearbox.evidence.ComputedFinding;

/**
 * What a truck command has worked out.
 *
 * @param truck id of the profile; empty where none was needed
 * @param text writes it on a page
 * @param json the same for a program
 * @param findings what a case may hold of it
 * @param evidence id it gets in a case where the user gives none
 */
record Answer(
        String truck, Consumer<Page> text, Map<String, Object> json, List<ComputedFinding> findings, String evidence) {}
