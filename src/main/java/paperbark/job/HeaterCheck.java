package paperbark.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import paperbark.finding.Finding;
import paperbark.finding.FindingCode;
import paperbark.firm.Product;

/** Checks the heater of a job against the product table. */
final class HeaterCheck {
    private HeaterCheck() {}

    static List<Finding> of(Job job) {
        List<Finding> findings = new ArrayList<>();
        job.heater()
                .product()
                .ifPresent(
                        product -> {
                            serial(job, product).ifPresent(findings::add);
                            size(job, product, findings);
                        });
        return findings;
    }

    private static Optional<Finding> serial(Job job, Product product) {
        return product.serialPattern()
                .flatMap(
                        pattern ->
                                job.heater()
                                        .tankSerial()
                                        .filter(
                                                s ->
                                                        !pattern.matcher(s.seen()).matches()
                                                                && !pattern.matcher(s.key())
                                                                        .matches()))
                .map(
                        serial ->
                                Finding.of(
                                                FindingCode.SERIAL_UNLIKE_PRODUCT,
                                                job.origin().cell(Field.TANK_SERIAL),
                                                "The serial does not look like those of "
                                                        + product.maker()
                                                        + " "
                                                        + product.model()
                                                        + ".",
                                                "Read the number off the plate again; look whether the collector's was taken instead.")
                                        .seeing(serial.seen()));
    }

    private static void size(Job job, Product product, List<Finding> findings) {
        job.heater()
                .litresSaid()
                .filter(litres -> litres != product.litres())
                .ifPresent(
                        litres ->
                                findings.add(
                                        Finding.of(
                                                        FindingCode.LITRES_DIFFER,
                                                        job.origin().cell(Field.LITRES),
                                                        "The register says "
                                                                + litres
                                                                + " L, the products table "
                                                                + product.litres()
                                                                + " L.",
                                                        "Look at the plate, then correct model or litres.")
                                                .seeing(String.valueOf(litres))));
        job.heater()
                .collectorsSaid()
                .filter(count -> count != product.collectors())
                .ifPresent(
                        count ->
                                findings.add(
                                        Finding.of(
                                                        FindingCode.COLLECTORS_DIFFER,
                                                        job.origin().cell(Field.COLLECTORS),
                                                        "The register says "
                                                                + count
                                                                + " tubes or panels, the products table "
                                                                + product.collectors()
                                                                + ".",
                                                        "Count them, then correct model or number.")
                                                .seeing(String.valueOf(count))));
    }
}
