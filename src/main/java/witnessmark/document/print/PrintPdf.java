package witnessmark.document.print;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import java.util.function.Predicate;
import java.util.zip.CRC32;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.SAXParseException;
import witnessmark.document.DocumentRefused;
import witnessmark.document.Paper;
import witnessmark.document.ShippedFont;

/**
 * Prints a page of well-formed HTML as PDF with the shipped fonts. The same page gives the same bytes: time and
 * identity in the file come from what is printed. Nothing outside the page is loaded.
 */
public final class PrintPdf {
    private static final String FONTS = "shipped:";
    private static final double[] SMALLER = {1, 0.94, 0.88, 0.82, 0.76, 0.7};
    private static final double[] SLIGHTLY_SMALLER = {0.97, 0.94, 0.91};

    private final Paper paper;
    private final Instant dated;

    /** @param dated the time the file bears; where there is none, the first second of 1970 */
    public PrintPdf(Paper paper, Optional<Instant> dated) {
        this.paper = paper;
        this.dated = dated.orElse(Instant.EPOCH);
    }

    /**
     * The page as a PDF file: a claim within it on its first sheet, and no last sheet for a few lines, if somewhat
     * smaller letters spare it; {@link DocumentRefused} if the page is not well formed.
     */
    public byte[] print(String html) {
        try {
            Printed loose = printed(html, Sizes.FULL, s -> s.claimFits() && !s.endsNearlyEmpty());
            Printed claim = loose;
            for (int size = 1; size < SMALLER.length && !claim.sheets().claimFits(); size++) {
                claim = printed(html, new Sizes(1, SMALLER[size]), s -> s.claimFits() && !s.endsNearlyEmpty());
            }
            if (claim.pdf().isPresent()) {
                return claim.pdf().get();
            }
            Optional<byte[]> fewer = fewerSheets(html, claim);
            return fewer.isPresent()
                    ? fewer.get()
                    : printed(html, claim.sizes(), s -> true).pdf().orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Optional<byte[]> fewerSheets(String html, Printed longer) throws IOException {
        for (double size : SLIGHTLY_SMALLER) {
            if (longer.sheets().endsNearlyEmpty()) {
                Printed shorter = printed(
                        html,
                        new Sizes(size, longer.sizes().claim()),
                        s -> s.count() < longer.sheets().count());
                if (shorter.pdf().isPresent()) {
                    return shorter.pdf();
                }
            }
        }
        return Optional.empty();
    }

    /** The page on one sheet, its letters made smaller until it fits; {@link DocumentRefused} if it does not. */
    public byte[] printOnOneSheet(String html) {
        try {
            for (double size : SMALLER) {
                Printed fitting = printed(html, new Sizes(size, 1), s -> s.count() == 1);
                if (fitting.pdf().isPresent()) {
                    return fitting.pdf().get();
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        throw new DocumentRefused(
                "the page does not fit one sheet of " + paper.word() + " in readable letters",
                "shorten the shop's own template or letterhead");
    }

    /** Sizes of letters against those of the style sheet: of all, and once more of a claim within a record. */
    private record Sizes(double all, double claim) {
        static final Sizes FULL = new Sizes(1, 1);
    }

    /** A page laid out; as a file only where it was found fitting. */
    private record Printed(Sizes sizes, Sheets sheets, Optional<byte[]> pdf) {}

    private Printed printed(String html, Sizes sizes, Predicate<Sheets> fits) throws IOException {
        XRLog.setLoggingEnabled(false);
        ShippedFontsOnly.use();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFastMode();
        builder.useDefaultPageSize(
                (float) paper.widthMm(), (float) paper.heightMm(), BaseRendererBuilder.PageSizeUnits.MM);
        builder.useSVGDrawer(new BatikSVGDrawer());
        builder.useUriResolver((base, uri) -> uri.startsWith("data:image/") || uri.startsWith(FONTS) ? uri : null);
        builder.useUnicodeLineBreaker(new UnbrokenNumbers());
        builder.useProtocolsStreamImplementation(ShippedStream::new, "shipped");
        builder.withProducer("witnessmark");
        builder.withW3cDocument(parsed(withFonts(html, sizes)), "");
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
            renderer.layout();
            Sheets sheets = Sheets.of(renderer);
            if (!fits.test(sheets)) {
                return new Printed(sizes, sheets, Optional.empty());
            }
            renderer.createPDFWithoutClosing();
            return new Printed(sizes, sheets, Optional.of(saved(renderer.getPdfDocument(), html)));
        }
    }

    private byte[] saved(PDDocument pdf, String html) throws IOException {
        Calendar time =
                GregorianCalendar.from(dated.atZone(TimeZone.getTimeZone("UTC").toZoneId()));
        pdf.getDocumentInformation().setCreationDate(time);
        pdf.getDocumentInformation().setModificationDate(time);
        CRC32 identity = new CRC32();
        identity.update(html.getBytes(StandardCharsets.UTF_8));
        pdf.setDocumentId(identity.getValue());
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        pdf.save(out);
        return out.toByteArray();
    }

    private static String withFonts(String html, Sizes sizes) {
        StringBuilder rules = new StringBuilder("<style>");
        for (ShippedFont font : ShippedFont.values()) {
            rules.append(String.format(
                    Locale.ROOT,
                    "@font-face{font-family:'%s';font-weight:%d;src:url(%s%s);-fs-font-subset:subset}",
                    ShippedFont.FAMILY,
                    font.weight(),
                    FONTS,
                    font.file()));
        }
        rules.append(String.format(
                Locale.ROOT,
                "body{font-size:%.2fpt}.fitted{font-size:%.2fem}</style></head>",
                9.5 * sizes.all(),
                sizes.claim()));
        return UnshownSigns.named(html).replaceFirst("</head>", rules.toString());
    }

    private static Document parsed(String html) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(new Strict());
            return builder.parse(new InputSource(new StringReader(html)));
        } catch (SAXParseException e) {
            throw new DocumentRefused(
                    "the page is not well-formed XHTML at line " + e.getLineNumber() + ": " + e.getMessage(),
                    "close every tag in the shop's own templates, or take them away");
        } catch (SAXException e) {
            throw new DocumentRefused(
                    "the page is not well-formed XHTML",
                    "leave document types and entities out of the shop's own templates, and close every tag");
        } catch (IOException | ParserConfigurationException e) {
            throw new IllegalStateException("this Java cannot read XML", e);
        }
    }

    /** Says nothing by itself; what is wrong is thrown. */
    private static final class Strict implements ErrorHandler {
        @Override
        public void warning(SAXParseException e) {
            // Nothing that could be wrong with a page is only a warning.
        }

        @Override
        public void error(SAXParseException e) throws SAXException {
            throw e;
        }

        @Override
        public void fatalError(SAXParseException e) throws SAXException {
            throw e;
        }
    }

    /** Opens the shipped fonts by name, and nothing else. */
    private static final class ShippedStream implements com.openhtmltopdf.extend.FSStream {
        private final String uri;

        ShippedStream(String uri) {
            this.uri = uri;
        }

        @Override
        public InputStream getStream() {
            for (ShippedFont font : ShippedFont.values()) {
                if (uri.equals(FONTS + font.file())) {
                    return LooseLetters.of(font);
                }
            }
            return new ByteArrayInputStream(new byte[0]);
        }

        @Override
        public java.io.Reader getReader() {
            return new java.io.InputStreamReader(getStream(), StandardCharsets.UTF_8);
        }
    }
}
