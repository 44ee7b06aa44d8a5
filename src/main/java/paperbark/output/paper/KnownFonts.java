package paperbark.output.paper;

import com.openhtmltopdf.css.value.FontSpecification;
import com.openhtmltopdf.extend.FontResolver;
import com.openhtmltopdf.layout.SharedContext;
import com.openhtmltopdf.render.FSFont;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The fonts that a layout asked for, each looked up once: the library looks through all of them for
 * every element.
 */
final class KnownFonts implements FontResolver {
    private final FontResolver resolver;
    private final Map<List<Object>, FSFont> fonts = new HashMap<>();

    KnownFonts(FontResolver resolver) {
        this.resolver = resolver;
    }

    @Override
    public FSFont resolveFont(SharedContext context, FontSpecification wanted) {
        return fonts.computeIfAbsent(
                List.of(
                        Arrays.asList(wanted.families),
                        wanted.size,
                        wanted.fontWeight,
                        wanted.fontStyle,
                        wanted.variant),
                key -> resolver.resolveFont(context, wanted));
    }
}
