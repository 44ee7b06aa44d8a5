package paperbark.answer;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.answer.Explanation.Fact;
import paperbark.job.Field;
import paperbark.job.Job;
import paperbark.job.OldHeater;
import paperbark.value.Days;

/** The facts of a job that certificates come from, each with the cell it was read in. */
final class JobFacts {
    private final Job job;
    private final List<Fact> facts = new ArrayList<>();

    private JobFacts(Job job) {
        this.job = job;
    }

    static List<Fact> of(Job job) {
        JobFacts all = new JobFacts(job);
        all.add(Field.STAGE, Optional.of(job.stage().word()));
        if (job.installedOn().isPresent() || job.isInstalled()) {
            all.add(Field.INSTALLED_DATE, job.installedOn().map(Days::show));
        }
        if (job.installedOn().isEmpty()) {
            all.add(Field.VISIT_DATE, job.visit().on().map(Days::show));
        }
        all.add(Field.SITE_POSTCODE, job.site().address().postcode());
        all.add(Field.SITE_STATE, job.site().address().state());
        all.add(Field.MAKER, job.heater().makerName());
        all.add(Field.MODEL, job.heater().model());
        all.add(Field.OLD_KIND, job.oldHeater().map(old -> old.kind().word()));
        job.oldHeater()
                .flatMap(OldHeater::removedOn)
                .ifPresent(on -> all.add(Field.OLD_REMOVED_DATE, Optional.of(Days.show(on))));
        job.heater()
                .declarationsOn()
                .ifPresent(on -> all.add(Field.DECLARATIONS_DATE, Optional.of(Days.show(on))));
        job.payment().coPayment().ifPresent(paid -> all.add(Field.CO_PAYMENT, Optional.of(paid)));
        return all.facts;
    }

    private void add(Field field, Optional<?> value) {
        String shown =
                value.map(Object::toString)
                        .orElse(job.unread().contains(field) ? "cannot be read" : "not said");
        facts.add(new Fact(field.label(), shown, job.origin().from(field)));
    }
}
