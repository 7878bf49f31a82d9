package settlemark.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import settlemark.settle.JudgedChannel;
import settlemark.settle.SettleEvent;
import settlemark.settle.SettleState;

/** What the command prints: the changes of mind of one or several channels, or the state at every bin. */
final class SettleTable {
    private final CsvRows rows;
    private final boolean several;
    private final boolean explained;

    /**
     * @param several whether the file has named channels
     * @param explained whether the state at every bin is printed, else the changes of mind
     */
    SettleTable(PrintWriter out, boolean several, boolean explained) {
        this.rows = new CsvRows(out);
        this.several = several;
        this.explained = explained;
    }

    void header() {
        if (explained) {
            rows.write(
                    "file",
                    "t_s",
                    "channel",
                    "state",
                    "value",
                    "uncertainty",
                    "could_move",
                    "limit",
                    "swing",
                    "band",
                    "to_go_s",
                    "reason");
        } else if (several) {
            rows.write("file", "t_s", "channel", "event", "value", "uncertainty", "unit", "reason");
        } else {
            rows.write("file", "t_s", "event", "value", "uncertainty", "reason");
        }
    }

    void event(String file, ChannelColumn channel, double driftLimit, SettleEvent event) {
        if (explained) {
            return;
        }
        int decimals = CsvRows.decimals(driftLimit);
        String time = CsvRows.time(event.timeSeconds());
        String word = event.settled() ? "settled" : "unsettled";
        String value = CsvRows.number(event.value(), decimals);
        String uncertainty = CsvRows.number(event.uncertainty(), decimals);
        if (several) {
            String unit = channel.unit().code();
            rows.write(file, time, channel.column(), word, value, uncertainty, unit, event.reason());
        } else {
            rows.write(file, time, word, value, uncertainty, event.reason());
        }
    }

    /** All channels are settled, or one of them no longer is. */
    void together(String file, double timeSeconds, boolean ready, String words) {
        if (!explained) {
            rows.write(file, CsvRows.time(timeSeconds), "all", ready ? "ready" : "spoiled", "", "", "", words);
        }
    }

    void state(String file, double timeSeconds, ChannelColumn channel, double driftLimit, JudgedChannel judged) {
        SettleState proof = judged.proof();
        int decimals = CsvRows.decimals(driftLimit);
        List<Double> numbers = List.of(
                proof.value(), proof.uncertainty(), proof.couldMove(), proof.limit(), proof.swing(), proof.band());
        String phase = proof.phase().name().toLowerCase(Locale.ROOT).replace('_', ' ');
        List<String> said =
                numbers.stream().map(n -> CsvRows.number(n, decimals)).toList();
        String word = judged.rule().isEmpty() ? phase : judged.settled() ? "settled" : "not settled";
        rows.write(
                file,
                CsvRows.time(timeSeconds),
                several ? channel.column() : "",
                word,
                said.get(0),
                said.get(1),
                said.get(2),
                said.get(3),
                said.get(4),
                said.get(5),
                CsvRows.number(proof.secondsToGo(), 1),
                judged.reason());
    }
}
