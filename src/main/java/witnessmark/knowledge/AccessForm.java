package witnessmark.knowledge;

import java.util.List;
import java.util.Optional;
import witnessmark.gearbox.EnumWord;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads access.yaml. */
final class AccessForm {
    private AccessForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the access steps", List.of("access"));
        for (YamlNode item : map.items("access")) {
            YamlMap fields = item.map(
                    "an access step",
                    List.of(
                            "id",
                            "title",
                            "minutes",
                            "inside",
                            "teardown",
                            "cautions",
                            "needs",
                            "ends",
                            "waits",
                            "on-unit"));
            String id = draft.define(Draft.Kind.ACCESS, fields);
            Optional<String> inside = fields.get("inside").map(place -> {
                String outer = draft.refer(Draft.Kind.ACCESS, place);
                if (!draft.access.containsKey(outer)) {
                    place.fault("'" + outer + "' must stand before '" + id + "'", "put the outer step first");
                }
                return outer;
            });
            boolean teardown = fields.flagOr("teardown", false);
            draft.access.put(
                    id,
                    new AccessStep(
                            id,
                            fields.text("title"),
                            minutes(fields),
                            inside,
                            teardown,
                            draft.refer(Draft.Kind.CAUTION, fields, "cautions"),
                            fields.get("needs").flatMap(word -> word.one("needs", EnumWord.all(AccessStep.Use.class))),
                            fields.get("ends").flatMap(word -> word.one("ends", EnumWord.all(AccessStep.Use.class))),
                            fields.get("waits").flatMap(word -> word.one("waits", EnumWord.all(AccessStep.Wait.class))),
                            fields.flagOr("on-unit", false)));
        }
    }

    /** Minutes of work, not negative and at most a week. */
    static double minutes(YamlMap fields) {
        double minutes = fields.number("minutes");
        if (minutes < 0 || minutes > 10_080) {
            fields.get("minutes")
                    .ifPresent(m -> m.fault("minutes: " + minutes + " is no time for a check", "0 to 10080"));
            return 0;
        }
        return minutes;
    }
}
