package witnessmark.casefile;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A file of a case whose bytes are not kept as they were put in. */
public record DamagedFile(Attachment file, Fault fault) {

    /** How that shows. */
    public enum Fault {
        MISSING("is missing"),
        CHANGED("is not as it was put in"),
        UNREADABLE("cannot be read");

        private final String sentence;

        Fault(String sentence) {
            this.sentence = sentence;
        }

        /** The word for it in machine forms and messages. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** What is wrong with it, in words. */
    public String sentence() {
        return "'" + file.name() + "' " + fault.sentence;
    }

    /** What is wrong with each of them, in one sentence. */
    public static String sentence(List<DamagedFile> files) {
        return files.stream().map(DamagedFile::sentence).collect(Collectors.joining(", "));
    }

    /** What mends a case of which files are damaged. */
    public static String mend(CaseId id) {
        return "put the same file in again with: photo add " + id
                + " FINDING FILE, bring the store back from a copy, or" + " take off what is lost with: photo remove "
                + id + " NAME";
    }
}
