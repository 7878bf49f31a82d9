package settlemark.ui;

import java.awt.Font;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.accessibility.AccessibleRole;
import org.jspecify.annotations.Nullable;
import settlemark.chart.Mark;
import settlemark.measure.Dimension;
import settlemark.session.ChannelView;
import settlemark.session.ProbeAddress;
import settlemark.session.ProbeView;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.Snapshot;

/** Which probe stands at each place: its value now, zero, link and health. */
final class ProbesFace extends Face {
    private static final double[] AT = {0.014, 0.15, 0.36, 0.535, 0.69, 0.82};
    private static final List<String> HEADS = List.of(
            Words.key("Channel"),
            Words.key("Probe"),
            Words.key("Now"),
            Words.key("Zero"),
            Words.key("Link"),
            Words.key("Health"));
    private final List<ProbeRow> rows = new ArrayList<>();

    ProbesFace(Look look) {
        super(look, Words.say("probes"));
    }

    @Override
    int neededWidth() {
        return look.ipx(860);
    }

    @Override
    void show(Scene scene, boolean digits) {
        Snapshot snapshot = scene.snapshot();
        while (rows.size() < snapshot.channels().size()) {
            ProbeRow row = new ProbeRow(look);
            rows.add(row);
            add(row);
            revalidate();
        }
        for (int i = 0; i < snapshot.channels().size() && digits; i++) {
            ChannelView channel = snapshot.channels().get(i);
            rows.get(i).show(shown(snapshot, channel, snapshot.probes().get(channel.probe())));
        }
    }

    private static ProbeRow.Shown shown(Snapshot snapshot, ChannelView channel, ProbeView probe) {
        Gap gap = Gap.of(channel, snapshot.timeNanos());
        boolean pressure = channel.role().dimension() == Dimension.PRESSURE;
        String zero = !pressure
                ? Words.say("not needed")
                : channel.zeroOffset() == 0
                        ? Words.say("not zeroed yet")
                        : Words.say("{0} off", Numbers.signed(channel.zeroOffset(), Gap.decimals(channel) + 1));
        String link = link(probe);
        String bad = String.format(Locale.ROOT, "%,d", probe.rejectedFrames());
        String rejected =
                probe.rejectedFrames() == 1 ? Words.say("{0} frame bad", bad) : Words.say("{0} frames bad", bad);
        String battery = Double.isNaN(probe.batteryPercent())
                ? ""
                : Words.say("battery {0} %", Numbers.fixed(probe.batteryPercent(), 0));
        return new ProbeRow.Shown(
                Numbers.capital(Words.told(channel.role().word())),
                channel.unit().symbol(),
                probe.setup().name(),
                channel.channel().label() + place(probe),
                Numbers.fixed(channel.value(), Gap.decimals(channel) + (pressure ? 1 : 0)),
                channel.stale(),
                List.of(gap.word(), Corrected.note(channel).orElse(zero)),
                List.of(link, rejected),
                Head.health(probe),
                battery);
    }

    /** Two devices of a kind are told apart by their place; the demo's own instruments have none. */
    private static String place(ProbeView probe) {
        ProbeAddress address = probe.setup().address();
        return address.scheme().equals(ProbeAddress.BLE) || address.scheme().equals(ProbeAddress.SERIAL)
                ? ", " + DeviceWords.place(address)
                : "";
    }

    /** In short: the link's own words stand beside the health. */
    private static String link(ProbeView probe) {
        return switch (probe.link()) {
            case LOST -> Words.say("lost");
            case ENDED -> Words.say("ended");
            case OVERRUN -> Words.say("overrun");
            case UP, BACK, NOTED ->
                probe.lastNanos() < 0
                        ? Words.say("no value yet")
                        : probe.losses() == 0
                                ? Words.say("up")
                                : probe.losses() == 1
                                        ? Words.say("up, lost once")
                                        : Words.say("up, lost {0} times", probe.losses());
        };
    }

    List<ProbeRow> rows() {
        return rows;
    }

    @Override
    public void doLayout() {
        int head = look.ipx(34);
        int each = Math.min(look.ipx(96), (getHeight() - head) / Math.max(1, rows.size()));
        for (int i = 0; i < rows.size(); i++) {
            rows.get(i).setBounds(0, head + i * each, getWidth(), each);
        }
    }

