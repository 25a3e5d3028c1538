package witnessmark.triplog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.ReadMapping;
import witnessmark.triplog.read.UnreadableLog;
import witnessmark.triplog.read.WhyUnreadable;

/** Finds the logs of a job, the truck each belongs to, and the mapping file beside it. */
final class FindLogs {
    private static final int MOST_FILES = 100_000;

    private final TripTerms terms;
    private final Map<Path, Optional<ColumnMapping>> mappings = new LinkedHashMap<>();

    FindLogs(TripTerms terms) {
        this.terms = terms;
    }

    /** One log of a job and the truck it belongs to. */
    record Found(String truck, TripRequest request) {}

    /** The logs of files and folders, in the order given; a file named itself belongs to {@code truck}. */
    List<Found> in(List<Path> places, String truck) {
        List<Found> found = new ArrayList<>();
        for (Path place : places) {
            if (Files.isDirectory(place)) {
                for (LogFolder.File file : files(place)) {
                    found.add(found(
                            truck(file),
                            file.place(),
                            List.of(file.place().toAbsolutePath().getParent(), place)));
                }
            } else {
                found.add(found(truck, place, List.of(place.toAbsolutePath().getParent())));
            }
        }
        return found;
    }

    private Found found(String truck, Path file, List<Path> folders) {
        Optional<ColumnMapping> mapping = terms.mapping()
                .or(() -> folders.stream().flatMap(f -> mappingIn(f).stream()).findFirst());
        return new Found(
                truck,
                new TripRequest(
                        file, terms.tableOf().apply(truck), terms.limits(), mapping, terms.hash(), Optional.empty()));
    }

    private static List<LogFolder.File> files(Path folder) {
        List<LogFolder.File> files = listed(folder).files().stream()
                .filter(f -> LogNames.isLog(f.place().getFileName().toString()))
                .sorted(Comparator.comparing(LogFolder.File::place))
                .limit(MOST_FILES + 1L)
                .toList();
        if (files.isEmpty()) {
            throw new UnreadableLog(
                    folder + ": no log files in this folder", "looked for were .csv .log .txt .candump .asc, also .gz");
        }
        if (files.size() > MOST_FILES) {
            throw new UnreadableLog(folder + ": more than 100,000 log files", "give its sub-folders one by one");
        }
        return files;
    }

    private static LogFolder listed(Path folder) {
        try {
            LogFolder listed = LogFolder.of(folder);
            listed.unlisted().stream().findFirst().ifPresent(u -> {
                throw unlistable(folder.resolve(u.name()), u.why());
            });
            return listed;
        } catch (IOException e) {
            throw unlistable(folder, WhyUnreadable.of(e));
        }
    }

    private static UnreadableLog unlistable(Path folder, String why) {
        return new UnreadableLog(folder + ": cannot be listed (" + why + ")", "check that you may read it");
    }

    private static String truck(LogFolder.File file) {
        int slash = file.path().indexOf('/');
        return slash > 0 ? file.path().substring(0, slash) : LogNames.truck(file.path());
    }

    private Optional<ColumnMapping> mappingIn(Path folder) {
        return mappings.computeIfAbsent(folder, f -> {
            Path place = f.resolve(ReadTrips.MAPPING_FILE);
            return Files.isRegularFile(place) ? Optional.of(ReadMapping.from(place)) : Optional.empty();
        });
    }
}
