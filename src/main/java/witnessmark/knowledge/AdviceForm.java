package witnessmark.knowledge;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import witnessmark.gearbox.EnumWord;
import witnessmark.yaml.YamlMap;
import witnessmark.yaml.YamlNode;

/** Reads advice.yaml. */
final class AdviceForm {
    private static final List<String> TEXTS = List.of("id", "en", "es", "why-en", "why-es");
    private static final int MOST_TURNS = 1000;

    private AdviceForm() {}

    static void read(YamlNode root, Draft draft) {
        YamlMap map = root.map("the advice", List.of("coaching", "towing", "towing-cautions", "prevention"));
        map.items("coaching").forEach(item -> coaching(item, draft));
        map.items("towing").forEach(item -> towing(item, draft));
        map.items("towing-cautions").forEach(item -> towCaution(item, draft));
        map.items("prevention").forEach(item -> prevention(item, draft));
    }

    private static void prevention(YamlNode item, Draft draft) {
        YamlMap fields = item.map("a step against a return", List.of("class", "en", "es"));
        draft.prevention.add(new Prevention(
                draft.refer(Draft.Kind.CLASS, fields, "class", ""), fields.text("en"), fields.text("es")));
    }

    private static void coaching(YamlNode item, Draft draft) {
        YamlMap fields = item.map("a piece of advice", with("turn", "about", "figures"));
        String id = draft.define(Draft.Kind.COACHING, fields);
        draft.coaching.put(
                id,
                new CoachingAdvice(
                        id,
                        fields.text("en"),
                        fields.text("es"),
                        fields.textOr("why-en", ""),
                        fields.textOr("why-es", ""),
                        turn(fields),
                        words(fields, "about", CoachingAdvice.About.class),
                        words(fields, "figures", CoachingAdvice.Figure.class)));
    }

    private static void towing(YamlNode item, Draft draft) {
        YamlMap fields = item.map("a piece of advice", with("ways"));
        String id = draft.define(Draft.Kind.TOWING, fields);
        draft.towing.put(
                id,
                new TowAdvice(
                        id,
                        fields.text("en"),
                        fields.text("es"),
                        fields.textOr("why-en", ""),
                        fields.textOr("why-es", ""),
                        ways(fields)));
    }

    private static void towCaution(YamlNode item, Draft draft) {
        YamlMap fields = item.map("a caution of the towing sheet", List.of("caution", "ways", "if-advised"));
        draft.towCautions.add(new TowCaution(
                draft.refer(Draft.Kind.CAUTION, fields, "caution", ""),
                ways(fields),
                fields.flagOr("if-advised", false)));
    }

    private static List<TowWay> ways(YamlMap fields) {
        return fields.has("ways") ? words(fields, "ways", TowWay.class) : List.of(TowWay.values());
    }

    private static OptionalInt turn(YamlMap fields) {
        OptionalDouble turn = fields.numberIfGiven("turn");
        if (turn.isEmpty()) {
            return OptionalInt.empty();
        }
        int whole = (int) turn.getAsDouble();
        if (whole != turn.getAsDouble() || whole < 1 || whole > MOST_TURNS) {
            fields.get("turn")
                    .ifPresent(place -> place.fault(
                            "turn is no place on the card", "write a whole number from 1 to " + MOST_TURNS));
            return OptionalInt.empty();
        }
        return OptionalInt.of(whole);
    }

    private static <E extends Enum<E>> List<E> words(YamlMap fields, String name, Class<E> set) {
        return fields.items(name).stream()
                .flatMap(item -> item.one(name, EnumWord.all(set)).stream())
                .toList();
    }

    private static List<String> with(String... further) {
        return Stream.concat(TEXTS.stream(), Arrays.stream(further)).toList();
    }
}
