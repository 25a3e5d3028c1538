package witnessmark.document.drawing;

import java.util.List;

/**
 * How one cause brings damage about.
 *
 * @param standing how far it may be spoken of, in words
 * @param cause its title
 * @param mechanism what it does, in plain sentences
 * @param marks what was found that it explains; may be empty
 */
public record DamageStory(String standing, String cause, String mechanism, List<String> marks) {}
