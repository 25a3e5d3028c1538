package witnessmark.casefile.yaml;

import org.snakeyaml.engine.v2.common.Anchor;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.parser.Parser;

/** Passes on what a plain data file is made of and refuses the rest before any tree grows from it. */
final class GuardedParser implements Parser {
    private final Parser inner;
    private final int deepest;
    private final FaultList faults;
    private int depth;

    GuardedParser(Parser inner, int deepest, FaultList faults) {
        this.inner = inner;
        this.deepest = deepest;
        this.faults = faults;
    }

    @Override
    public boolean checkEvent(Event.ID choice) {
        return inner.checkEvent(choice);
    }

    @Override
    public Event peekEvent() {
        return inner.peekEvent();
    }

    @Override
    public boolean hasNext() {
        return inner.hasNext();
    }

    @Override
    public Event next() {
        return checked(inner.next());
    }

    private Event checked(Event event) {
        switch (event.getEventId()) {
            case Alias -> refuse(event, "an alias (*name) is not taken", "write the value out");
            case MappingStart, SequenceStart -> {
                depth++;
                if (depth > deepest) {
                    refuse(event, "more than " + deepest + " maps and lists inside each other", "write it flatter");
                }
                refuseTag(event, ((CollectionStartEvent) event).getTag().isPresent());
                refuseAnchor(event);
            }
            case MappingEnd, SequenceEnd -> depth--;
            case Scalar -> {
                refuseTag(event, ((ScalarEvent) event).getTag().isPresent());
                refuseAnchor(event);
            }
            default -> {
                // the start and end of the stream and of the document carry nothing to refuse
            }
        }
        return event;
    }

    private void refuseTag(Event event, boolean tagged) {
        if (tagged) {
            refuse(event, "a type tag (!name) is not taken", "write the plain value");
        }
    }

    private void refuseAnchor(Event event) {
        if (((NodeEvent) event).getAnchor().map(Anchor::getValue).isPresent()) {
            refuse(event, "an anchor (&name) is not taken", "put the text in quotes, or take the anchor out");
        }
    }

    private void refuse(Event event, String what, String mend) {
        Mark mark = event.getStartMark().orElseThrow();
        faults.add(mark.getLine() + 1, mark.getColumn() + 1, what, mend);
        throw faults.failure();
    }
}
