package settlemark.ui;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreeScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;

/** The sentences that the sources of a package put together, with a value such as 7 where something is filled in. */
final class SourceSentences extends TreeScanner<Void, String> {
    /** What stands for a value: a figure is the same in every language. */
    static final String VALUE = "7";

    private final Map<String, String> found = new TreeMap<>();

    private SourceSentences() {}

    /** By sentence, the file that it stands in. */
    static Map<String, String> of(Path folder) throws IOException {
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        SourceSentences scan = new SourceSentences();
        try (Stream<Path> paths = Files.walk(folder);
                StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            List<Path> sources =
                    paths.filter(p -> p.toString().endsWith(".java")).toList();
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, null, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources));
            for (CompilationUnitTree unit : task.parse()) {
                Path name = Path.of(unit.getSourceFile().getName()).getFileName();
                scan.scan(unit, String.valueOf(name).replace(".java", ""));
            }
        }
        return scan.found;
    }

    @Override
    public Void visitAnnotation(AnnotationTree annotation, String file) {
        return null;
    }

    @Override
    public Void visitBinary(BinaryTree sum, String file) {
        List<ExpressionTree> parts = new ArrayList<>();
        flatten(sum, parts);
        if (parts.stream().noneMatch(p -> text(p) != null)) {
            return super.visitBinary(sum, file);
        }
        StringBuilder sentence = new StringBuilder();
        for (ExpressionTree part : parts) {
            String text = text(part);
            sentence.append(text == null ? VALUE : text);
            if (text == null) {
                scan(part, file);
            }
        }
        found.put(sentence.toString(), file);
        return null;
    }

    @Override
    public Void visitLiteral(LiteralTree literal, String file) {
        if (literal.getValue() instanceof String text) {
            found.put(text, file);
        }
        return null;
    }

    private static void flatten(ExpressionTree part, List<ExpressionTree> parts) {
        ExpressionTree bare = part instanceof ParenthesizedTree inner ? inner.getExpression() : part;
        if (bare instanceof BinaryTree sum && sum.getKind() == Tree.Kind.PLUS) {
            flatten(sum.getLeftOperand(), parts);
            flatten(sum.getRightOperand(), parts);
        } else {
            parts.add(bare);
        }
    }

    private static @org.jspecify.annotations.Nullable String text(ExpressionTree part) {
        return part instanceof LiteralTree literal
                        && (literal.getValue() instanceof String || literal.getValue() instanceof Character)
                ? String.valueOf(literal.getValue())
                : null;
    }
}
