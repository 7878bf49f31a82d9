package settlemark.ui;

import settlemark.settle.SettleChoices;

/** A review that nobody uses. */
final class NothingHeard implements ReviewPane.Heard {
    @Override
    public void perform(Deed deed) {}

    @Override
    public void find(String text) {}

    @Override
    public void choose(SessionLine line) {}

    @Override
    public void step(String key) {}

    @Override
    public void rule(SettleChoices choices) {}

    @Override
    public void line(long timeNanos) {}

    @Override
    public void zoom(int steps, long aroundNanos) {}
}
