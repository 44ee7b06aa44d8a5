package paperbark.rules;

/** All rule tables, proven and ready to be asked. */
public final class Rulebook {
    private Rulebook() {}
}
