package settlemark.profile;

import java.util.Optional;

/** What can be said of any source. */
final class Sources {
    private Sources() {}

    /** Seconds between two requests, NaN where the device is not asked again and again. */
    static double periodSeconds(Source source) {
        return poll(source).map(Poll::periodSeconds).orElse(Double.NaN);
    }

    /** Whether its bytes come over Bluetooth Low Energy. */
    static boolean isBle(Source source) {
        return source instanceof Source.Characteristic || isAdvertised(source);
    }

    /** Whether its bytes stand in advertisements. */
    static boolean isAdvertised(Source source) {
        return source instanceof Source.ServiceData || source instanceof Source.CompanyData;
    }

    private static Optional<Poll> poll(Source source) {
        if (source instanceof Source.Answer answer) {
            return Optional.of(answer.poll());
        } else if (source instanceof Source.Registers registers) {
            return Optional.of(registers.poll());
        }
        return source instanceof Source.Characteristic characteristic
                ? Optional.of(characteristic.poll())
                : Optional.empty();
    }
}
