package witnessmark.shell.print;

/** The forms an answer can be given in. */
public enum Format {
    TEXT,
    JSON;

    /** The form so named; throws {@link WrongUsage} if it is none. */
    public static Format of(String word) {
        return switch (word) {
            case "text" -> TEXT;
            case "json" -> JSON;
            default -> throw WrongUsage.unknown("--format", word, "text or json");
        };
    }
}
