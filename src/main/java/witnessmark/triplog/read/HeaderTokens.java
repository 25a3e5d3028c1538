package witnessmark.triplog.read;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import witnessmark.triplog.signal.Signal;

/**
 * What a column name means by its single words, whatever their order: {@code clutch_full}, {@code Brk sw},
 * {@code lever neutral}. A name with a word that is not known is only a likeness, and is asked about.
 */
final class HeaderTokens {
    /** A meaning, whether the switch is written the other way round, and whether every word of the name was known. */
    record Meaning(Signal signal, boolean inverted, boolean sure) {
        static Meaning sure(Signal signal) {
            return new Meaning(signal, false, true);
        }

        static Meaning likely(Signal signal) {
            return new Meaning(signal, false, false);
        }

        /** As sure, of another signal the usual way round. */
        Meaning turnedTo(Signal other) {
            return new Meaning(other, false, sure);
        }
    }

    private record Rule(Signal signal, boolean inverted, Set<String> all, Set<String> none) {}

    private static final Map<String, String> CONCEPTS = new HashMap<>();
    private static final Set<String> SAYS_NOTHING = Set.of(
            "switch",
            "sw",
            "swi",
            "signal",
            "sig",
            "status",
            "state",
            "sensor",
            "value",
            "val",
            "actual",
            "act",
            "current",
            "curr",
            "can",
            "bus",
            "j1939",
            "pressed",
            "press",
            "depressed",
            "on",
            "active",
            "applied",
            "flag",
            "bit",
            "the",
            "of",
            "is",
            "raw",
            "avg",
            "mean",
            "schalter",
            "contact",
            "indicator",
            "lamp",
            "light",
            "request",
            "req",
            "cmd",
            "wheel",
            "based",
            "sns",
            "1",
            "shaft",
            "driver",
            "truck",
            "section",
            "stat",
            "sta",
            "lt",
            "shft",
            "svc",
            "service",
            "foot",
            "v",
            "eje",
            "del",
            "de",
            "la",
            "el",
            "interruptor",
            "welle");

    static {
        concept("engine", "engine", "eng", "motor", "mot", "crank", "crankshaft", "ice");
        concept("speed", "speed", "spd", "rpm", "revs", "n", "drehzahl", "velocity", "velocidad", "geschwindigkeit");
        concept(
                "road",
                "vehicle",
                "veh",
                "road",
                "ground",
                "gps",
                "tacho",
                "tachograph",
                "fahrzeug",
                "vehiculo",
                "kph",
                "mph",
                "kmh",
                "fzg");
        concept("input", "input", "inp", "primary", "eingang", "entrada", "iss", "tis");
        concept("output", "output", "outp", "out", "tail", "tailshaft", "mainshaft", "abtrieb", "salida", "oss", "tos");
        concept("box", "trans", "transmission", "gearbox", "gb", "gbx", "tx", "trn", "box", "getriebe", "getr", "caja");
        concept("clutch", "clutch", "clu", "clt", "clch", "kupplung", "kuppl", "embrague");
        concept(
                "travel",
                "position",
                "pos",
                "travel",
                "pct",
                "percent",
                "stroke",
                "weg",
                "perc",
                "posicion",
                "recorrido",
                "trvl",
                "%");
        concept("floor", "floor", "floored", "full", "bottom", "fully", "bottomed");
        concept("pedal", "pedal", "ped", "pdl");
        concept("brake", "brake", "brk", "brakes", "br", "bremse", "betriebsbremse", "freno");
        concept(
                "park",
                "park",
                "parking",
                "hand",
                "handbrake",
                "spring",
                "pkb",
                "pb",
                "prk",
                "pkbrk",
                "parkbrake",
                "handbremse",
                "feststellbremse",
                "estacionamiento");
        concept(
                "accelerator",
                "accelerator",
                "accel",
                "acc",
                "throttle",
                "thr",
                "app",
                "aps",
                "gas",
                "tps",
                "accelerador",
                "acelerador",
                "fahrpedal",
                "fahrpedalstellung",
                "gaspedal");
        concept("torque", "torque", "trq", "tq", "load", "moment", "par", "carga");
        concept("range", "range", "rng", "gruppe", "bereichsgruppe", "gruppenschalter", "gama", "rango");
        concept("knob", "knob", "selector", "select", "selected", "sel", "preselect", "preselector");
        concept("low", "low", "lo", "bajo");
        concept("high", "high", "hi", "hoch", "alto");
        concept("neutral", "neutral", "neut", "ntrl", "leerlauf", "leerlaufschalter", "neutralschalter", "neutro");
        concept(
                "reverse",
                "reverse",
                "rev",
                "rvs",
                "backup",
                "rueckwaertsgang",
                "ruckwartsgang",
                "rueckwaerts",
                "ruckwarts",
                "reversa",
                "atras",
                "ruckfahrlicht",
                "rueckfahrlicht",
                "r");
        concept(
                "lever",
                "lever",
                "lvr",
                "gearlever",
                "shift",
                "shifter",
                "stick",
                "palanca",
                "schalthebel",
                "schalthebelstellung",
                "hebel");
        concept("gear", "gear", "gang", "marcha");
        concept("oil", "oil", "fluid", "oel", "ol", "aceite");
        concept("temp", "temp", "temperature", "tmp", "t", "temperatur", "temperatura");
        concept("pto", "pto", "takeoff", "nebenantrieb", "nebenabtrieb");
        concept("mass", "mass", "weight", "gcw", "gvw", "gcm", "masse", "peso");
    }

