package settlemark.ui;

import java.awt.Graphics;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import javax.accessibility.AccessibleRole;
import javax.swing.JPanel;
import settlemark.job.JobPlan;
import settlemark.measure.Channel;
import settlemark.measure.Dimension;
import settlemark.measure.Role;
import settlemark.measure.Unit;
import settlemark.session.DeviceView;
import settlemark.session.ProbeView.Health;
import settlemark.session.ProbeView.HealthClass;
import settlemark.session.RoleChoice;
import settlemark.session.SettleFit;

/** Before a job: a row for each role with the probe that is to give it, and below them what is found and free. */
final class FoundFace extends JPanel {
    private static final int MOST_TILES = 3;
    private static final double ROW = 66;
    private static final double TILE = 64;

    private final transient Look look;
    private final transient Consumer<Role> chooseFor;
    private final transient Consumer<DeviceView> chooseOf;
    private final transient Runnable all;
    private final List<RoleRow> rows = new ArrayList<>();
    private final List<FoundTile> tiles = new ArrayList<>();
    private final Remarks remarks;
    private final PickList pick;
    private final PairingPanel pairing;
    private transient List<Role> roles = List.of();
    private transient List<DeviceView> free = List.of();

    /**
     * @param chooseFor gets the role whose probe is to be chosen
     * @param chooseOf gets the device that a role is to be chosen for
     * @param all shows every free device
     */
    FoundFace(Look look, Consumer<Role> chooseFor, Consumer<DeviceView> chooseOf, Runnable all) {
        super(null);
        this.look = look;
        this.chooseFor = chooseFor;
        this.chooseOf = chooseOf;
        this.all = all;
        pick = new PickList(look);
        pairing = new PairingPanel(look);
        remarks = new Remarks(look);
        add(pick);
        add(pairing);
        for (int i = 0; i < Role.values().length; i++) {
            int index = i;
            RoleRow row = new RoleRow(look, () -> chooseRow(index));
            rows.add(row);
            add(row);
        }
        for (int i = 0; i < MOST_TILES; i++) {
            int index = i;
            FoundTile tile = new FoundTile(look, () -> pressed(index));
            tiles.add(tile);
            add(tile);
        }
        add(remarks);
        getAccessibleContext().setAccessibleName(Words.say("probes"));
    }

    private void chooseRow(int index) {
        chooseFor.accept(roles.get(index));
    }

    private void pressed(int index) {
        if (isMore(index)) {
            all.run();
        } else if (index < free.size()) {
            chooseOf.accept(free.get(index));
        }
    }

    private boolean isMore(int index) {
        return index == MOST_TILES - 1 && free.size() > MOST_TILES;
    }

    PickList pick() {
        return pick;
    }

    PairingPanel pairing() {
        return pairing;
    }

    /** Whether something is asked over the rows. */
    boolean isAsking() {
        return pick.isVisible() || pairing.isVisible();
    }

    /** @param sinceSeconds since the last look */
    void show(SetUp setUp, Units units, double sinceSeconds) {
        roles = setUp.roles();
        free = setUp.free();
        for (int i = 0; i < roles.size(); i++) {
            rows.get(i).show(shown(setUp, roles.get(i), units, sinceSeconds));
        }
        for (int i = 0; i < tiles.size(); i++) {
            tiles.get(i).setVisible(!isAsking() && i < free.size());
            if (isMore(i)) {
                tiles.get(i)
                        .show(new FoundTile.Shown(
                                Words.say("and {0} more", free.size() - MOST_TILES + 1),
                                Words.say("all that was found"),
                                Optional.empty(),
                                true));
            } else if (i < free.size()) {
                DeviceView device = free.get(i);
                boolean readable = setUp.isReadable(device);
                tiles.get(i)
                        .show(new FoundTile.Shown(
                                DeviceWords.title(device),
                                device.health().isPresent()
                                        ? DeviceWords.link(device)
                                        : DeviceWords.line(device, readable, sinceSeconds),
                                device.health(),
                                readable));
            }
        }
        for (int i = 0; i < rows.size(); i++) {
            rows.get(i).setVisible(!isAsking() && i < roles.size());
        }
        remarks.setVisible(!isAsking());
        remarks.say(setUp.remarks(), free.isEmpty());
        doLayout();
        repaint();
    }

    private static RoleRow.Shown shown(SetUp setUp, Role role, Units units, double sinceSeconds) {
        Unit unit = role.gasAnalysis()
                ? SettleFit.analysisUnit(role)
                : role.dimension() == Dimension.PRESSURE ? units.pressure() : units.temperature();
        String under = needs(setUp.plan(), role) ? unit.symbol() : Words.say("not needed");
        String word = name(role);
        Optional<RoleChoice.Place> chosen = setUp.choice().of(role);
        if (chosen.isEmpty()) {
            return new RoleRow.Shown(word, under, "", "", List.of(""), List.of(""), Optional.empty(), "");
        }
        RoleChoice.Place place = chosen.get();
        Channel channel = place.what();
        List<String> readAs = List.of(
                place.profile().name(), channel.label() + ", " + channel.unit().symbol());
        Optional<DeviceView> device = setUp.device(place.address());
        return new RoleRow.Shown(
                word,
                under,
                place.name() + ", " + channel.label(),
                DeviceWords.place(place.address()),
                readAs,
                device.map(d -> List.of(DeviceWords.link(d), DeviceWords.heard(d, sinceSeconds)))
                        .orElse(List.of(Words.say("not in reach"))),
                device.map(DeviceView::health)
                        .orElse(Optional.of(
                                new Health(HealthClass.FAILURE, Words.say("it was not found by the last look")))),
                device.map(DeviceWords::battery).orElse(""));
    }

