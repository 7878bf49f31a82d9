package settlemark.exchange;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/**
 * Questions to one device that may yet be answered, after their time-out. Until they are settled, what looks like the
 * answer to the next question may be theirs: a device answers in order.
 */
final class Unanswered {
    private record Sent(long nanos, long forgottenNanos, Question question) {}

    private final Deque<Sent> sent = new ArrayDeque<>();

    /** @param forgottenNanos when no answer is to be feared any more */
    void add(long sentNanos, long forgottenNanos, Question question) {
        sent.addLast(new Sent(sentNanos, forgottenNanos, question));
    }

    void forget() {
        sent.clear();
    }

    boolean isEmpty(long nowNanos) {
        while (!sent.isEmpty() && nowNanos > sent.getFirst().forgottenNanos) {
            sent.removeFirst();
        }
        return sent.isEmpty();
    }

    /** Whether all of them asked the same, so that any of their answers answers this question too. */
    boolean allAre(Question question) {
        return sent.stream().allMatch(s -> s.question.equals(question));
    }

    int count() {
        return sent.size();
    }

    long firstNanos() {
        return sent.getFirst().nanos;
    }

    /** The first of them was answered after all; returns when it was sent, null where none waits. */
    @Nullable
    Long settleFirst() {
        Sent first = sent.pollFirst();
        return first == null ? null : first.nanos;
    }
}
