package settlemark.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import settlemark.measure.Role;

/** How a trace is drawn. Each style has its own width and dash, so that traces can be told apart without colour. */
public enum LineStyle {
    /** What comes in: inlet pressure, return air. */
    UPSTREAM(0, 2),
    /** What answers: manifold pressure, supply air. */
    ANSWERING(1, 3, 10, 3),
    /** What answers, when it is the only trace: solid and wide. */
    ALONE(1, 5),
    THIRD(2, 3, 6, 4),
    FOURTH(3, 3, 2, 4),
    FIFTH(4, 3, 12, 4, 2, 4),
    /** An earlier run laid under the present one. */
    GHOST(-1, 2, 3, 3);

    private final int series;
    private final float widthPx;
    private final float[] dashPx;

    LineStyle(int series, float widthPx, float... dashPx) {
        this.series = series;
        this.widthPx = widthPx;
        this.dashPx = dashPx;
    }

    /** The style of a place on the appliance. */
    public static LineStyle of(Role role) {
        return switch (role) {
            case INLET, RETURN, RETURN_STATIC, OXYGEN -> UPSTREAM;
            case MANIFOLD, SUPPLY, SUPPLY_STATIC, CARBON_DIOXIDE -> ANSWERING;
            case STACK, CARBON_MONOXIDE, ROOM_CARBON_MONOXIDE -> THIRD;
        };
    }

    Color color(ChartTheme theme) {
        return series < 0 ? theme.rule() : theme.series().get(series);
    }

    /** The stroke without its dashes, which {@link Dashes} cuts. */
    BasicStroke stroke(double scale) {
        return new BasicStroke((float) (widthPx * scale), BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL);
    }

    /** Lengths drawn and left out in turn, none where the line is solid. */
    float[] dash(double scale) {
        float[] dash = dashPx.clone();
        for (int i = 0; i < dash.length; i++) {
            dash[i] *= (float) scale;
        }
        return dash;
    }

    /** False where the colour loses too much contrast on a tinted fill: then limits and spans get edges only. */
    boolean bearsFills() {
        return series <= 1;
    }
}
