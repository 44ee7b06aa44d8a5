package paperbark.output;

import freemarker.core.Environment;
import freemarker.core.InvalidReferenceException;
import freemarker.core.ParseException;
import freemarker.core.TemplateElement;
import freemarker.core._CoreAPI;
import freemarker.template.Template;
import freemarker.template.TemplateException;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;

/** One template filled in once, within limits, with every mishap told as a broken template. */
// The library has no other way to look at a running template than these classes of its own.
@SuppressWarnings("deprecation")
final class TemplateRun {
    private final String name;
    private final Source source;
    private boolean ranOutOfTime;
    private final AtomicReference<Environment> running = new AtomicReference<>();
    private volatile Optional<TemplateElement> stoppedAt = Optional.empty();

    /** Where the template comes from. */
    interface Source {
        Template template() throws IOException;
    }

    TemplateRun(String name, Source source) {
        this.name = name;
        this.source = source;
    }

    /**
     * What the template prints.
     *
     * @throws BrokenTemplate when it is malformed, forbidden, asks for something that is not there
     *     or does not end
     */
    String fill(Map<String, Object> model, RunLimit limit) throws BrokenTemplate {
        return within(limit, () -> print(model, limit.longestText()));
    }

    /**
     * Reads the template without filling it in.
     *
     * @throws BrokenTemplate when it is malformed or forbidden
     */
    void read(RunLimit limit) throws BrokenTemplate {
        within(limit, source::template);
    }

    private <T> T within(RunLimit limit, RunLimit.Work<T, Exception> work) throws BrokenTemplate {
        try {
            return limit.run(work, this::noteThePlace);
        } catch (RunLimit.Exceeded e) {
            throw exceeded(e);
        } catch (ParseException e) {
            throw broken(e);
        } catch (WatchedTemplates.Forbidden e) {
            throw e.broken();
        } catch (TemplateException e) {
            throw broken(e);
        } catch (IOException e) {
            throw unreadable(e);
        } catch (Exception e) {
            throw new IllegalStateException("a template failed in an unforeseen way", e);
        }
    }

    /** Whether it was given up because of the time it took. */
    boolean ranOutOfTime() {
        return ranOutOfTime;
    }

    private String print(Map<String, Object> model, int longest)
            throws IOException, TemplateException {
        LimitedText out = new LimitedText(longest);
        Environment environment = source.template().createProcessingEnvironment(model, out);
        running.set(environment);
        environment.process();
        return out.toString();
    }

    /** The step that a template without end is at; once stopped it is nowhere. */
    private void noteThePlace() {
        TemplateElement[] steps =
                Optional.ofNullable(running.get())
                        .map(_CoreAPI::getInstructionStackSnapshot)
                        .orElse(new TemplateElement[0]);
        stoppedAt = steps.length == 0 ? Optional.empty() : Optional.ofNullable(steps[0]);
    }

    private BrokenTemplate exceeded(RunLimit.Exceeded e) {
        ranOutOfTime = e.reason() == RunLimit.Reason.TIME;
        String at = stoppedAt.map(s -> s.getTemplate().getSourceName()).orElse(name);
        int line = stoppedAt.map(TemplateElement::getBeginLine).orElse(0);
        int column = stoppedAt.map(TemplateElement::getBeginColumn).orElse(0);
        return new BrokenTemplate(at, line, column, "The template " + e.getMessage() + ".");
    }

    private BrokenTemplate unreadable(IOException e) {
        if (e instanceof LimitedText.TooLong) {
            return new BrokenTemplate(name, 0, 0, e.getMessage());
        }
        // The second attempt at a malformed template wraps the first one's exception.
        if (e.getCause() instanceof WatchedTemplates.Forbidden forbidden) {
            return forbidden.broken();
        }
        return e.getCause() instanceof ParseException cause
                ? broken(cause)
                : new BrokenTemplate(name, 0, 0, "The template cannot be read.");
    }

    private BrokenTemplate broken(TemplateException e) {
        if (e.getCause() instanceof WatchedTemplates.Forbidden forbidden) {
            return forbidden.broken();
        }
        return new BrokenTemplate(
                Optional.ofNullable(e.getTemplateSourceName()).orElse(name),
                Optional.ofNullable(e.getLineNumber()).orElse(0),
                Optional.ofNullable(e.getColumnNumber()).orElse(0),
                fact(e),
                e instanceof InvalidReferenceException);
    }

    private static BrokenTemplate broken(ParseException e) {
        return new BrokenTemplate(
                e.getTemplateName(),
                e.getLineNumber(),
                e.getColumnNumber(),
                NearestName.toWord(firstLine(e.getEditorMessage())));
    }

    /** The engine's own first line says only that something is not there, without its name. */
    private static String fact(TemplateException e) {
        String asked = e.getBlamedExpressionString();
        if (e instanceof InvalidReferenceException && asked != null) {
            return "The template asks for \""
                    + asked
                    + "\", which is not there"
                    + NearestName.known(e.getEnvironment())
                    + ".";
        }
        return NearestName.toWord(e.getMessageWithoutStackTop());
    }

    /** The first line may announce a long list of what the parser would have taken instead. */
    private static String firstLine(String message) {
        return message.lines()
                .findFirst()
                .orElse("")
                .strip()
                .replaceFirst(",? but was expecting [^:]*:$", ", which does not belong there.");
    }
}
