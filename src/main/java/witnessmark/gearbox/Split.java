package witnessmark.gearbox;

/** Where the splitter stands in a gear. */
public enum Split {
    /** This range has no splitter, or there is none at all. */
    NONE,
    DIRECT,
    /** In the splitter's own ratio, over- or underdrive. */
    SPLIT
}
