package witnessmark.fleet;

import java.io.Serializable;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import witnessmark.triplog.event.HabitLimits;

/**
 * What holds for the reading of a fleet's logs: profiles and mappings as they were written, so that they can be sent. One that
 * cannot be read holds up only the logs that it is for.
 *
 * @param profiles the YAML of each truck that has its own, by the truck's name
 * @param general the YAML that all other trucks are read with; null where each must have its own
 * @param mappings the YAML of the mapping files beside the logs, by folder
 * @param mapping one for all CSV logs, before those beside them; null for none
 * @param load what is known of the load
 */
public record FleetTerms(
        Map<String, WrittenText> profiles,
        @Nullable String general,
        Map<String, WrittenText> mappings,
        @Nullable String mapping,
        HabitLimits.Load load)
        implements Serializable {

    public FleetTerms {
        profiles = new TreeMap<>(profiles);
        mappings = new TreeMap<>(mappings);
    }

    /** The profile for a truck; empty where it has none and there is none for all. */
    Optional<WrittenText> profile(String truck) {
        return Optional.ofNullable(profiles.get(truck)).or(() -> written(general));
    }

    /** The mapping for a CSV log; empty to guess it. */
    Optional<WrittenText> mapping(FleetFile file) {
        return written(mapping)
                .or(() -> Optional.ofNullable(mappings.get(file.folder())))
                .or(() -> Optional.ofNullable(mappings.get("")));
    }

    private static Optional<WrittenText> written(@Nullable String text) {
        return Optional.ofNullable(text).map(WrittenText::of);
    }

    /**
     * A mark of all that the reading of this log depends on besides its content: where it is another one, the log must be
     * read again.
     *
     * @param program what tells one build of the program from another
     */
    public String mark(FleetFile file, String program) {
        MessageDigest digest = sha256();
        for (String part : new String[] {
            program,
            load.name(),
            profile(file.truck()).map(WrittenText::text).orElse(""),
            mapping(file).map(WrittenText::text).orElse("")
        }) {
            byte[] bytes = part.getBytes(StandardCharsets.UTF_8);
            digest.update((bytes.length + ":").getBytes(StandardCharsets.UTF_8));
            digest.update(bytes);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
