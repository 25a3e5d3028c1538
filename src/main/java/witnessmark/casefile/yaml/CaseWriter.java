package witnessmark.casefile.yaml;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import witnessmark.casefile.CaseFile;
import witnessmark.casefile.CaseForm;
import witnessmark.casefile.ExpectedOutcome;
import witnessmark.casefile.FindingEntry;
import witnessmark.casefile.PlainNumber;
import witnessmark.casefile.TextField;
import witnessmark.casefile.history.CanonicalText;
import witnessmark.casefile.history.CaseHistory;
import witnessmark.casefile.history.Entry;

/** Writes a case in its YAML form: the same case always as the same text, and {@link CaseReader} reads it back equal. */
public final class CaseWriter {
    private static final Pattern BARE = Pattern.compile("[A-Za-z][A-Za-z0-9]*(-[A-Za-z0-9]+)*");
    /** Words that one or the other YAML reader takes for something else than text. */
    private static final Pattern NOT_BARE = Pattern.compile("(?i)null|true|false|yes|no|on|off|y|n");

    /** The document as text that ends with a new line. */
    public String write(CaseDocument document) {
        CaseFile now = document.present();
        StringBuilder out = new StringBuilder();
        line(out, "case", flow(now.id().text()));
        text(out, now, TextField.TITLE);
        text(out, now, TextField.COMPLAINT);
        line(out, "vehicle", flow(CaseForm.vehicle(now.vehicle())));
        line(out, "gearbox", flow(CaseForm.gearbox(now.gearbox())));
        if (!now.claim().isEmpty()) {
            line(out, "claim", flow(now.claim().form()));
        }
        text(out, now, TextField.DRIVER_ACCOUNT);
        named(out, "findings", now.findings(), CaseWriter::finding);
        named(out, "measurements", now.measurements(), m -> flow(CaseForm.measurement(m)));
        listed(out, "notes", now.notes(), note -> block(note, "    "));
        named(out, "evidence", now.evidence(), e -> flow(CaseForm.evidence(e)));
        listed(out, "attachments", now.attachments(), a -> flow(CaseForm.attachment(a)));
        text(out, now, TextField.WORK_DONE);
        text(out, now, TextField.UNIT_STATE);
        text(out, now, TextField.VOIDED);
        text(out, now, TextField.INTERVIEW_POSITION);
        now.signedOff()
                .ifPresent(s -> line(
                        out,
                        "signed-off",
                        "{ who: " + flow(s.who()) + ", time: \"" + CanonicalText.of(s.time()) + "\""
                                + s.judgement()
                                        .map(j -> ", judgement: " + flow(j.form()))
                                        .orElse("")
                                + " }"));
        document.expected().ifPresent(expected -> expected(out, expected));
        document.history().ifPresent(history -> history(out, history));
        return out.toString();
    }

    private static void line(StringBuilder out, String key, String value) {
        out.append(key).append(": ").append(value).append('\n');
    }

    private static void text(StringBuilder out, CaseFile now, TextField field) {
        String text = now.text(field);
        if (!text.isEmpty()) {
            line(out, field.word(), block(text, "  "));
        }
    }

    private static <T> void named(StringBuilder out, String key, Map<String, T> parts, Function<T, String> written) {
        if (!parts.isEmpty()) {
            out.append(key).append(":\n");
            parts.forEach((name, part) -> line(out, "  " + flow(name), written.apply(part)));
        }
    }

    private static <T> void listed(StringBuilder out, String key, Collection<T> parts, Function<T, String> written) {
        if (!parts.isEmpty()) {
            out.append(key).append(":\n");
            parts.forEach(part -> out.append("  - ").append(written.apply(part)).append('\n'));
        }
    }

    private static String finding(FindingEntry entry) {
        return entry.note().isEmpty()
                        && entry.toldBy().isEmpty()
                        && entry.gear().isEmpty()
                ? entry.state().word()
                : flow(CaseForm.finding(entry));
    }

    private static void expected(StringBuilder out, ExpectedOutcome expected) {
        out.append("expected:\n");
        line(out, "  verdict", flow(expected.verdict()));
        line(out, "  first", flow(expected.first()));
        line(out, "  within-three", flow(expected.withinThree()));
        line(out, "  contradiction", String.valueOf(expected.contradiction()));
    }

    private static void history(StringBuilder out, CaseHistory history) {
        listed(out, "history", history.entries(), CaseWriter::entry);
    }

    private static String entry(Entry entry) {
        Map<String, Object> head = new LinkedHashMap<>();
        head.put("entry", (double) entry.number());
        head.put("time", CanonicalText.of(entry.stamp().time()));
        head.put("who", entry.stamp().who());
        String rest = "change: " + flow(CanonicalText.form(entry.change())) + "\n    hash: \"" + entry.hash() + "\"";
        return head.entrySet().stream()
                .map(e -> e.getKey() + ": " + flow(e.getValue()))
                .collect(Collectors.joining("\n    ", "", "\n    " + rest));
    }

    /** Several lines as a literal block, which is pleasant to read, where it gives them back unchanged. */
    private static String block(String text, String indent) {
        List<String> lines = text.lines().toList();
        boolean plain = lines.size() > 1
                && !text.endsWith("\n")
                && !lines.get(0).isEmpty()
                && lines.stream().allMatch(CaseWriter::isPlainLine);
        return plain
                ? "|-\n" + lines.stream().map(l -> l.isEmpty() ? l : indent + l).collect(Collectors.joining("\n"))
                : flow(text);
    }

    private static boolean isPlainLine(String line) {
        return line.equals(line.strip()) && line.chars().noneMatch(c -> c == '\t' || isHidden((char) c));
    }

    private static boolean isHidden(char c) {
        return Character.getType(c) == Character.FORMAT || c == '\u2028' || c == '\u2029';
    }

    private static String flow(Object value) {
        if (value instanceof Map<?, ?> map) {
            return map.isEmpty()
                    ? "{}"
                    : map.entrySet().stream()
                            .map(e -> flow(e.getKey()) + ": " + flow(e.getValue()))
                            .collect(Collectors.joining(", ", "{ ", " }"));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(CaseWriter::flow).collect(Collectors.joining(", ", "[", "]"));
        }
        if (value instanceof Double number) {
            return PlainNumber.of(number);
        }
        String text = String.valueOf(value);
        boolean bare = BARE.matcher(text).matches() && !NOT_BARE.matcher(text).matches();
        return bare ? text : quoted(text);
    }

    private static String quoted(String text) {
        String json = CanonicalText.quoted(text);
        StringBuilder out = new StringBuilder(json.length());
        for (int i = 0; i < json.length(); i++) {
            char c = json.charAt(i);
            out.append(isHidden(c) ? String.format("\\u%04x", (int) c) : String.valueOf(c));
        }
        return out.toString();
    }
}
