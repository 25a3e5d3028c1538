package witnessmark.knowledge;

import java.util.List;

/**
 * What is looked at before a work, because the work takes it away.
 *
 * @param work id of the access step that spoils it
 * @param looks the findings that nobody can see afterwards
 */
public record Before(String id, String title, String work, List<String> looks) {
    public Before {
        looks = List.copyOf(looks);
    }
}
