package witnessmark.casefile.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.stream.Stream;
import witnessmark.casefile.CaseId;

/** The places of interviews as files, interviews/case: a database made anew from its journal knows nothing of them. */
final class InterviewFolder implements InterviewPlaces {
    private final Path folder;

    InterviewFolder(Path store) {
        this.folder = store.resolve("interviews");
    }

    @Override
    public Optional<String> read(CaseId id) {
        Path file = folder.resolve(id.text());
        try {
            return Files.size(file) > LONGEST
                    ? Optional.empty()
                    : Optional.of(new String(Files.readAllBytes(file), StandardCharsets.UTF_8));
        } catch (NoSuchFileException e) {
            return Optional.empty();
        } catch (IOException e) {
            throw unusable("the place of the interview cannot be read", "check the disk and the rights", e);
        }
    }

    @Override
    public void keep(CaseId id, String place) {
        try {
            WholeFile.write(folder.resolve(id.text()), place.getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw unusable(
                    "the place of the interview cannot be written",
                    "check that the folder can be written to and has room",
                    e);
        }
    }

    @Override
    public void each(BiConsumer<CaseId, String> use) {
        for (Path file : files()) {
            CaseId.of(file.getFileName().toString()).ifPresent(id -> read(id).ifPresent(p -> use.accept(id, p)));
        }
    }

    private List<Path> files() {
        try (Stream<Path> files = Files.list(folder)) {
            return files.sorted().toList();
        } catch (NoSuchFileException e) {
            return List.of();
        } catch (IOException e) {
            throw unusable("the places of the interviews cannot be read", "check the disk and the rights", e);
        }
    }

    private StoreUnavailable unusable(String what, String mend, IOException cause) {
        return new StoreUnavailable(folder.toString(), what, mend, cause);
    }
}
