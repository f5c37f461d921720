//! Whose goals are meant.

use files::error::Failure;

/// The client who is named and known, or the only one.
///
/// # Errors
/// Nobody of that name is in the record, or several people are and none is named.
pub fn known(clients: &[String], named: Option<&str>) -> Result<String, Failure> {
    let list = || clients.iter().map(|name| format!("\n  {}", one_line(name))).collect::<String>();
    match (named, clients) {
        (Some(name), _) if clients.iter().any(|known| known == name) => Ok(name.to_owned()),
        (Some(name), []) => Err(Failure::Options(format!(
            "nobody is in this record yet, so {:?} is not either: add --new-client to take the name, or name the folder with --data DIR",
            one_line(name)
        ))),
        (Some(name), _) => Err(Failure::Options(format!(
            "{:?} is not in this record: name one of these with --client NAME, or add --new-client to `goal add` if the name is right:{}",
            one_line(name),
            list()
        ))),
        (None, [only]) => Ok(only.clone()),
        (None, []) => Err(Failure::Options("nobody is in this record yet: say who with --client NAME --new-client".to_owned())),
        (None, _) => Err(Failure::Options(format!("several people have a record here: say who is meant with --client NAME:{}", list()))),
    }
}

/// Names must not steer the terminal.
fn one_line(text: &str) -> String {
    text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect()
}