    private static final List<Rule> RULES = List.of(
            rule(Signal.CLUTCH_FLOOR, "clutch floor", ""),
            rule(Signal.CLUTCH_FLOOR, "clutch brake", "pedal park"),
            rule(Signal.CLUTCH_PEDAL, "clutch travel", ""),
            rule(Signal.CLUTCH, "clutch", "speed temp torque oil"),
            rule(Signal.PARKING_BRAKE, "park", "travel torque speed temp accelerator"),
            rule(Signal.BRAKE, "brake", "travel temp speed"),
            rule(Signal.GEARBOX_OIL, "box temp", "engine"),
            rule(Signal.ENGINE_OIL, "engine oil temp", ""),
            rule(Signal.GEARBOX_OIL, "box oil", "engine low high"),
            rule(Signal.OUTPUT_SHAFT_SPEED, "output speed", "engine road temp"),
            rule(Signal.INPUT_SHAFT_SPEED, "input speed", "engine road temp"),
            new Rule(Signal.RANGE_KNOB, true, Set.of("range", "low"), Set.of("high", "gear")),
            rule(Signal.RANGE_KNOB, "range high", "low gear"),
            rule(Signal.RANGE_KNOB, "range", "low high gear speed"),
            rule(Signal.REVERSE_SWITCH, "reverse", "neutral speed engine"),
            rule(Signal.NEUTRAL_SWITCH, "neutral", "reverse speed"),
            rule(Signal.LEVER, "lever", "temp speed"),
            rule(Signal.ENGINE_TORQUE, "torque", "box output"),
            rule(Signal.ACCELERATOR, "accelerator", "engine temp brake"),
            rule(Signal.ENGINE_SPEED, "engine speed", "temp oil torque"),
            rule(Signal.ROAD_SPEED, "road", "temp engine mass"),
            rule(Signal.CURRENT_GEAR, "gear", "speed temp oil"),
            rule(Signal.POWER_TAKE_OFF, "pto", "speed"),
            rule(Signal.GROSS_MASS, "mass", ""));

    /** Endings that stand glued to an abbreviation, as in {@code BRKSW}, with the concept they add. */
    private static final Map<String, String> ENDINGS = Map.of(
            "sw",
            "",
            "stat",
            "",
            "pos",
            "travel",
            "pct",
            "travel",
            "pedalweg",
            "travel",
            "weg",
            "travel",
            "temperatur",
            "temp");

