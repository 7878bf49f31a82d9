package settlemark.link;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import settlemark.profile.Message;
import settlemark.profile.Profile;
import settlemark.profile.Source;

/** Takes from a probe's advertisements what its profile asks for. */
final class BleAdverts {
    private final Map<String, Integer> byService = new HashMap<>();
    private final Map<String, Integer> byCompany = new HashMap<>();
    private final BleInbox inbox;

    BleAdverts(Profile profile, BleInbox inbox) {
        this.inbox = inbox;
        List<Message> messages = profile.messages();
        for (int i = 0; i < messages.size(); i++) {
            if (messages.get(i).source() instanceof Source.ServiceData data) {
                byService.put(data.service().toString(), i);
            } else if (messages.get(i).source() instanceof Source.CompanyData data) {
                byCompany.put(String.valueOf(data.company()), i);
            }
        }
    }

    /** @param properties of the device as they were told just now, repeated ones too */
    void heard(Map<String, Object> properties) {
        deliver(BluezValues.data(properties.get("ServiceData")), byService);
        deliver(BluezValues.data(properties.get("ManufacturerData")), byCompany);
    }

    private void deliver(Map<String, byte[]> data, Map<String, Integer> inputs) {
        data.forEach((key, bytes) -> {
            Integer input = inputs.get(key.toLowerCase(Locale.ROOT));
            if (input != null) {
                inbox.add(input, bytes);
            }
        });
    }
}
