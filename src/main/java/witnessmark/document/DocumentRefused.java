package witnessmark.document;

import witnessmark.refusal.Refusal;

/** A document, template, photograph or packet that cannot be made or taken. */
public final class DocumentRefused extends Refusal {
    private static final long serialVersionUID = 1L;

    public DocumentRefused(String what, String mend) {
        super(what, mend);
    }
}
