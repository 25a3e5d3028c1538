package witnessmark.triplog.read;

import java.text.Normalizer;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.gearbox.Unit;
import witnessmark.triplog.signal.Signal;

/**
 * What column names of a log usually mean, in English, German and Spanish. Common practice, no source: it only proposes;
 * a person confirms.
 */
final class ColumnMeanings {
    private static final Map<Signal, Pattern> NAMES = new EnumMap<>(Signal.class);
    private static final Pattern TIME = whole(
            "((log |logger |sample |run )?time|sec|secs|seconds|timestamp|time stamp|ts|date ?time|t|elapsed|elapsed time|rel(ative)? time|utc( time)?|epoch|unix|clock"
                    + "|zeit|zeitstempel|uhrzeit|hora|tiempo|fecha hora|fechahora)( utc| local| epoch)?");
    private static final Pattern DATE = whole("(date|datum|fecha|day)( utc| local)?");
    private static final Pattern BRACKETED = Pattern.compile("[\\[(<]\\s*([^\\])>]*?)\\s*[\\])>]");
    private static final Pattern TRAILING = Pattern.compile(
            "(?i)(?<=[\\s_.])(rpm|r/min|1/min|km/?h|kph|kmh|mph|pct|percent|%|deg ?c|degc|deg ?f|degf|c|f|celsius"
                    + "|fahrenheit|km|mi|miles|kg|lbs?|t|s|sec|seconds|ms|us|min)$");

    static {
        String shaft = "( shaft)?( speed| rpm| spd| drehzahl| velocidad)";
        name(
                Signal.ENGINE_SPEED,
                "(engine|eng|motor|crank(shaft)?)( shaft)? ?(speed|spd|rpm|revs)|rpm|engine|revs|n ?(mot|eng)|nmot|motordrehzahl"
                        + "|drehzahl|(regimen|revoluciones)( del| de)?( motor)?");
        name(
                Signal.ROAD_SPEED,
                "(wheel based |wheel |road |vehicle |veh |ground |gps |truck |tacho(graph)? )*(speed|spd|velocity)|v( ?veh)?"
                        + "|(fahrzeug)?geschwindigkeit|velocidad( del vehiculo)?|kph|mph|km h");
        name(
                Signal.OUTPUT_SHAFT_SPEED,
                "(trans(mission)? |gearbox |gb )?(output|out|tail|main)" + shaft + "|oss|tailshaft|abtriebsdrehzahl");
        name(Signal.INPUT_SHAFT_SPEED, "(trans(mission)? |gearbox |gb )?(input|in)" + shaft + "|iss|eingangsdrehzahl");
        name(Signal.CLUTCH, "clutch( switch| pressed| sw| state| pedal switch| down)?|kupplung(sschalter)?|embrague");
        name(
                Signal.CLUTCH_PEDAL,
                "clutch( pedal)? (position|pos|travel|pct|percent|stroke)|kupplungsweg|kupplungspedal");
        name(Signal.CLUTCH_FLOOR, "clutch (at )?(floor|bottom|brake|floored)( switch| sw)?");
        name(
                Signal.BRAKE,
                "(service |foot )?brake( switch| pedal| sw| pressed| pedal switch| on| state)?|bremse|freno( de servicio)?");
        name(Signal.PARKING_BRAKE, "(park|parking|hand|spring) ?brake( switch| sw| set)?|handbremse|freno de mano");
        name(
                Signal.ACCELERATOR,
                "(accel(erator)?|throttle|gas)( pedal)?( position| pos)?( 1)?|app|pedal( position)?|fahrpedal|gaspedal|acelerador");
        name(
                Signal.ENGINE_TORQUE,
                "(actual )?(engine |eng )?(percent )?(torque|load)( percent)?|(motor)?moment|par( motor)?|carga");
        name(Signal.CURRENT_GEAR, "(current |actual |engaged )?gear|gang|marcha");
        name(
                Signal.DISTANCE,
                "(total )?(vehicle )?distance|odo(meter)?( reading)?|mileage|kilometerstand|wegstrecke|odometro");
        name(
                Signal.GEARBOX_OIL,
                "(trans(mission)?|gearbox|gb|trans) ?(oil|fluid)? ?(temp(erature)?)|getriebeoel(temperatur)?|aceite caja");
        name(Signal.ENGINE_OIL, "(engine |eng |motor )?oil temp(erature)?|oeltemperatur|temperatura aceite( motor)?");
        name(Signal.RANGE_KNOB, "range( knob| selector| switch| sw| request| select| lever)?");
        name(Signal.LEVER, "(shift |gear )?lever( position| pos)?|main (box )?(gear|position)|palanca|schalthebel");
        name(
                Signal.GROSS_MASS,
                "(gross |combination |vehicle |total |gross combination )*(mass|weight)|gcw|gvw|gcm|masse|peso");
        name(
                Signal.POWER_TAKE_OFF,
                "(pto|power take ?off)( engaged| on| switch| sw| clutch)?|nebenantrieb|toma de fuerza");
    }

