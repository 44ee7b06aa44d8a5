package paperbark.output;

import freemarker.core.TemplateElement;
import freemarker.template.Configuration;
import freemarker.template.Template;
import java.io.IOException;
import java.util.Enumeration;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.swing.tree.TreeNode;

/**
 * Finds the words in a template that would let text become template code or markup, or switch
 * escaping off. The template is parsed and its directives and expressions are looked at in the
 * parser's own writing, so that neither comments nor spaces hide a word and plain text is never
 * mistaken for one.
 */
// The library has no other way to look at a parsed template than these classes of its own.
@SuppressWarnings("deprecation")
final class ForbiddenWords {
    private static final Pattern FORBIDDEN =
            Pattern.compile(
                    "(?i)\\?(interpret|eval|eval_json|evalJson|no_esc|noEsc|new|api)\\b|#(noautoesc|outputformat)\\b");
    // A header could switch escaping or the syntax itself.
    private static final Pattern HEADER = Pattern.compile("[<\\[]#ftl\\b");

    private ForbiddenWords() {}

    /**
     * Refuses the template if it has such a word; a template that cannot be parsed is left to
     * whoever uses it.
     */
    static void check(String name, String text) throws WatchedTemplates.Forbidden {
        Matcher header = HEADER.matcher(text);
        if (header.find()) {
            int line =
                    (int) text.substring(0, header.start()).chars().filter(c -> c == '\n').count()
                            + 1;
            throw new WatchedTemplates.Forbidden(name, line, 1, header.group());
        }
        Configuration plain = new Configuration(Configuration.VERSION_2_3_34);
        plain.setRecognizeStandardFileExtensions(true);
        TemplateEngine.fixSyntax(plain);
        try {
            look(name, root(new Template(name, text, plain)));
        } catch (WatchedTemplates.Forbidden e) {
            throw e;
        } catch (IOException e) {
            // Malformed: the engine tells where when the template is used.
        }
    }

    private static TemplateElement root(Template template) {
        return template.getRootTreeNode();
    }

    private static void look(String name, TemplateElement element)
            throws WatchedTemplates.Forbidden {
        String kind = element.getClass().getSimpleName();
        if (!kind.equals("TextBlock") && !kind.equals("Comment")) {
            Matcher forbidden = FORBIDDEN.matcher(element.getDescription());
            if (forbidden.find()) {
                throw new WatchedTemplates.Forbidden(
                        name, element.getBeginLine(), element.getBeginColumn(), forbidden.group());
            }
        }
        for (Enumeration<?> children = element.children(); children.hasMoreElements(); ) {
            TreeNode child = (TreeNode) children.nextElement();
            if (child instanceof TemplateElement inner) {
                look(name, inner);
            }
        }
    }
}
