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
     * @param more what else is to be said; may be empty
     */
    record Wanted(String what, int here, String more) {
        /** On one line: {@code Photographs: 5}. */
        String inWords() {
            String count = here == 0 ? "none" : String.valueOf(here);
            return what + ": " + count + (more.isEmpty() ? "" : ", " + more);
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
                        ""));
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
                            ""));
        }
        return all;
    }

    /** The number is typed, and the paper scanned, by different people at different times. */
    private static Wanted certificate(
            String what, Trade trade, Optional<String> number, List<JobFile> files) {
        int here = (int) files.stream().filter(f -> isOf(f, trade)).count();
        String more =
                number.isEmpty() && here > 0
                        ? "its number is not in the register yet"
                        : number.isPresent() && here == 0 ? "its number is in the register" : "";
        return new Wanted(what, here, more);
    }

    /** A certificate that tells no trade may be of either. */
    static boolean isOf(JobFile file, Trade trade) {
        return file.isCertificate() && file.trade().map(t -> t == trade).orElse(true);
    }
}