    private ColumnMeanings() {}

    /** A column name taken apart. */
    record Heading(String plain, Optional<String> unit) {}

    private static void name(Signal signal, String words) {
        NAMES.put(signal, whole(words));
    }

    private static Pattern whole(String words) {
        return Pattern.compile("^(?:" + words + ")$");
    }

    /** Splits {@code EngineSpeed_rpm} or {@code Engine speed [rpm]} into its words and its unit. */
    static Heading heading(String column) {
        Matcher bracket = BRACKETED.matcher(column);
        Optional<String> unit = bracket.find() ? Optional.of(bracket.group(1)) : Optional.empty();
        String rest = BRACKETED.matcher(column).replaceAll(" ").strip();
        if (unit.isEmpty()) {
            Matcher trailing = TRAILING.matcher(rest);
            if (trailing.find()) {
                unit = Optional.of(trailing.group());
                rest = rest.substring(0, trailing.start()).strip();
            }
        }
        return new Heading(plain(rest), unit);
    }

    private static String plain(String text) {
        return Normalizer.normalize(text.replaceAll("(?<=[a-z])(?=[A-Z])", " "), Normalizer.Form.NFD)
                .toLowerCase(Locale.ROOT)
                .replaceAll("\\p{M}", "")
                .replaceAll("[^a-z0-9]+", " ")
                .strip();
    }

    /** By the usual names as a whole, else by their single words. */
    static Optional<HeaderTokens.Meaning> meaning(Heading heading) {
        return signal(heading).map(HeaderTokens.Meaning::sure).or(() -> HeaderTokens.of(heading));
    }

    private static Optional<Signal> signal(Heading heading) {
        if (heading.plain().isEmpty()) {
            return heading.unit().filter(u -> u.equalsIgnoreCase("rpm")).map(u -> Signal.ENGINE_SPEED);
        }
        Optional<Signal> found = NAMES.entrySet().stream()
                .filter(e -> e.getValue().matcher(heading.plain()).matches())
                .map(Map.Entry::getKey)
                .findFirst();
        boolean travel = found.equals(Optional.of(Signal.CLUTCH))
                && heading.unit()
                        .filter(u -> u.equals("%") || u.matches("(?i)pct|percent"))
                        .isPresent();
        return travel ? Optional.of(Signal.CLUTCH_PEDAL) : found;
    }

    static boolean isTime(Heading heading) {
        return TIME.matcher(heading.plain()).matches();
    }

    static boolean isDate(Heading heading) {
        return DATE.matcher(heading.plain()).matches();
    }

    static Optional<Unit> unit(String text) {
        String known =
                switch (text.toLowerCase(Locale.ROOT)) {
                    case "pct", "percent" -> "%";
                    case "lbs" -> "lb";
                    case "km h" -> "km/h";
                    default -> text;
                };
        return Unit.parse(known);
    }
}
