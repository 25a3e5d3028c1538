package witnessmark.knowledge;

import java.util.ArrayList;
import java.util.List;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads words/*.yaml. */
final class WordingForm {
    private WordingForm() {}

    static void read(YamlNode root, Draft draft) {
        for (YamlNode item : root.map("the words", List.of("words")).items("words")) {
            YamlMap fields = item.map("a wording", List.of("finding", "measure", "en", "es", "part", "sound", "done"));
            if (fields.has("finding") == fields.has("measure")) {
                item.fault("a wording names one finding or one measure", "write 'finding: …' or 'measure: …'");
                continue;
            }
            Wording.Of of = fields.has("finding") ? Wording.Of.FINDING : Wording.Of.MEASURE;
            List<String> said = new ArrayList<>(fields.texts("en"));
            said.addAll(fields.texts("es"));
            List<String> part = fields.texts("part");
            List<String> sound = fields.texts("sound");
            List<String> done = fields.texts("done");
            if (said.isEmpty() && part.isEmpty() && sound.isEmpty() && done.isEmpty()) {
                item.fault("no words are given", "add 'en: […]', 'es: […]', 'part: […]', 'sound: […]' or 'done: […]'");
            }
            String id = of == Wording.Of.FINDING
                    ? draft.refer(Draft.Kind.FINDING, fields, "finding", "")
                    : draft.refer(Draft.Kind.MEASURE, fields, "measure", "");
            draft.wordings.add(new Wording(of, id, said, part, sound, done));
        }
    }
}
