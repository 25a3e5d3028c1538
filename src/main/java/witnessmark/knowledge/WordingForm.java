package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads words/*.yaml. */
final class WordingForm {
    private static final List<String> FIELDS =
            List.of("finding", "measure", "other", "en", "es", "part", "sound", "done", "needs", "not-with");

    private WordingForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("the words", List.of("words")).items("words")) {
            YamlMap fields = item.map("a wording", FIELDS);
            if (Stream.of("finding", "measure", "other").filter(fields::has).count() != 1) {
                item.fault(
                        "a wording names one finding or one measure or other things",
                        "write 'finding: …', 'measure: …' or 'other: […]'");
                continue;
            }
            if (fields.has("other")) {
                draft.wordings.add(Wording.ofOther(fields.texts("other")));
                continue;
            }
            Wording.Of of = fields.has("finding") ? Wording.Of.FINDING : Wording.Of.MEASURE;
            List<String> said = new ArrayList<>(fields.texts("en"));
            said.addAll(fields.texts("es"));
            String id = of == Wording.Of.FINDING
                    ? draft.refer(Draft.Kind.FINDING, fields, "finding", "")
                    : draft.refer(Draft.Kind.MEASURE, fields, "measure", "");
            Wording wording = new Wording(
                    of,
                    id,
                    said,
                    fields.texts("part"),
                    fields.texts("sound"),
                    fields.texts("done"),
                    fields.texts("needs"),
                    fields.texts("not-with"));
            if (wording.isEmpty()) {
                item.fault(
                        "no words are given",
                        "add 'en: […]', 'es: […]', 'part: […]', 'sound: […]', 'done: […]', 'needs: […]' or"
                                + " 'not-with: […]'");
            }
            draft.wordings.add(wording);
        }
    }
}
