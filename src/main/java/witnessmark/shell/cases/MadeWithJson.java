package witnessmark.shell.cases;

import java.util.LinkedHashMap;
import java.util.Map;
import witnessmark.casefile.MadeWith;

/** What an answer was made with, for every machine form. */
public final class MadeWithJson {
    private MadeWithJson() {}

    public static Map<String, Object> of(MadeWith made) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("program", made.program());
        map.put("knowledge", made.knowledge());
        made.site().ifPresent(site -> map.put("siteKnowledge", site));
        return map;
    }
}
