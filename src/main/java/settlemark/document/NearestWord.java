package settlemark.document;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The word that was probably meant by one that nobody knows. */
public final class NearestWord {
    private static final int MAXIMUM_LENGTH = 64;

    private NearestWord() {}

    /** The nearest word at most two edits or a third of its length away, compared without case and hyphens. */
    public static Optional<String> to(String typed, List<String> words) {
        if (typed.length() > MAXIMUM_LENGTH) {
            return Optional.empty();
        }
        String typedPlain = plain(typed);
        String nearest = "";
        int best = Integer.MAX_VALUE;
        for (String word : words) {
            int allowed = Math.min(Math.max(2, word.length() / 3), word.length() - 2);
            String plain = plain(word);
            // The difference in length is the least that it takes.
            if (Math.abs(plain.length() - typedPlain.length()) > allowed) {
                continue;
            }
            int distance = edits(typedPlain, plain);
            if (distance <= allowed && distance < best) {
                best = distance;
                nearest = word;
            }
        }
        return nearest.isEmpty() ? Optional.empty() : Optional.of(nearest);
    }

    private static String plain(String word) {
        return word.toLowerCase(Locale.ROOT).replace("-", "").replace("_", "").replace(" ", "");
    }

    /** Levenshtein distance, with a swap of neighbours counted as one edit (optimal string alignment). */
    private static int edits(String a, String b) {
        int[][] cost = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                cost[i][j] = i == 0 || j == 0 ? i + j : cheapest(a, b, i, j, cost);
            }
        }
        return cost[a.length()][b.length()];
    }

    private static int cheapest(String a, String b, int i, int j, int[][] cost) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        int least = Math.min(cost[i - 1][j - 1] + change, Math.min(cost[i - 1][j], cost[i][j - 1]) + 1);
        boolean swapped = i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
        return swapped ? Math.min(least, cost[i - 2][j - 2] + 1) : least;
    }
}
