package witnessmark.document;

/** A document, template, photograph or packet cannot be made or taken; the message says what, where and the mend. */
public final class DocumentRefused extends RuntimeException {
    public DocumentRefused(String what, String mend) {
        super(what + "; " + mend);
    }
}
