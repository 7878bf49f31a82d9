package settlemark.chart;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;

/**
 * Where a settled span lies: the staple over its trace and the shade beneath it.
 *
 * @param shade the tinted area
 * @param leftFoot false where the span began before the left edge
 * @param rightFoot false where it goes on beyond the right edge
 */
record SpanShape(Rectangle2D shade, boolean leftFoot, boolean rightFoot) {
    static final double ABOVE_PX = 14;
    private static final double BELOW_PX = 18;
    private static final double FOOT_PX = 8;

    static Optional<SpanShape> of(LaneCanvas canvas, Lane.SettledSpan settled) {
        if (!BackLayer.inView(canvas.view, settled.span())) {
            return Optional.empty();
        }
        boolean startsInView = settled.span().fromNanos() >= canvas.view.fromNanos();
        boolean endsInView = settled.span().toNanos() <= canvas.view.toNanos();
        double left = startsInView ? canvas.x(settled.span().fromNanos()) : canvas.area.getX();
        double right = endsInView ? canvas.x(settled.span().toNanos()) : canvas.area.getMaxX();
        Pen pen = canvas.pen;
        return canvas.extentPx(settled.trace(), left, right).map(extent -> {
            double top = Math.max(extent[0] - pen.px(ABOVE_PX), canvas.area.getY() + pen.px(2));
            double bottom = Math.min(extent[1] + pen.px(BELOW_PX), canvas.area.getMaxY());
            Rectangle2D shade =
                    new Rectangle2D.Double(left, top, Math.max(right - left, pen.px(2)), Math.max(bottom - top, 0));
            return new SpanShape(shade, startsInView, endsInView);
        });
    }

    /** The bar with its feet. */
    Path2D staple(Pen pen) {
        double foot = Math.min(pen.px(FOOT_PX), shade.getHeight());
        double inset = Math.min(pen.px(1.2), shade.getWidth() / 4);
        Path2D path = new Path2D.Double();
        double left = shade.getX() + inset;
        double right = shade.getMaxX() - inset;
        if (leftFoot) {
            path.moveTo(left, shade.getY() + foot);
            path.lineTo(left, shade.getY());
        } else {
            path.moveTo(left, shade.getY());
        }
        path.lineTo(right, shade.getY());
        if (rightFoot) {
            path.lineTo(right, shade.getY() + foot);
        }
        return path;
    }
}
