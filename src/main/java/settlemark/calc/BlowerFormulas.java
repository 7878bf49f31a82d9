package settlemark.calc;

import static settlemark.calc.FormulaBuilder.formula;

import java.util.List;

/** Drops along the air's way, and what another blower speed would do. */
final class BlowerFormulas {
    private static final String SAME_HEAT =
            "same heat, density and stage; the efficiency moves a little with the airflow";

    private BlowerFormulas() {}

    static List<Formula> all() {
        return List.of(
                formula("component-drop", "drop over a filter or a coil")
                        .number("before", "static pressure on its upstream side", "Pa", "[in_i'H2O]", -10, 10)
                        .number("after", "static pressure on its downstream side", "Pa", "[in_i'H2O]", -10, 10)
                        .source("definition: upstream less downstream, both against the room")
                        .validity("steady blower; not in a bend or in the spray of the blower's outlet")
                        .warns(v -> v.of("before") < v.of("after")
                                ? List.of("the pressure rises along the air's way: the ports are swapped, or the blower"
                                        + " lies between them")
                                : List.of())
                        .gives("Pa", "[in_i'H2O]", "Pa", v -> v.of("before") - v.of("after")),
                formula("drop-share", "part of the external static pressure that one thing takes")
                        .number("drop", "over the filter, coil or duct", "Pa", "[in_i'H2O]", 0, 10)
                        .number("external-static", "total", "Pa", "[in_i'H2O]", 0.01, 10)
                        .source("definition: drop over total external static pressure")
                        .validity("the thing lies outside the appliance as its plate counts it")
                        .gives("1", "%", "%", v -> v.of("drop") / v.of("external-static")),
                formula("blower-rise", "rise to expect after a blower change")
                        .number("rise", "before the change", "K difference", "[degF]", 2, 200)
                        .number("flow-ratio", "new airflow over the old", "1", "1", 0.1, 5)
                        .source("heat balance: rise times airflow stays")
                        .validity(SAME_HEAT)
                        .warns(v -> List.of("static pressure goes with the square of the airflow, power with the cube:"
                                + " check both against the plate"))
                        .gives(
                                "K difference",
                                "[degF] difference",
                                "K difference",
                                v -> v.of("rise") / v.of("flow-ratio")),
                formula("blower-flow-ratio", "airflow that a wanted rise needs, over the present one")
                        .number("rise", "at present", "K difference", "[degF]", 2, 200)
                        .number(
                                "wanted",
                                "rise that is wanted, within the plate's range",
                                "K difference",
                                "[degF]",
                                2,
                                200)
                        .source("heat balance: rise times airflow stays")
                        .validity(SAME_HEAT)
                        .warns(v -> v.of("wanted") > v.of("rise")
                                ? List.of("less air: the heat exchanger runs hotter, watch the limit")
                                : List.of(
                                        "more air: static pressure grows with the square, check it against the plate"))
                        .givesNumber(v -> v.of("rise") / v.of("wanted")),
                formula("rise-position", "where a rise lies in the plate's range, 0 at its lower end, 1 at its upper")
                        .number("rise", "supply less return", "K difference", "[degF]", 2, 200)
                        .number("lower", "lower end of the plate's range", "K difference", "[degF]", 5, 200)
                        .number("upper", "upper end of the plate's range", "K difference", "[degF]", 5, 200)
                        .source("definition: rise less lower end, over the range's width")
                        .validity("the rise of the same stage as the range; probe out of sight of the heat exchanger")
                        .refuses(v -> v.of("lower") < v.of("upper")
                                ? List.of()
                                : List.of("upper must be above lower, the two ends of the plate's range"))
                        .warns(BlowerFormulas::outside)
                        .givesNumber(v -> (v.of("rise") - v.of("lower")) / (v.of("upper") - v.of("lower"))));
    }

    private static List<String> outside(Values v) {
        if (v.of("rise") > v.of("upper")) {
            return List.of("above the plate's range: too little air or too much gas");
        }
        return v.of("rise") < v.of("lower")
                ? List.of("below the plate's range: too much air or too little gas; flue gas may condense")
                : List.of();
    }
}
