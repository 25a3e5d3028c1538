package witnessmark.document.write;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import witnessmark.document.DocumentRefused;
import witnessmark.document.Dossier;
import witnessmark.document.Form;
import witnessmark.document.Kind;
import witnessmark.document.Language;
import witnessmark.document.Paper;
import witnessmark.document.page.BenchPage;
import witnessmark.document.page.ClaimPage;
import witnessmark.document.page.CoachingPage;
import witnessmark.document.page.EvidencePage;
import witnessmark.document.page.ExplanationPage;
import witnessmark.document.page.Field;
import witnessmark.document.page.Glossary;
import witnessmark.document.page.Head;
import witnessmark.document.page.TowingPage;
import witnessmark.document.page.TruckFigures;
import witnessmark.document.print.PrintPdf;
import witnessmark.document.template.FillTemplate;
import witnessmark.document.template.TemplateFolder;

/** Writes the documents of cases, from the shipped templates or a shop's own. */
public final class WriteDocument {
    private static final List<Kind> PACKET =
            List.of(Kind.EXPLANATION, Kind.BENCH, Kind.EVIDENCE, Kind.COACHING, Kind.TOWING);

    private final TemplateFolder templates;
    private final Paper paper;

    public WriteDocument(TemplateFolder templates, Paper paper) {
        this.templates = templates;
        this.paper = paper;
    }

    /** One document; {@link DocumentRefused} where it is not written in that language, or a template does not fit. */
    public byte[] write(Dossier dossier, Kind kind, Form form, Language language) {
        if (!kind.isIn(language)) {
            throw new DocumentRefused(
                    "the " + kind.title().toLowerCase(java.util.Locale.ROOT) + " is written in English only",
                    "leave --language out; the coaching card and the towing-prep sheet are in Spanish too");
        }
        return switch (form) {
            case MARKDOWN -> markdown(dossier, kind, language).getBytes(StandardCharsets.UTF_8);
            case HTML -> ("<!DOCTYPE html>\n" + html(dossier, kind, language)).getBytes(StandardCharsets.UTF_8);
            case PDF -> pdf(dossier, kind, language);
        };
    }

    private byte[] pdf(Dossier dossier, Kind kind, Language language) {
        PrintPdf print = new PrintPdf(paper, dossier.asOf());
        String html = html(dossier, kind, language);
        return kind.isOnePage() ? print.printOnOneSheet(html) : print.print(html);
    }

    private String markdown(Dossier dossier, Kind kind, Language language) {
        FillTemplate fill = FillTemplate.markdown(templates);
        StringBuilder text = new StringBuilder();
        for (Part part : parts(kind, language)) {
            text.append(text.isEmpty() ? "" : "\n---\n\n").append(body(fill, dossier, part));
        }
        return text.toString();
    }

    private String html(Dossier dossier, Kind kind, Language language) {
        FillTemplate fill = FillTemplate.html(templates);
        List<Part> parts = parts(kind, language);
        List<Map<String, String>> bodies = new ArrayList<>();
        for (Part part : parts) {
            bodies.add(Map.of(
                    "anchor", part.kind().word() + "-" + part.language().tag(),
                    "bodyLanguage", part.language().tag(),
                    "bodyTitle", part.title(),
                    "body", body(fill, dossier, part)));
        }
        Map<String, Object> page = new LinkedHashMap<>();
        page.put("pageTitle", title(kind, language) + ": " + dossier.file().id().text());
        page.put("language", language.tag());
        page.put("style", templates.text("style.css"));
        page.put("isPacket", parts.size() > 1);
        page.put("bodies", bodies);
        page.put("words", words(language));
        return fill.fill("page", page, around(dossier, language));
    }

    private record Part(Kind kind, Language language) {
        String title() {
            return WriteDocument.title(kind, language);
        }
    }

    private static String title(Kind kind, Language language) {
        if (language == Language.ENGLISH) {
            return kind.title();
        }
        return kind == Kind.COACHING ? "Tarjeta de manejo" : "Hoja de preparación para remolque";
    }

    private static List<Part> parts(Kind kind, Language language) {
        if (kind != Kind.PACKET) {
            return List.of(new Part(kind, language));
        }
        List<Part> parts = new ArrayList<>();
        for (Kind one : PACKET) {
            for (Language each : Language.values()) {
                if (one.isIn(each)) {
                    parts.add(new Part(one, each));
                }
            }
        }
        return parts;
    }

    private String body(FillTemplate fill, Dossier dossier, Part part) {
        return fill.fill(part.kind().word(), page(dossier, part), around(dossier, part.language()));
    }

    private Object page(Dossier dossier, Part part) {
        return switch (part.kind()) {
            case BENCH -> BenchPage.of(dossier);
            case EXPLANATION -> ExplanationPage.of(dossier, Glossary.parse(templates.text("glossary.txt")));
            case CLAIM -> Map.of("claim", ClaimPage.of(dossier));
            case EVIDENCE -> EvidencePage.of(dossier);
            case COACHING -> CoachingPage.of(
                    dossier, part.language(), figures(dossier, part.language()), words(part.language()));
            case TOWING -> TowingPage.of(dossier, part.language());
            case PACKET -> throw new IllegalArgumentException("a packet is made of its parts");
        };
    }

    private static List<Field> figures(Dossier dossier, Language language) {
        return dossier.truck().map(t -> TruckFigures.forDriver(t, language)).orElse(List.of());
    }

    private Map<String, Object> around(Dossier dossier, Language language) {
        Map<String, Object> around = new LinkedHashMap<>();
        around.put("head", Head.of(dossier));
        around.put("logo", logo());
        around.put("words", words(language));
        return around;
    }

    /** The words of the one-page sheets in the language. */
    private Map<String, String> words(Language language) {
        Properties read = new Properties();
        try {
            read.load(new java.io.StringReader(templates.text("words." + language.tag() + ".txt")));
        } catch (java.io.IOException | IllegalArgumentException e) {
            throw new DocumentRefused("words." + language.tag() + ".txt cannot be read", "write 'name = words' a line");
        }
        Map<String, String> words = new LinkedHashMap<>();
        read.stringPropertyNames().forEach(name -> words.put(name, read.getProperty(name)));
        return words;
    }

    /** The shop's logo as a data address; empty without one. */
    private String logo() {
        for (String type : List.of("png", "jpeg")) {
            Optional<byte[]> bytes = templates.bytes("logo." + (type.equals("jpeg") ? "jpg" : type));
            if (bytes.isPresent()) {
                return "data:image/" + type + ";base64," + Base64.getEncoder().encodeToString(bytes.get());
            }
        }
        return "";
    }
}
