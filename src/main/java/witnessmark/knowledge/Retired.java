package witnessmark.knowledge;

import java.util.List;

/**
 * A finding that is no longer asked because it mixed several; stored cases still name it.
 *
 * @param title what it was called
 * @param now the findings it is told apart into; present it means one of these, absent none of them
 */
public record Retired(String id, String title, List<String> now) {
    public Retired {
        now = List.copyOf(now);
    }

    /** It as a finding that nothing links, so that a stored case can still be shown. */
    Finding asFinding(Finding like) {
        return like.named(id, title);
    }
}
