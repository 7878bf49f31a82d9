package settlemark.job;

import java.util.Locale;

/** A rating plate to be filled in, as YAML: it asks for what a plan reads, and for nothing else. */
public final class PlateText {
    private PlateText() {}

    /** The text for a plan, with the stages that it needs. */
    public static String of(JobPlan plan) {
        StringBuilder text = new StringBuilder();
        text.append("# Copy every number from the rating plate; nothing here is a recommendation.\n");
        text.append("language: 1\nappliance: \nfuel: ")
                .append(fuel(plan.fuels().get(0)))
                .append('\n');
        text.append("inlet: { least: , most: , unit: \"[in_i'H2O]\" }\n");
        if (plan.readsRise()) {
            text.append("rise: { least: , most: , unit: \"[degF]\" }\n");
        }
        if (plan.readsStatics()) {
            text.append("statics: { most: , unit: \"[in_i'H2O]\" }\n");
        }
        text.append(
                "# control: { most: , unit: \"[in_i'H2O]\" }   # where the gas control itself has a maximum printed on it\n");
        if (plan.readsInput()) {
            text.append(
                    "# altitude: { value: , unit: \"[ft_i]\", derating: none }   # or common-practice, or maker with its"
                            + " factor\n");
        }
        text.append("stages:\n");
        for (String stage : plan.stages()) {
            text.append("  - key: ")
                    .append(stage)
                    .append("\n    name: ")
                    .append(stage)
                    .append(" fire\n");
            if (plan.readsManifold()) {
                text.append("    manifold: \n    unit: \"[in_i'H2O]\"\n");
            }
            if (plan.readsInput()) {
                text.append("    input: \n    input-unit: \"[Btu_IT]/h\"\n");
            }
        }
        return text.toString();
    }

    private static String fuel(Fuel fuel) {
        return fuel.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
