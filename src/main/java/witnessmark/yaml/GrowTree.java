package witnessmark.yaml;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.common.Anchor;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.parser.Parser;
import org.snakeyaml.engine.v2.parser.ParserImpl;
import org.snakeyaml.engine.v2.scanner.StreamReader;

/**
 * Grows the tree of one document from a parser's events and stops at what a plain data file has no use for (tags,
 * anchors, aliases, a second document) before anything grows from it.
 */
final class GrowTree {
    private static final int DEEPEST = 12;
    private static final int MOST_VALUES = 500_000;

    /** The document is not read any further. */
    static final class Stopped extends RuntimeException {
        private final transient Fault fault;

        Stopped(Fault fault) {
            super(fault.sentence());
            this.fault = fault;
        }

        Fault fault() {
            return fault;
        }
    }

    private final String file;
    private final Parser events;
    private int values;

    private GrowTree(String file, Parser events) {
        this.file = file;
        this.events = events;
    }

    /** The tree of the text's one document; {@link Stopped}, or the parser's own exceptions, if it cannot be. */
    static Tree from(String file, String text) {
        // The library fails on a character of two halves at the edge of its buffer: the text fits in whole.
        LoadSettings settings = LoadSettings.builder()
                .setCodePointLimit(Integer.MAX_VALUE)
                .setBufferSize(text.length() + 1)
                .build();
        return new GrowTree(file, new ParserImpl(settings, new StreamReader(settings, text))).document();
    }

    private Tree document() {
        events.next(); // the stream begins
        if (events.checkEvent(Event.ID.StreamEnd)) {
            throw new Stopped(new Fault(file, 0, 0, "is empty", "write into it or give another file"));
        }
        events.next(); // the document begins
        Tree root = value(events.next(), 0);
        events.next(); // the document ends
        if (!events.checkEvent(Event.ID.StreamEnd)) {
            throw stopped(events.peekEvent(), "a second document begins here", "keep one document in a file");
        }
        return root;
    }

    private Tree value(Event event, int depth) {
        refuseWhatIsNotPlain(event);
        if (++values > MOST_VALUES) {
            throw stopped(event, "more than " + MOST_VALUES + " values", "take out what does not belong, or split it");
        }
        int line = line(event);
        int column = column(event);
        if (event instanceof ScalarEvent scalar) {
            return isNothing(scalar) ? new Tree.Nothing(line, column) : new Tree.Text(scalar.getValue(), line, column);
        }
        if (depth >= DEEPEST) {
            throw stopped(event, "more than " + DEEPEST + " maps and lists inside each other", "write it flatter");
        }
        return event.getEventId() == Event.ID.SequenceStart
                ? new Tree.Items(items(depth + 1), line, column)
                : new Tree.Entries(entries(depth + 1), line, column);
    }

    private List<Tree> items(int depth) {
        List<Tree> items = new ArrayList<>();
        while (!events.checkEvent(Event.ID.SequenceEnd)) {
            items.add(value(events.next(), depth));
        }
        events.next();
        return items;
    }

    private List<Tree.Entry> entries(int depth) {
        List<Tree.Entry> entries = new ArrayList<>();
        while (!events.checkEvent(Event.ID.MappingEnd)) {
            Tree name = value(events.next(), depth);
            entries.add(new Tree.Entry(name, value(events.next(), depth)));
        }
        events.next();
        return entries;
    }

    private void refuseWhatIsNotPlain(Event event) {
        if (event instanceof AliasEvent) {
            throw stopped(event, "an alias (*name) is not taken", "write the value out");
        }
        Optional<String> tag =
                event instanceof ScalarEvent scalar ? scalar.getTag() : ((CollectionStartEvent) event).getTag();
        if (tag.isPresent()) {
            throw stopped(event, "a type tag (!name) is not taken", "write the plain value");
        }
        Optional<Anchor> anchor = ((NodeEvent) event).getAnchor();
        if (anchor.isPresent()) {
            throw stopped(event, "an anchor (&name) is not taken", "put the text in quotes, or take the anchor out");
        }
    }

    /** As the JSON schema of YAML has it: a plain null, or no characters at all. */
    private static boolean isNothing(ScalarEvent scalar) {
        return scalar.isPlain()
                && (scalar.getValue().isEmpty() || scalar.getValue().equals("null"));
    }

    private Stopped stopped(Event event, String what, String mend) {
        return new Stopped(new Fault(file, line(event), column(event), what, mend));
    }

    private static int line(Event event) {
        return event.getStartMark().map(Mark::getLine).orElse(0) + 1;
    }

    private static int column(Event event) {
        return event.getStartMark().map(Mark::getColumn).orElse(0) + 1;
    }
}
