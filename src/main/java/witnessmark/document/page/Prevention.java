package witnessmark.document.page;

import java.util.List;
import java.util.Map;

/** General steps against a return of damage, by class of cause; common practice, no source. */
final class Prevention {
    private static final Map<String, List<String>> STEPS = Map.of(
            "maintenance",
            List.of(
                    "Put the check that found this on the maintenance plan of the truck, with its limit from the"
                            + " service manual.",
                    "Look at other trucks with the same upkeep for the same fault."),
            "assembly",
            List.of(
                    "Have the step that went wrong checked by a second person at the next repair, against the service"
                            + " manual.",
                    "Look at other units repaired in the same way."),
            "part-defect",
            List.of("Keep the part and its paper, and look for the same part in other trucks."),
            "wear-out",
            List.of("Note the distance run, and plan the next inspection before that distance."),
            "outside-gearbox",
            List.of("Have the cause outside the gearbox put right first; the repair will not last without it."));

    private Prevention() {}

    /** The steps; none for classes whose advice comes with the judgement. */
    static List<String> of(String classId) {
        return STEPS.getOrDefault(classId, List.of());
    }
}
