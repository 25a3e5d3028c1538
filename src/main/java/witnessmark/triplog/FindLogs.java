package witnessmark.triplog;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.triplog.read.ColumnMapping;
import witnessmark.triplog.read.ReadMapping;
import witnessmark.triplog.read.UnreadableLog;

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
                for (Path file : files(place)) {
                    found.add(found(
                            truck(place, file),
                            file,
                            List.of(file.toAbsolutePath().getParent(), place)));
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

    private static List<Path> files(Path folder) {
        try (Stream<Path> walk = Files.walk(folder, 2)) {
            List<Path> files = walk.filter(LogNames::isFile)
                    .filter(f -> LogNames.isLog(f.getFileName().toString()))
                    .sorted()
                    .limit(MOST_FILES + 1L)
                    .toList();
            if (files.isEmpty()) {
                throw new UnreadableLog(
                        folder + ": no log files in this folder",
                        "looked for were .csv .log .txt .candump .asc, also .gz");
            }
            if (files.size() > MOST_FILES) {
                throw new UnreadableLog(folder + ": more than 100,000 log files", "give its sub-folders one by one");
            }
            return files;
        } catch (IOException e) {
            throw new UnreadableLog(
                    folder + ": cannot be listed (" + e.getMessage() + ")", "check that you may read it");
        }
    }

    private static String truck(Path folder, Path file) {
        Path inside = folder.relativize(file);
        return inside.getNameCount() > 1
                ? inside.getName(0).toString()
                : LogNames.truck(file.getFileName().toString());
    }

    private Optional<ColumnMapping> mappingIn(Path folder) {
        return mappings.computeIfAbsent(folder, f -> {
            Path place = f.resolve(ReadTrips.MAPPING_FILE);
            return Files.isRegularFile(place) ? Optional.of(ReadMapping.from(place)) : Optional.empty();
        });
    }
}
