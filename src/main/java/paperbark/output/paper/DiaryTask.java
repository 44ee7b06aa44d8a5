package paperbark.output.paper;

/** What the owner, or somebody for the owner, does to keep the heater well. */
public enum DiaryTask {
    /** Working the lever of the relief valve: trade practice, no regulator's page was found. */
    RELIEF_VALVE("relief valve"),
    /** A licensed plumber tests the valve that limits the temperature at the taps. */
    MIXING_VALVE("mixing valve"),
    /** A look at collectors or heat pump and at pipes, from the ground. */
    LOOK_OVER("look over"),
    /** A licensed plumber looks at the parts that wear out: anode, valves, seals. */
    WEARING_PARTS("wearing parts");

    private final String word;

    DiaryTask(String word) {
        this.word = word;
    }

    /** The word by which templates know it; the sentence on paper is the template's. */
    public String word() {
        return word;
    }
}
