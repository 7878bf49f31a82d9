package settlemark.link;

import org.bluez.Agent1;
import org.bluez.AgentManager1;
import org.freedesktop.dbus.DBusPath;
import org.freedesktop.dbus.connections.base.AbstractConnectionBase;
import org.freedesktop.dbus.connections.impl.DBusConnection;
import org.freedesktop.dbus.exceptions.DBusException;
import org.freedesktop.dbus.exceptions.DBusExecutionException;
import org.freedesktop.dbus.types.UInt32;

/** Asks the registered agent while a device is paired, as a device with a display does. */
final class FakeAgents implements AgentManager1 {
    private final FakeBluez service;
    private final DBusConnection connection;
    private volatile String agentOwner = "";
    private volatile String agentPath = "";
    volatile boolean numbers = true;
    volatile long entered = -1;

    FakeAgents(FakeBluez service, DBusConnection connection) {
        this.service = service;
        this.connection = connection;
    }

    @Override
    public void RegisterAgent(DBusPath agent, String capability) {
        service.log("RegisterAgent " + capability);
        agentOwner = AbstractConnectionBase.getCallInfo().getSource();
        agentPath = agent.getPath();
    }

    @Override
    public void UnregisterAgent(DBusPath agent) {
        service.log("UnregisterAgent");
    }

    @Override
    public void RequestDefaultAgent(DBusPath agent) {
        service.log("RequestDefaultAgent");
    }

    void pair(String device) {
        try {
            Agent1 agent = connection.getRemoteObject(agentOwner, agentPath, Agent1.class);
            if (numbers) {
                agent.RequestConfirmation(new DBusPath(device), new UInt32(123456));
            } else {
                entered = agent.RequestPasskey(new DBusPath(device)).longValue();
            }
        } catch (DBusException | DBusExecutionException e) {
            throw new org.bluez.Error.AuthenticationFailed("Authentication Failed");
        }
    }

    @Override
    public String getObjectPath() {
        return "/org/bluez";
    }
}
