package paperbark.output;

import java.time.LocalDate;
import java.util.Optional;

/**
 * A fact or deed that is still missing, for the checklist on the cover.
 *
 * @param what in words, e.g. {@code Tank serial}
 * @param who installer, electrician, owner or office
 * @param by the last day, where there is one
 */
public record ToDo(String what, String who, Optional<LocalDate> by) {}