    private static final Map<String, String> GLUED_ONLY =
            Map.of("cl", "clutch", "kupplungs", "clutch", "getriebeol", "box");

    /** A switch of which the name says when it is not set: unless it says both, like {@code on/off}. */
    private static final Set<String> UNSET = Set.of("released", "off", "disengaged");

    private static final Set<String> SET = Set.of("on", "pressed", "engaged", "applied");
    private static final Set<Signal> SWITCHES = Set.of(
            Signal.CLUTCH,
            Signal.BRAKE,
            Signal.PARKING_BRAKE,
            Signal.POWER_TAKE_OFF,
            Signal.REVERSE_SWITCH,
            Signal.NEUTRAL_SWITCH);

    private HeaderTokens() {}

    private static void concept(String concept, String... words) {
        Arrays.stream(words).forEach(w -> CONCEPTS.put(w, concept));
    }

    private static Rule rule(Signal signal, String all, String none) {
        return new Rule(signal, false, words(all), words(none));
    }

    private static Set<String> words(String text) {
        return text.isEmpty() ? Set.of() : Set.of(text.split(" "));
    }

    /** The unit tells a speed from a state where the name does not. */
    static Optional<Meaning> of(ColumnMeanings.Heading heading) {
        List<String> words = List.of(heading.plain().split(" "));
        Set<String> concepts = new HashSet<>();
        boolean sure = true;
        for (String word : words) {
            List<String> found = concepts(word);
            concepts.addAll(found);
            sure &= !found.isEmpty() || saysNothing(word);
        }
        heading.unit().map(HeaderTokens::ofUnit).ifPresent(concepts::add);
        if (heading.plain().matches("(iss|oss|tis|tos)")) {
            concepts.add("speed");
        }
        boolean turned = isTurned(words);
        boolean known = sure;
        return RULES.stream()
                .filter(r -> concepts.containsAll(r.all()) && r.none().stream().noneMatch(concepts::contains))
                .findFirst()
                .map(r -> new Meaning(
                        r.signal(), r.inverted() != turned, known && (!turned || SWITCHES.contains(r.signal()))));
    }

    private static boolean saysNothing(String word) {
        return SAYS_NOTHING.contains(word) || UNSET.contains(word) || word.equals("not") || word.matches("\\d");
    }

    private static boolean isTurned(List<String> words) {
        boolean unset = words.stream().anyMatch(UNSET::contains);
        boolean set = words.stream().anyMatch(SET::contains);
        return words.contains("not") ? !unset : unset && !set;
    }

    /** What one word means, its ending and the number of a first sensor taken off where that makes it known. */
    private static List<String> concepts(String word) {
        String plain = word.length() > 2 && word.endsWith("1") ? word.substring(0, word.length() - 1) : word;
        String whole = CONCEPTS.get(plain);
        if (whole != null) {
            return List.of(whole);
        }
        for (Map.Entry<String, String> ending : ENDINGS.entrySet()) {
            String rest = plain.endsWith(ending.getKey())
                    ? plain.substring(0, plain.length() - ending.getKey().length())
                    : "";
            String concept = rest.length() > 1 ? GLUED_ONLY.getOrDefault(rest, CONCEPTS.get(rest)) : null;
            if (concept != null) {
                return ending.getValue().isEmpty() ? List.of(concept) : List.of(concept, ending.getValue());
            }
        }
        return List.of();
    }

    private static String ofUnit(String unit) {
        return switch (unit.toLowerCase(Locale.ROOT)) {
            case "rpm", "r/min", "1/min" -> "speed";
            case "km/h", "kph", "kmh", "mph" -> "road";
            case "%", "pct", "percent" -> "travel";
            case "c", "degc", "deg c", "f", "degf", "deg f", "celsius", "fahrenheit" -> "temp";
            default -> "";
        };
    }
}
