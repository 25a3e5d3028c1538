package witnessmark.shell.print;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Which form a written file is to have: as said, else as the ending of its name says, else the usual one. */
public final class FileForm {
    private FileForm() {}

    /**
     * @param as the form asked for; empty where none was
     * @param out the file to write; empty where none was named
     * @param known words of the forms, each also an ending
     * @param usual the form where neither says one
     * @return one of the known words, or {@code as} where that is none of them, for the command to refuse
     * @throws WrongUsage where the ending of the name says another form than the one asked for
     */
    public static String of(String as, String out, List<String> known, String usual) {
        String name = out.isEmpty() ? "" : String.valueOf(Path.of(out).getFileName());
        String ending = name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
        if (!known.contains(ending) || ending.equals(as)) {
            return as.isEmpty() ? usual : as;
        }
        if (!as.isEmpty() && known.contains(as)) {
            throw new WrongUsage(
                    "'" + Terminal.harmless(name) + "' is the name of a " + ending + " file, and " + as
                            + " is asked for",
                    "say --as " + ending + ", or name the file ." + as);
        }
        return as.isEmpty() ? ending : as;
    }
}
