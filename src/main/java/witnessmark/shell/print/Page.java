package witnessmark.shell.print;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import witnessmark.gearbox.Units;

/** Writes headings, paragraphs and lists wrapped to the width of the terminal; every text is made harmless first. */
public final class Page {
    private static final String BOLD = "\u001b[1m";
    /** Stands for a blank at which no line is broken. */
    private static final String HELD = "\u00a0";

    private static final String PLAIN = "\u001b[0m";

    private final PrintWriter out;
    private final int width;
    private final boolean coloured;
    private final Units units;

    public Page(PrintWriter out) {
        this(out, Screen.width(out), Terminal.coloured());
    }

    public Page(PrintWriter out, int width, boolean coloured) {
        this(out, width, coloured, Screen.units(out));
    }

    private Page(PrintWriter out, int width, boolean coloured, Units units) {
        this.out = out;
        this.width = width;
        this.coloured = coloured;
        this.units = units;
    }

    /** The same page for somebody who reads these units. */
    public Page in(Units read) {
        return new Page(out, width, coloured, read);
    }

    /** The same page written elsewhere, as to see how long it gets. */
    public Page on(PrintWriter other) {
        return new Page(other, width, coloured, units);
    }

    public int width() {
        return width;
    }

    /** The units that the reader of this page reads. */
    public Units units() {
        return units;
    }

    public Page heading(String text) {
        return blank().bold(text);
    }

    /** A heading without the blank line before it. */
    public Page bold(String text) {
        out.print(coloured ? BOLD : "");
        indented("", "  ", text);
        out.print(coloured ? PLAIN : "");
        return this;
    }

    /** A paragraph behind its heading, on the same line. */
    public Page labelled(String label, String text) {
        List<String> lines = wrapped(Terminal.harmless(label) + " ", "  ", text);
        String first = lines.get(0);
        int end = Math.min(first.length(), label.length());
        out.println(coloured ? BOLD + first.substring(0, end) + PLAIN + first.substring(end) : first);
        lines.stream().skip(1).forEach(out::println);
        return this;
    }

    public Page blank() {
        out.println();
        return this;
    }

    /** Text whose own spacing is kept; it is wrapped only if it is too long for a line. */
    public Page line(String text) {
        if (text.length() <= width) {
            out.println(Terminal.harmless(text));
            return this;
        }
        return indented("", "", text);
    }

    /** Lines whose spacing carries the sense, as in a table or a drawing; they are not wrapped. */
    public Page drawn(String text) {
        Terminal.harmless(text).lines().forEach(out::println);
        return this;
    }

    /** Text that must be seen: bold where the terminal can, and marked so that it stands out without. */
    public Page strong(String text) {
        return strong("", text);
    }

    /** The same behind a label whose own spacing is kept. */
    public Page strong(String label, String text) {
        wrapped(">> " + Terminal.harmless(label), "   ", text)
                .forEach(line -> out.println(coloured ? BOLD + line + PLAIN : line));
        return this;
    }

    /** A paragraph whose first line starts with {@code first} and whose others start with {@code others}. */
    public Page indented(String first, String others, String text) {
        wrapped(first, others, text).forEach(out::println);
        return this;
    }

    private List<String> wrapped(String first, String others, String text) {
        List<String> lines = new ArrayList<>();
        String lead = first;
        for (String line : Terminal.harmless(text).split("\n", -1)) {
            StringBuilder now = new StringBuilder(lead);
            boolean empty = true;
            for (String word : line.strip().replace(" %", HELD + "%").split(" +")) {
                if (!empty && now.length() + 1 + word.length() > width) {
                    lines.add(now.toString());
                    now = new StringBuilder(others);
                    empty = true;
                }
                now.append(empty ? "" : " ").append(word.replace(HELD, " "));
                empty = false;
            }
            lines.add(now.toString().stripTrailing());
            lead = others;
        }
        return lines;
    }

    public Page item(String text) {
        return indented("  - ", "    ", text);
    }

    public Page items(List<String> texts) {
        texts.forEach(this::item);
        return this;
    }

    public Page numbered(int number, String text) {
        String first = " ".repeat(number < 10 ? 2 : number < 100 ? 1 : 0) + number + ". ";
        return indented(first, "     ", text);
    }

    public Page under(String text) {
        return indented("     ", "     ", text);
    }

    /** A labelled paragraph below a numbered item. */
    public Page under(String label, String text) {
        return indented("     " + label + " ", "       ", text);
    }

    /** A line of two figures and a text that wraps beside them. */
    public Page columns(String one, String other, String text) {
        return indented(String.format("  %6s  %6s  ", one, other), " ".repeat(18), text);
    }

    public void flush() {
        out.flush();
    }
}
