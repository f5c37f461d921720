//! Where the clinic database of this desk is.

use std::path::Path;

use clinic::{Address, CLINIC_FILE, CLINIC_VARIABLE, ClinicError};

/// Where the clinic database is: named, or in the environment, or in the folder of the record.
///
/// # Errors
/// What was named is no address.
pub fn address(named: Option<&str>, data: &Path) -> Result<Address, ClinicError> {
    let variable = std::env::var_os(CLINIC_VARIABLE).filter(|value| !value.is_empty());
    match (named, variable) {
        (Some(named), _) => Address::of(named),
        (None, Some(variable)) => match variable.to_str() {
            Some(text) => Address::of(text),
            None => Ok(Address::File(variable.into())),
        },
        (None, None) => Ok(Address::File(data.join(CLINIC_FILE))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_option_goes_before_the_folder_of_the_record() {
        let data = Path::new("data");
        assert_eq!(address(Some("other.sqlite"), data).expect("an address").to_string(), "other.sqlite");
        assert!(address(Some("mysql://x"), data).is_err());
    }
}
