package witnessmark.document.template;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.MustacheException;
import com.samskivert.mustache.Template;
import java.io.StringReader;
import java.io.StringWriter;
import witnessmark.document.DocumentRefused;

/** Fills templates; what is filled in is escaped unless the template asks for it as it is. */
public final class FillTemplate {
    private final TemplateFolder folder;
    private final String ending;
    private final Mustache.Compiler compiler;

    private FillTemplate(TemplateFolder folder, String ending, Mustache.Escaper escaper) {
        this.folder = folder;
        this.ending = ending;
        this.compiler = Mustache.compiler()
                .withEscaper(escaper)
                .emptyStringIsFalse(true)
                .withLoader(name -> new StringReader(folder.text(name + ending)));
    }

    /** Templates that end in .html, escaped for HTML and XML. */
    public static FillTemplate html(TemplateFolder folder) {
        return new FillTemplate(folder, ".html", Escape.HTML);
    }

    /** Templates that end in .md, escaped for Markdown. */
    public static FillTemplate markdown(TemplateFolder folder) {
        return new FillTemplate(folder, ".md", Escape.MARKDOWN);
    }

    /**
     * The named template filled from {@code page}, and from {@code around} where the page has no such name.
     * {@link DocumentRefused} if the template cannot be understood or names what there is not.
     */
    public String fill(String name, Object page, Object around) {
        String file = name + ending;
        try {
            StringWriter out = new StringWriter();
            compiled(file).execute(page, around, out);
            return out.toString();
        } catch (MustacheException e) {
            throw refused(file, e.getMessage());
        } catch (StringIndexOutOfBoundsException e) {
            // The filler looks at the first letter of each part of a name, and fails where there is none.
            throw refused(file, "a name in double braces has nothing before, between or behind its dots");
        }
    }

    private static DocumentRefused refused(String file, String why) {
        return new DocumentRefused("template '" + file + "': " + why, "mend it, or take the shop's own file away");
    }

    /** An empty tag makes the parser fail instead of refusing. */
    private Template compiled(String file) {
        try {
            return compiler.compile(new StringReader(folder.text(file)));
        } catch (IndexOutOfBoundsException e) {
            throw new MustacheException("a tag in double braces names nothing", e);
        }
    }
}
