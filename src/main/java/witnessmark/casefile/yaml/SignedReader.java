package witnessmark.casefile.yaml;

import java.util.List;
import java.util.Optional;
import witnessmark.casefile.MadeWith;
import witnessmark.casefile.SignedJudgement;
import witnessmark.casefile.SignedJudgement.SignedCause;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads a signed judgement as it stands in an entry or an export. */
final class SignedReader {
    static final List<String> FIELDS = List.of(
            "verdict",
            "standing",
            "points-to",
            "sentence",
            "causes",
            "carried-by",
            "knowledge",
            "site-knowledge",
            "program");

    private SignedReader() {}

    /** The judgement; empty where the map holds none, as in entries made before it was kept. */
    static Optional<SignedJudgement> read(YamlMap map) {
        if (!map.has("verdict")) {
            return Optional.empty();
        }
        List<SignedCause> causes = map.items("causes").stream()
                .map(SignedReader::cause)
                .flatMap(Optional::stream)
                .toList();
        return Built.at(
                map.owner(),
                () -> new SignedJudgement(
                        map.text("verdict"),
                        map.text("standing"),
                        given(map, "points-to"),
                        map.written("sentence"),
                        causes,
                        map.texts("carried-by"),
                        new MadeWith(map.written("program"), map.written("knowledge"), given(map, "site-knowledge"))));
    }

    private static Optional<SignedCause> cause(YamlNode node) {
        YamlMap map = node.map("a signed cause", List.of("id", "title", "class", "probability"));
        return Built.at(
                node,
                () -> new SignedCause(
                        map.text("id"), map.written("title"), map.text("class"), map.number("probability")));
    }

    private static Optional<String> given(YamlMap map, String name) {
        return map.has(name) ? Optional.of(map.written(name)) : Optional.empty();
    }
}
