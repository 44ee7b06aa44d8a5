package paperbark.office;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.job.Job;
import paperbark.value.Trade;

/** Which files are wanted for a job beside what it prints, and whether they are there. */
final class JobPapers {
    private JobPapers() {}

    /**
     * A kind of file that is wanted.
     *
     * @param what in words, e.g. {@code Photographs}
     * @param here how many of it there are
     * @param numbered whether the register tells its number; empty where it has none
     */
    record Wanted(String what, int here, Optional<Boolean> numbered) {
        /** On one line: {@code Photographs: 5}. */
        String inWords() {
            String count = here == 0 ? "none" : String.valueOf(here);
            String more =
                    awaitsNumber()
                            ? ", its number is not in the register yet"
                            : here == 0 && numbered.orElse(false)
                                    ? ", its number is in the register"
                                    : "";
            return what + ": " + count + more;
        }

        /** Whether it lies there, and the register does not tell its number. */
        boolean awaitsNumber() {
            return here > 0 && !numbered.orElse(true);
        }
    }

    /**
     * What is wanted once the heater is in; nothing before, since nothing can be there yet.
     *
     * @param files what lies there for the job
     */
    static List<Wanted> of(Job job, List<JobFile> files) {
        if (!job.isInstalled()) {
            return List.of();
        }
        List<Wanted> all = new ArrayList<>();
        all.add(
                new Wanted(
                        "Photographs",
                        (int) files.stream().filter(JobFile::isPhotograph).count(),
                        Optional.empty()));
        all.add(
                certificate(
                        "Plumbing certificate",
                        Trade.PLUMBING,
                        job.compliance().plumbingNumber(),
                        files));
        if (job.trades().electrician().isPresent()
                || job.compliance().electricalNumber().isPresent()) {
            all.add(
                    certificate(
                            "Electrical certificate",
                            Trade.ELECTRICAL,
                            job.compliance().electricalNumber(),
                            files));
        }
        if (job.replacesHeater()) {
            all.add(
                    new Wanted(
                            "Receipt for the old heater",
                            (int) files.stream().filter(JobFile::isReceipt).count(),
                            Optional.empty()));
        }
        return all;
    }

    /** The number is typed, and the paper scanned, by different people at different times. */
    private static Wanted certificate(
            String what, Trade trade, Optional<String> number, List<JobFile> files) {
        int here = (int) files.stream().filter(f -> isOf(f, trade)).count();
        return new Wanted(what, here, Optional.of(number.isPresent()));
    }

    /** A certificate that tells no trade may be of either. */
    static boolean isOf(JobFile file, Trade trade) {
        return file.isCertificate() && file.trade().map(t -> t == trade).orElse(true);
    }
}
