package witnessmark.document.page;

import java.util.List;
import java.util.Map;
import java.util.Set;

/** General steps against a return of damage, by class of cause; common practice, no source. */
final class Prevention {
    private static final Map<String, List<String>> STEPS = Map.of(
            "maintenance", List.of("prevent-maintenance-plan", "prevent-maintenance-others"),
            "assembly", List.of("prevent-assembly-second", "prevent-assembly-others"),
            "part-defect", List.of("prevent-part-defect"),
            "wear-out", List.of("prevent-wear-out"),
            "outside-gearbox", List.of("prevent-outside"));

    private Prevention() {}

    /** The classes that have steps of their own. */
    static Set<String> classes() {
        return STEPS.keySet();
    }

    /** The steps; none for classes whose advice comes with the judgement. */
    static List<String> of(String classId, PageWords words) {
        return STEPS.getOrDefault(classId, List.of()).stream().map(words::say).toList();
    }
}
