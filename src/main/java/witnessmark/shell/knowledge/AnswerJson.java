package witnessmark.shell.knowledge;

import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;
import witnessmark.casefile.MadeWith;
import witnessmark.shell.print.Json;

/** Writes answers for machines, each with what it was made with at its end, as a page has it in its foot. */
@Component
public final class AnswerJson {
    private final ObjectProvider<MadeWith> made;

    private record Made(@Json.Inlined Record answer, @Json.Inlined MadeWithJson made) {}

    public AnswerJson(ObjectProvider<MadeWith> made) {
        this.made = made;
    }

    public String of(Record answer) {
        return Json.of(new Made(answer, MadeWithJson.of(made.getObject())));
    }
}
