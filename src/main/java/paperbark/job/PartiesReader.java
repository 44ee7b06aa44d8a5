package paperbark.job;

import paperbark.finding.FindingCode;
import paperbark.value.Abn;
import paperbark.value.Address;
import paperbark.value.Email;
import paperbark.value.State;

/** Reads the owner and the site of a row. */
final class PartiesReader {
    private PartiesReader() {}

    /** Whoever owns the heater; letters go to the site where nothing else is said. */
    static Owner owner(RowFacts facts, Address site) {
        Address postal =
                address(
                        facts,
                        Field.POSTAL_STREET,
                        Field.POSTAL_SUBURB,
                        Field.POSTAL_STATE,
                        Field.POSTAL_POSTCODE);
        return new Owner(
                facts.text(Field.OWNER_NAME),
                facts.text(Field.OWNER_CONTACT),
                facts.value(Field.OWNER_ABN, FindingCode.ABN_WRONG, Abn::parse),
                facts.yesNo(Field.OWNER_GST),
                facts.phone(Field.OWNER_PHONE),
                facts.value(Field.OWNER_EMAIL, FindingCode.EMAIL_WRONG, Email::parse),
                postal.isUnknown() ? site : postal,
                facts.text(Field.SECOND_OWNER));
    }

    /** Where the heater stands. */
    static Site site(RowFacts facts) {
        return new Site(
                address(
                        facts,
                        Field.SITE_STREET,
                        Field.SITE_SUBURB,
                        Field.SITE_STATE,
                        Field.SITE_POSTCODE),
                facts.text(Field.SITE_POSITION),
                facts.yesNo(Field.SITE_BUSINESS));
    }

    private static Address address(
            RowFacts facts, Field street, Field suburb, Field state, Field postcode) {
        return new Address(
                facts.text(street),
                facts.text(suburb),
                facts.value(state, FindingCode.CHOICE_UNKNOWN, State::parse),
                facts.postcode(postcode));
    }
}
