//! The findings as lines: all of them on the terminal, without personal data in a file that leaves the house.

use super::checks::{Finding, Standing, all_is_well};
use super::facts::Facts;

/// For whoever sits there: private details, too.
#[must_use]
pub fn on_terminal(findings: &[Finding]) -> String {
    let mut text = String::new();
    for finding in findings {
        text += &line(finding);
        if let Some(private) = &finding.private {
            private.lines().for_each(|line| text += &format!("            {}\n", model::visible(line)));
        }
    }
    text + &verdict(findings)
}

/// For somebody elsewhere: no name, no path, no device.
#[must_use]
pub fn to_send(facts: &Facts, findings: &[Finding]) -> String {
    let mut text = format!("tidecount {}, {}\n\n", facts.version, facts.system);
    findings.iter().for_each(|finding| text += &line(finding));
    text + &verdict(findings)
}

fn line(finding: &Finding) -> String {
    let mark = match finding.standing {
        Standing::Well => "well",
        Standing::Note => "note",
        Standing::Wrong => "WRONG",
    };
    let mut text = format!("{mark:<6} {}: {}\n", finding.about, finding.what);
    if let Some(remedy) = finding.remedy {
        text += &format!("       -> {remedy}\n");
    }
    text
}

fn verdict(findings: &[Finding]) -> String {
    let wrong = findings.iter().filter(|finding| finding.standing == Standing::Wrong).count();
    match wrong {
        _ if all_is_well(findings) => "\nAll is well.\n".to_owned(),
        1 => "\nOne thing is wrong.\n".to_owned(),
        more => format!("\n{more} things are wrong.\n"),
    }
}
