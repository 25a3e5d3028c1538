package witnessmark.shell.print;

/** What the help says of options that several commands take, each text once. */
public final class OptionText {
    public static final String FORMAT = "text or json";
    public static final String REASON = "why a signed-off case changes";
    public static final String GUESSED = "the figures typed are somebody's guess";
    public static final String CASE = "store it in this case";
    public static final String FORMULAS = "show each figure's formula";
    public static final String EVIDENCE = "id of the evidence";
    public static final String OUT = "file to write";
    public static final String REPLACE = "write over an older file";
    public static final String LANGUAGE = "en or es; left out: as set, else en";
    public static final String LOAD = "empty or loaded, where it is known";
    public static final String MAPPING = "mapping file of the CSV logs";
    public static final String UNITS = "metric, us or both; left out: as the shop reads";
    public static final String SPEED_UNIT = "km/h or mph; left out: as the shop reads";
    public static final String DISTANCE = "km or mi, as the shop reads, or with its unit behind";
    public static final String TABLE = "csv or json";
    public static final String GRADE = "per cent, uphill positive";
    public static final String MASS = "empty, loaded, or kg";
    public static final String RANGE = "none, air, mechanical";
    public static final String SPLITTER = "none, high-only, both";
    public static final String COUNTERSHAFTS = "single, twin";
    public static final String RATIOS = "forward ratios";
    public static final String DRAWING = "SVG file to write";
    public static final String ODOMETER = "odometer, km";
    public static final String NOTE = "the technician's own words";

    private OptionText() {}
}
