package witnessmark.jobcard;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The gear and the direction that a clause names, in its own words. */
final class GearNamed {
    private static final Pattern GEAR = Pattern.compile(
            "\\b(\\d{1,2}(st|nd|rd|th|a|ra|da|ta|va)|first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|reverse|rev"
                    + "|primera|segunda|tercera|cuarta|quinta|sexta|reversa|marcha atras|low range|high range|direct|overdrive"
                    + "|(gama|caja|rango) (baja|alta))\\b");
    private static final Pattern WAY = Pattern.compile(
            "\\b(uphill|downhill|up hills?|down hills?|pulling|on coast|coasting|upshift\\w*|downshift\\w*|going (up|down)|en subida|en bajada|"
                    + "subiendo|bajando|cuesta arriba|cuesta abajo|low to high|high to low|hot|cold|loaded|empty|en frio|en caliente|cargado)\\b");

    private GearNamed() {}

    static String in(String plain) {
        Set<String> found = new LinkedHashSet<>();
        for (Pattern pattern : List.of(GEAR, WAY)) {
            Matcher at = pattern.matcher(plain);
            while (at.find()) {
                found.add(at.group());
            }
        }
        return String.join(", ", new ArrayList<>(found));
    }
}
