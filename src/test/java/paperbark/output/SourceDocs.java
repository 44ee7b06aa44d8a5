package paperbark.output;

import com.sun.source.doctree.DocCommentTree;
import com.sun.source.doctree.DocTree;
import com.sun.source.doctree.LinkTree;
import com.sun.source.doctree.LiteralTree;
import com.sun.source.doctree.ParamTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.DocTrees;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/**
 * What the sources say of records, their components and methods: the one place where a fact is
 * explained.
 */
final class SourceDocs {
    private final Map<String, String> words = new HashMap<>();

    private SourceDocs() {}

    /** The comments of all sources below a folder. */
    static SourceDocs read(Path sources) {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        SourceDocs docs = new SourceDocs();
        try (Stream<Path> all = Files.walk(sources);
                StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            List<Path> java = all.filter(p -> p.toString().endsWith(".java")).toList();
            JavacTask task =
                    (JavacTask)
                            compiler.getTask(
                                    null,
                                    files,
                                    d -> {},
                                    null,
                                    null,
                                    files.getJavaFileObjectsFromPaths(java));
            DocTrees trees = DocTrees.instance(task);
            for (CompilationUnitTree unit : task.parse()) {
                docs.new Scanner(trees).scan(unit, "");
            }
            return docs;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The first sentence about a type. */
    Optional<String> of(Class<?> type) {
        return Optional.ofNullable(words.get(name(type)));
    }

    /** What is said of a component or method of a type. */
    Optional<String> of(Class<?> type, String member) {
        return Stream.concat(Stream.of(type), Arrays.stream(type.getInterfaces()))
                .map(t -> words.get(name(t) + "." + member))
                .filter(Objects::nonNull)
                .findFirst();
    }

    private static String name(Class<?> type) {
        return type.getCanonicalName();
    }

    private final class Scanner extends TreePathScanner<Void, String> {
        private final DocTrees trees;

        private Scanner(DocTrees trees) {
            this.trees = trees;
        }

        @Override
        public Void visitClass(ClassTree type, String outer) {
            String name =
                    outer.isEmpty()
                            ? getCurrentPath().getCompilationUnit().getPackageName()
                                    + "."
                                    + type.getSimpleName()
                            : outer + "." + type.getSimpleName();
            DocCommentTree comment = trees.getDocCommentTree(getCurrentPath());
            if (comment != null) {
                words.put(name, text(comment.getFirstSentence()));
                for (DocTree tag : comment.getBlockTags()) {
                    if (tag instanceof ParamTree param) {
                        words.put(
                                name + "." + param.getName().getName(),
                                text(param.getDescription()));
                    }
                }
            }
            return super.visitClass(type, name);
        }

        @Override
        public Void visitMethod(MethodTree method, String type) {
            DocCommentTree comment = trees.getDocCommentTree(getCurrentPath());
            if (comment != null && method.getParameters().isEmpty()) {
                words.putIfAbsent(type + "." + method.getName(), text(comment.getFirstSentence()));
            }
            return null;
        }
    }

    private static String text(List<? extends DocTree> parts) {
        String text = parts.stream().map(SourceDocs::text).collect(Collectors.joining());
        String flat = text.replaceAll("\\s+", " ").strip();
        return flat.endsWith(".") ? flat.substring(0, flat.length() - 1) : flat;
    }

    private static String text(DocTree part) {
        if (part instanceof LiteralTree literal) {
            return "`" + literal.getBody().getBody() + "`";
        }
        return part instanceof LinkTree link ? link.getReference().getSignature() : part.toString();
    }
}
