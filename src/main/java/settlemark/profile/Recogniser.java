package settlemark.profile;

import java.util.ArrayList;
import java.util.List;

/** Compares a device in reach with the marks of a profile, and says in words what fits or what does not. */
public final class Recogniser {
    private Recogniser() {}

    /** Whether one of the profile's marks fits; each that does not gives its reasons. */
    public static Match match(Profile profile, Sighting seen) {
        if (profile.recognitions().isEmpty()) {
            return new Match.Differs(List.of("the profile does not say how the device is recognised; choose it by hand,"
                    + " or add recognise to it"));
        }
        List<String> reasons = new ArrayList<>();
        for (Recognition recognition : profile.recognitions()) {
            Marks marks = compare(recognition, seen);
            if (marks.reasons().isEmpty()) {
                return new Match.Fits(String.join(", ", marks.fitting()));
            }
            marks.reasons().stream().filter(reason -> !reasons.contains(reason)).forEach(reasons::add);
        }
        return new Match.Differs(reasons);
    }

    private static Marks compare(Recognition recognition, Sighting seen) {
        Marks marks = new Marks();
        if (recognition instanceof Recognition.Serial wanted && seen instanceof Sighting.Port port) {
            serial(marks, wanted, port);
        } else if (recognition instanceof Recognition.Ble wanted && seen instanceof Sighting.Radio radio) {
            ble(marks, wanted, radio);
        } else {
            marks.differs(
                    recognition instanceof Recognition.Ble
                            ? "it is recognised by Bluetooth advertisements, and this is a serial port"
                            : "it is recognised as a serial port, and this is a Bluetooth device");
        }
        return marks;
    }

    private static void serial(Marks marks, Recognition.Serial wanted, Sighting.Port port) {
        wanted.description().ifPresent(pattern -> marks.pattern("description", pattern, port.description()));
        wanted.vendor().ifPresent(number -> marks.number("USB vendor", number, port.vendor()));
        wanted.product().ifPresent(number -> marks.number("USB product", number, port.product()));
    }

    private static void ble(Marks marks, Recognition.Ble wanted, Sighting.Radio radio) {
        wanted.name().ifPresent(pattern -> marks.pattern("name", pattern, radio.name()));
        wanted.services().forEach(service -> marks.service(service, radio.services()));
        wanted.company().ifPresent(company -> marks.company(company, radio.companies()));
    }
}
