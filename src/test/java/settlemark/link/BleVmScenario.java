package settlemark.link;

/** Something that must hold on the real stack. */
record BleVmScenario(String name, Body body) {
    @FunctionalInterface
    interface Body {
        /** @return what was seen beside that it holds, may be empty */
        String run() throws Exception;
    }
}
