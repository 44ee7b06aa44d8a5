package paperbark.output.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.cos.COSStream;

/**
 * Head and foot of the pages of a document: the job, the batch and the firm stand on all of them at
 * the same place, and are written once.
 */
final class RunningHeads {
    // One page in so many may have another head, and does not spoil it for the rest.
    private static final int ODD = 10;

    private static final Op BEGIN = new Op.Begin(Mark.PAGINATION);

    // What most pages have, by its key.
    private final Map<String, Op> shared = new LinkedHashMap<>();
    private final Map<List<Op>, Map<String, Op>> heads = new IdentityHashMap<>();
    private Optional<COSStream> stream = Optional.empty();

    /** What the heads of these pages have in common. */
    RunningHeads(Collection<List<Op>> pages) {
        Map<String, Integer> counts = new HashMap<>();
        Map<String, Op> all = new LinkedHashMap<>();
        int having = 0;
        for (List<Op> page : pages) {
            Map<String, Op> head = head(page);
            heads.put(page, head);
            head.keySet().forEach(key -> counts.merge(key, 1, Integer::sum));
            head.forEach(all::putIfAbsent);
            having += head.isEmpty() ? 0 : 1;
        }
        int enough = having - having / ODD;
        all.forEach(
                (key, op) -> {
                    if (enough > 1 && counts.get(key) >= enough) {
                        shared.put(key, op);
                    }
                });
    }

    /** The content that draws it; empty if the page has it not. */
    Optional<COSStream> of(List<Op> page) throws IOException {
        if (shared.isEmpty() || !headOf(page).keySet().containsAll(shared.keySet())) {
            return Optional.empty();
        }
        if (stream.isEmpty()) {
            List<Op> ops = new ArrayList<>(shared.values());
            ops.add(0, BEGIN);
            ops.add(new Op.End());
            stream = Optional.of(Streams.of(new PageText(ops, (a, b) -> false, 0).write()));
        }
        return stream;
    }

    /** The steps of such a page without it. */
    List<Op> rest(List<Op> page) {
        int end = end(page);
        List<Op> rest = new ArrayList<>(page.size());
        page.subList(0, end).stream().filter(RunningHeads::isSetting).forEach(rest::add);
        rest.add(BEGIN);
        headOf(page)
                .forEach(
                        (key, op) -> {
                            if (!shared.containsKey(key)) {
                                rest.add(op);
                            }
                        });
        rest.add(new Op.End());
        rest.addAll(page.subList(end, page.size()));
        return rest;
    }

    private Map<String, Op> headOf(List<Op> page) {
        return heads.computeIfAbsent(page, RunningHeads::head);
    }

    /** Where the head of a page ends: whole marks of words and boxes alone, before all else. */
    private static int end(List<Op> page) {
        int end = 0;
        boolean open = false;
        for (int i = 0; i < page.size() && isOfHead(page.get(i)); i++) {
            Op op = page.get(i);
            open = op.equals(BEGIN) || open && !(op instanceof Op.End);
            if (!open) {
                end = i + 1;
            }
        }
        return end;
    }

    private static boolean isOfHead(Op op) {
        return op instanceof Op.Text
                || op instanceof Op.Box
                || op instanceof Op.End
                || op.equals(BEGIN)
                || isSetting(op);
    }

    /** How lines are drawn is nothing that a head needs, but what follows may. */
    private static boolean isSetting(Op op) {
        return op instanceof Op.Other other && other.kind() == Op.Kind.LINES;
    }

    /** What the head of a page draws; what is drawn twice has two keys. */
    private static Map<String, Op> head(List<Op> page) {
        Map<String, Op> head = new LinkedHashMap<>();
        for (Op op : page.subList(0, end(page))) {
            if (op instanceof Op.Text || op instanceof Op.Box) {
                String key = key(op);
                while (head.containsKey(key)) {
                    key += "+";
                }
                head.put(key, op);
            }
        }
        return head;
    }

    private static String key(Op op) {
        return op instanceof Op.Text text
                ? String.join(
                        " ",
                        text.colour(),
                        text.slant(),
                        "" + text.face(),
                        "" + text.size(),
                        "" + text.x(),
                        "" + text.y(),
                        new String(text.shown(), StandardCharsets.ISO_8859_1))
                : op.toString();
    }
}
