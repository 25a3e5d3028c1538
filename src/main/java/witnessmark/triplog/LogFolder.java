package witnessmark.triplog;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.triplog.read.WhyUnreadable;

/**
 * What lies in a folder of logs on this machine and in its sub-folders, links followed. Folders whose name begins with a
 * dot are passed over, as files of such names are no logs.
 *
 * @param files all that is no folder, plain or not, in order
 * @param unlisted the sub-folders that cannot be looked into
 */
public record LogFolder(List<File> files, List<Unlisted> unlisted) {
    /** @param path from the folder on, parted by slashes; letters that this computer does not know are replaced in it */
    public record File(String path, Path place) {}

    /** A sub-folder by its name, and why it is not looked into. */
    public record Unlisted(String name, String why) {}

    /** @throws IOException if the folder itself cannot be listed */
    public static LogFolder of(Path folder) throws IOException {
        List<File> files = new ArrayList<>();
        List<Unlisted> unlisted = new ArrayList<>();
        for (Path here : entries(folder)) {
            String name = name(here);
            if (!Files.isDirectory(here)) {
                files.add(new File(name, here));
            } else if (!isHidden(name)) {
                try {
                    files.addAll(inside(folder, here));
                } catch (IOException e) {
                    unlisted.add(new Unlisted(name, WhyUnreadable.of(e)));
                }
            }
        }
        return new LogFolder(files, unlisted);
    }

    /** Whether a folder of this name is passed over. */
    public static boolean isHidden(String name) {
        return name.startsWith(".");
    }

    private static List<File> inside(Path folder, Path here) throws IOException {
        if (folder.toRealPath().startsWith(here.toRealPath())) {
            throw new IOException("it leads back to the folder of the logs");
        }
        return entries(here).stream()
                .filter(file -> !Files.isDirectory(file))
                .map(file -> new File(name(here) + "/" + name(file), file))
                .toList();
    }

    private static List<Path> entries(Path folder) throws IOException {
        try (Stream<Path> entries = Files.list(folder)) {
            return entries.sorted().toList();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private static String name(Path place) {
        return place.getFileName().toString();
    }
}
