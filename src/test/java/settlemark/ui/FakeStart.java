package settlemark.ui;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import settlemark.job.JobPlan;
import settlemark.job.Plans;
import settlemark.job.RatingPlate;
import settlemark.profile.Profile;
import settlemark.profile.ProfileLibrary;
import settlemark.session.DeviceFinder;
import settlemark.session.DeviceList;
import settlemark.session.JobStart;
import settlemark.session.OpenJob;
import settlemark.session.PairingPerson;
import settlemark.session.ProbeAddress;

/** A program around the window before a session: finds what it is told to find, keeps what was chosen. */
final class FakeStart implements StartHost, DeviceFinder {
    final List<JobStart> begun = new ArrayList<>();
    final List<OpenJob> goneOn = new ArrayList<>();
    final List<String> titles = new ArrayList<>();
    final Map<String, RatingPlate> plates = new HashMap<>();
    volatile List<OpenJob> open = List.of();
    final List<ProbeAddress> pairings = new ArrayList<>();
    private volatile DeviceList list = new DeviceList(List.of(), List.of());
    volatile int looks;
    volatile int demos;
    volatile int reviews;
    final FakeWorkshop workshop = new FakeWorkshop();
    volatile int closed;
    volatile boolean looking;
    volatile @Nullable PairingPerson person;
    private volatile Consumer<String> failed = why -> {};
    private volatile Consumer<String> paired = said -> {};

    void finds(DeviceList newList) {
        list = newList;
    }

    void failsWith(String why) {
        failed.accept(why);
    }

    void pairedWith(String said) {
        paired.accept(said);
    }

    @Override
    public DeviceFinder finder() {
        return this;
    }

    @Override
    public DeviceList devices() {
        return list;
    }

    @Override
    public boolean isLooking() {
        return looking;
    }

    @Override
    public void look() {
        looks++;
    }

    @Override
    public List<Profile> profiles() {
        return ProfileLibrary.ids().stream().map(ProfileLibrary::get).toList();
    }

    @Override
    public List<JobPlan> plans() {
        return Plans.keys().stream().map(Plans::get).toList();
    }

    @Override
    public void demo() {
        demos++;
    }

    @Override
    public void begin(JobStart start, Consumer<String> newFailed) {
        begun.add(start);
        failed = newFailed;
    }

    @Override
    public void openJobs(int most, Consumer<List<OpenJob>> found) {
        found.accept(open.stream().limit(most).toList());
    }

    @Override
    public void goOn(OpenJob job, Consumer<String> newFailed) {
        goneOn.add(job);
        failed = newFailed;
    }

    @Override
    public void lastPlate(String title, JobPlan plan, Consumer<RatingPlate> found) {
        titles.add(title);
        Optional.ofNullable(plates.get(title))
                .filter(p -> plan.misfits(p).isEmpty())
                .ifPresent(found);
    }

    @Override
    public void pair(ProbeAddress address, PairingPerson newPerson, Consumer<String> done) {
        pairings.add(address);
        paired = done;
        person = newPerson;
    }

    @Override
    public ReviewHost review() {
        reviews++;
        return new FakeReview();
    }

    @Override
    public WorkshopHost workshop() {
        return workshop;
    }

    @Override
    public void close() {
        closed++;
    }
}