    /** In short, as the column is narrow. */
    private static String name(Role role) {
        return switch (role) {
            case OXYGEN -> "O\u2082";
            case CARBON_DIOXIDE -> "CO\u2082";
            case CARBON_MONOXIDE -> "CO";
            case ROOM_CARBON_MONOXIDE -> Words.say("CO, room");
            case SUPPLY_STATIC -> Words.say("Supply static");
            case RETURN_STATIC -> Words.say("Return static");
            default -> Numbers.capital(Words.told(role.word()));
        };
    }

    private static boolean needs(JobPlan plan, Role role) {
        return RoleChoice.needed(plan).contains(role);
    }

    List<RoleRow> rows() {
        return rows.subList(0, inUse());
    }

    /** A plan has fewer roles than there are. */
    private int inUse() {
        return Math.max(1, roles.size());
    }

    List<FoundTile> tiles() {
        return tiles.stream().filter(FoundTile::isVisible).toList();
    }

    String remarks() {
        return remarks.sentence();
    }

    void restyle() {
        pick.restyle();
        pairing.restyle();
    }

    @Override
    public void doLayout() {
        pick.setBounds(0, 0, getWidth(), getHeight());
        pairing.setBounds(0, 0, getWidth(), getHeight());
        int head = look.ipx(34);
        int foot = look.ipx(TILE) + look.ipx(8) + remarks.heightFor(getWidth());
        int each = Math.min(look.ipx(ROW), Math.max(1, (getHeight() - head - foot) / inUse()));
        for (int i = 0; i < inUse(); i++) {
            rows.get(i).setBounds(0, head + i * each, getWidth(), each);
        }
        int y = head + inUse() * each + look.ipx(8);
        int x = (int) (RoleRow.AT[1] * getWidth()) - WordButton.ringPx();
        int wide = (getWidth() - x - look.ipx(8)) / MOST_TILES;
        for (int i = 0; i < tiles.size(); i++) {
            tiles.get(i).setBounds(x + i * wide, y, wide - look.ipx(4), look.ipx(TILE));
        }
        y += look.ipx(TILE);
        remarks.setBounds(0, y, getWidth(), Math.max(1, getHeight() - y));
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        graphics.setColor(look.theme().sheet());
        graphics.fillRect(0, 0, getWidth(), getHeight());
        Pen pen = new Pen(graphics, look);
        try {
            if (isAsking()) {
                return;
            }
            for (int i = 0; i < RoleRow.AT.length; i++) {
                double x = RoleRow.AT[i] * getWidth();
                double end = (i + 1 < RoleRow.AT.length ? RoleRow.AT[i + 1] : 1) * getWidth();
                pen.fit(
                        Words.told(RoleRow.HEADS.get(i)),
                        look.semiBold(Look.AXIS),
                        pen.theme().ink2(),
                        x,
                        look.px(22),
                        end - x - look.px(8));
            }
            pen.line(pen.theme().rule(), 1.6, 0, look.px(33), getWidth(), look.px(33));
            RoleRow last = rows.get(inUse() - 1);
            double y = last.getY() + last.getHeight() + look.px(8);
            double x = RoleRow.AT[0] * getWidth();
            double room = (RoleRow.AT[1] - RoleRow.AT[0]) * getWidth() - look.px(6);
            pen.fit(
                    Words.say("Found, free"),
                    look.semiBold(Look.BODY),
                    pen.theme().ink(),
                    x,
                    y + look.px(24),
                    room);
            pen.fit(
                    Words.say("click, or Tab"),
                    look.regular(Look.AXIS),
                    pen.theme().ink2(),
                    x,
                    y + look.px(42),
                    room);
        } finally {
            pen.dispose();
        }
    }

    /** What cannot be looked for and the remedy. */
    private static final class Remarks extends Painted {
        private static final int MOST_LINES = 3;
        private List<String> said = List.of();

        Remarks(Look look) {
            super(look, AccessibleRole.LABEL);
        }

        void say(List<String> remarks, boolean nothing) {
            List<String> all = new ArrayList<>(remarks.stream().map(Words::told).toList());
            if (remarks.isEmpty()) {
                all.add(Words.say("It looks again by itself. Nothing is connected before the job starts."));
            }
            if (nothing) {
                all.add(
                        Words.say(
                                "Nothing else is in reach: plug the gauge in, or switch the Bluetooth probe on and free it from a telephone. A port that is not listed is named by hand."));
            }
            said = List.copyOf(all);
            sentence(String.join(" ", all));
        }

        private List<String> lines(double width) {
            List<String> lines = new ArrayList<>();
            double room = width * (1 - RoleRow.AT[1]) - look.px(16);
            for (String one : said) {
                lines.addAll(Pen.wrap(one, look.regular(Look.BODY), room));
            }
            return lines;
        }

        int heightFor(int width) {
            int lines = Math.min(MOST_LINES, Math.max(1, lines(width).size()));
            return (int) Math.ceil(lines * Pen.lineHeight(look.regular(Look.BODY)) + look.px(8));
        }

        @Override
        void draw(Pen pen) {
            double y = look.px(17);
            for (String line : lines(getWidth())) {
                pen.text(line, look.regular(Look.BODY), pen.theme().ink2(), RoleRow.AT[1] * getWidth(), y);
                y += Pen.lineHeight(look.regular(Look.BODY));
            }
        }
    }
}