    @Override
    protected void paintComponent(java.awt.Graphics graphics) {
        super.paintComponent(graphics);
        Pen pen = new Pen(graphics, look);
        try {
            for (int i = 0; i < AT.length; i++) {
                double x = AT[i] * getWidth();
                double end = i + 1 < AT.length ? AT[i + 1] * getWidth() : getWidth();
                pen.fit(
                        Words.told(HEADS.get(i)),
                        look.semiBold(Look.AXIS),
                        pen.theme().ink2(),
                        x,
                        look.px(22),
                        end - x - look.px(8));
            }
            pen.line(pen.theme().rule(), 1.6, 0, look.px(33), getWidth(), look.px(33));
        } finally {
            pen.dispose();
        }
    }

    /** One place with its probe. */
    static final class ProbeRow extends Painted {
        record Shown(
                String role,
                String unit,
                String probe,
                String label,
                String value,
                boolean faded,
                List<String> zero,
                List<String> link,
                Optional<Health> health,
                String battery) {}

        private final DigitField digits;
        private @Nullable Shown shown;

        ProbeRow(Look look) {
            super(look, AccessibleRole.LIST_ITEM);
            digits = new DigitField(look);
            add(digits);
        }

        void show(Shown newShown) {
            sentence(Words.say(
                    "{0}: probe {1}, {2}, now {3} {4}, {5}, link {6}, health {7}",
                    newShown.role,
                    newShown.probe,
                    newShown.label,
                    newShown.value,
                    newShown.unit,
                    String.join(", ", newShown.zero),
                    String.join(", ", newShown.link),
                    newShown.health.map(Health::words).map(Words::told).orElse(Words.say("good"))));
            digits.sentence(newShown.value + " " + newShown.unit);
            digits.show(newShown.value, true, newShown.faded);
            if (!newShown.equals(shown)) {
                shown = newShown;
                repaint();
            }
        }

        @Override
        public void doLayout() {
            digits.digitPx(look.px(24));
            double right = AT[3] * getWidth() - look.px(40);
            digits.setBounds(
                    (int) (AT[2] * getWidth() - look.px(40)),
                    0,
                    (int) (right - AT[2] * getWidth() + look.px(40)),
                    getHeight());
        }

        @Override
        void draw(Pen pen) {
            Shown now = shown;
            if (now == null) {
                return;
            }
            double middle = getHeight() / 2.0;
            two(pen, 0, now.role, look.semiBold(Look.LABEL), now.unit, middle);
            two(pen, 1, now.probe, look.semiBold(Look.NAME), now.label, middle);
            two(pen, 3, now.zero.get(0), look.regular(Look.BODY), now.zero.get(1), middle);
            two(pen, 4, now.link.get(0), look.regular(Look.BODY), now.link.get(1), middle);
            if (now.health.isEmpty()) {
                two(pen, 5, Words.say("good"), look.regular(Look.BODY), now.battery, middle);
            } else {
                health(pen, now.health.get(), middle);
            }
            pen.line(pen.theme().hair(), 1.4, 0, getHeight() - 1, getWidth(), getHeight() - 1);
        }

        private void two(Pen pen, int column, String over, Font font, String under, double middle) {
            double x = AT[column] * getWidth();
            double end = column + 1 < AT.length ? AT[column + 1] * getWidth() : getWidth();
            double room = end - x - look.px(8);
            pen.fit(over, font, pen.theme().ink(), x, middle - look.px(2), room);
            pen.fit(under, look.regular(Look.BODY), pen.theme().ink2(), x, middle + look.px(21), room);
        }

        private void health(Pen pen, Health health, double middle) {
            double x = AT[5] * getWidth();
            double size = look.px(26);
            var color = health.health() == HealthClass.FAILURE
                    ? pen.theme().fault()
                    : pen.theme().notice();
            Mark.drawHealth(pen.g, health.health().letter(), x, middle - size / 2, size, color, pen.theme());
            double room = getWidth() - x - size - look.px(14);
            var font = look.semiBold(Look.AXIS);
            int most = Math.max(1, (int) ((getHeight() - look.px(6)) / Pen.lineHeight(font)));
            List<String> lines = Fitted.lines(Words.told(health.words()), font, room, most);
            double y = middle - Pen.lineHeight(font) * (lines.size() - 1) / 2 + look.px(4.5);
            for (String line : lines) {
                pen.text(line, font, color, x + size + look.px(9), y);
                y += Pen.lineHeight(font);
            }
        }
    }
}
