package settlemark.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import settlemark.profile.Profile;
import settlemark.session.Damage;
import settlemark.session.Note;
import settlemark.session.RepairReport;
import settlemark.session.StoreException;

/**
 * Moves what can be read of one workspace into another, new one. A session keeps its number. What cannot be saved is said;
 * a session that has lost something has a note that says so.
 */
final class Salvage {
    private static final int MOST_NOTED = 20;

    private final Connection from;
    private final Connection into;
    private final Failures failures;
    private final Function<String, Profile> profiles;
    private final Instant now;
    private final Findings lost = new Findings();
    private final List<RepairReport.Saved> saved = new ArrayList<>();

    Salvage(Connection from, Connection into, Failures failures, Function<String, Profile> profiles, Instant now) {
        this.from = from;
        this.into = into;
        this.failures = failures;
        this.profiles = profiles;
        this.now = now;
    }

    List<RepairReport.Saved> saved() {
        return List.copyOf(saved);
    }

    List<Damage> lost() {
        return lost.listed();
    }

    void run() throws SQLException, StoreException {
        RowCopy copy = new RowCopy(from, into, lost);
        HeaderSalvage headers = new HeaderSalvage(from, into, failures, profiles, lost);
        transaction(() -> {
            headers.profiles();
            copy.settings();
            new InstrumentSalvage(from, into, lost).run();
        });
        Survey survey = Survey.of(from);
        Set<Long> sessions = new TreeSet<>(headers.read());
        sessions.addAll(survey.keys(Results.OF_THE_DAY));
        Set<Long> kept = new TreeSet<>();
        for (long session : sessions) {
            transaction(() -> {
                if (session(session, headers, survey, copy)) {
                    kept.add(session);
                }
            });
        }
        rereadings(kept, headers, survey, copy);
    }

    @FunctionalInterface
    private interface Work {
        void run() throws SQLException, StoreException;
    }

    private void transaction(Work work) throws SQLException, StoreException {
        Connections.run(into, "BEGIN IMMEDIATE");
        try {
            work.run();
            Connections.run(into, "COMMIT");
        } catch (SQLException | StoreException | RuntimeException e) {
            Connections.rollBack(into, e);
            throw e;
        }
    }

    private boolean session(long session, HeaderSalvage headers, Survey survey, RowCopy copy)
            throws SQLException, StoreException {
        String name = Results.OF_THE_DAY.name(session);
        int before = lost.listed().size();
        int most = survey.samples(Results.OF_THE_DAY, session).stream()
                .mapToInt(BlockPlace::probe)
                .map(p -> p + 1)
                .max()
                .orElse(0);
        if (!headers.session(session, most)) {
            everything(Results.OF_THE_DAY, session, name, survey);
            return false;
        }
        List<ProbeFacts> probes = headers.facts(session);
        long lastBatch = copy.results(Results.OF_THE_DAY, session, name, probes.size());
        EventSalvage events = new EventSalvage(from, into, failures, session, probes.size(), survey, lost);
        events.sealed();
        SeriesSalvage series =
                new SeriesSalvage(from, into, failures, Results.OF_THE_DAY, session, name, probes, survey, lost);
        series.run(lastBatch, events);
        long readings = copy.readings();
        saved.add(new RepairReport.Saved(name, series.saved(), stored(probes), events.saved(), readings));
        copy.papers(session);
        note(session, lost.listed().subList(before, lost.listed().size()));
        return true;
    }

    private static long stored(List<ProbeFacts> probes) {
        return probes.stream().anyMatch(p -> p.samples() < 0)
                ? -1
                : probes.stream().mapToLong(ProbeFacts::samples).sum();
    }

    private void note(long session, List<Damage> of) throws SQLException {
        if (of.isEmpty()) {
            return;
        }
        StringBuilder text = new StringBuilder("This workspace was repaired. Lost of this session:");
        of.stream().limit(MOST_NOTED).forEach(d -> text.append('\n').append(d));
        if (of.size() > MOST_NOTED) {
            text.append("\nand ").append(of.size() - MOST_NOTED).append(" more");
        }
        String whole = text.length() > Note.MOST_CHARACTERS ? text.substring(0, Note.MOST_CHARACTERS) : text.toString();
        PaperRows.insert(into, session, new Note(OptionalLong.empty(), now, whole));
    }

    /** What is lost with a session or rereading that has no header. */
    private void everything(Results results, long key, String name, Survey survey) {
        Map<Integer, Integer> blocks = new TreeMap<>();
        for (BlockPlace place : survey.samples(results, key)) {
            blocks.merge(place.probe(), 1, Integer::sum);
        }
        blocks.forEach((probe, count) -> lost.add(new Damage(
                name,
                "number " + probe,
                "",
                SeriesSalvage.span(survey.samples(results, key), probe),
                count + " blocks of samples cannot be saved without a header")));
    }

    private void rereadings(Set<Long> sessions, HeaderSalvage headers, Survey survey, RowCopy copy)
            throws SQLException, StoreException {
        Map<Long, String> names = new HashMap<>();
        for (HeaderSalvage.RereadingRow row : headers.rereadings()) {
            String name = SqliteRereadings.name((int) row.number(), row.session());
            names.put(row.id(), name);
            if (!row.complete()) {
                continue;
            }
            transaction(() -> {
                boolean kept = sessions.contains(row.session()) && headers.rereading(row);
                if (!kept) {
                    lost.add(Damage.of(name, "it cannot be saved, because its session or its probes are lost"));
                    return;
                }
                List<ProbeFacts> probes = headers.rereadingFacts(row.id());
                long last = copy.results(Results.OF_A_REREADING, row.id(), name, probes.size());
                SeriesSalvage series = new SeriesSalvage(
                        from, into, failures, Results.OF_A_REREADING, row.id(), name, probes, survey, lost);
                series.run(last, EventSalvage.NONE);
                saved.add(new RepairReport.Saved(name, series.saved(), stored(probes), 0, copy.readings()));
            });
        }
        for (long key : survey.keys(Results.OF_A_REREADING)) {
            if (!names.containsKey(key)) {
                everything(Results.OF_A_REREADING, key, Results.OF_A_REREADING.name(key), survey);
            }
        }
    }
}
