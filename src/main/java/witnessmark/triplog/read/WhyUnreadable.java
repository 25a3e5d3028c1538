package witnessmark.triplog.read;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;

/** Why a file or folder cannot be read, in words without its place: that is named otherwise from each computer. */
public final class WhyUnreadable {
    private WhyUnreadable() {}

    public static String of(IOException fault) {
        if (fault instanceof NoSuchFileException || fault instanceof FileNotFoundException) {
            return "it is gone, or a link that leads nowhere";
        }
        if (fault instanceof AccessDeniedException) {
            return "this login may not read it";
        }
        String said = fault instanceof FileSystemException file ? file.getReason() : fault.getMessage();
        return Optional.ofNullable(said).orElse(fault.getClass().getSimpleName());
    }
}
