import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.TreeMap;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.PrePopulatedValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeSystem;

/**
 * Validates FHIR R4 bundles against the official definitions (structure, cardinalities, invariants, bindings, UCUM units, references
 * inside the bundle) and their own codes against the CodeSystem that they bring. Ends with 1 where there is an error.
 */
public final class Validate {
    private Validate() {}

    public static void main(String[] files) throws Exception {
        FhirContext context = FhirContext.forR4();
        boolean failed = false;
        for (String file : files) {
            String text = Files.readString(Path.of(file));
            PrePopulatedValidationSupport own = new PrePopulatedValidationSupport(context);
            Bundle bundle = context.newJsonParser().parseResource(Bundle.class, text);
            bundle.getEntry().stream().map(Bundle.BundleEntryComponent::getResource).filter(r -> r instanceof CodeSystem).forEach(own::addCodeSystem);
            ValidationSupportChain chain = new ValidationSupportChain(
                new DefaultProfileValidationSupport(context), own, new CommonCodeSystemsTerminologyService(context), new InMemoryTerminologyServerValidationSupport(context));
            FhirInstanceValidator module = new FhirInstanceValidator(chain);
            module.setErrorForUnknownProfiles(true);
            FhirValidator validator = context.newValidator();
            validator.registerValidatorModule(module);
            TreeMap<String, Integer> counts = new TreeMap<>();
            TreeMap<String, String> kinds = new TreeMap<>();
            for (SingleValidationMessage message : validator.validateWithResult(text).getMessages()) {
                String severity = String.valueOf(message.getSeverity());
                counts.merge(severity, 1, Integer::sum);
                // The same about many resources is shown once.
                kinds.putIfAbsent(severity + ": " + message.getMessage().replaceAll("[0-9a-f]{8}-[0-9a-f-]{27}", "…").replaceAll("\\[\\d+\\]", "[n]"), message.getLocationString());
                failed |= severity.equals("ERROR") || severity.equals("FATAL");
            }
            System.out.println(file + ": " + bundle.getEntry().size() + " resources, " + counts);
            kinds.forEach((what, where) -> System.out.println("  " + what + "\n      at " + where));
        }
        System.exit(failed ? 1 : 0);
    }
}
