use clap::{Arg, Command, CommandFactory};

use super::*;

/// Every command with its path, hidden ones too.
fn walk(command: &Command, path: &str, see: &mut dyn FnMut(&str, &Command)) {
    let path = format!("{path} {}", command.get_name());
    see(&path, command);
    command.get_subcommands().for_each(|command| walk(command, &path, see));
}

fn of_each_command(mut see: impl FnMut(&str, &Command)) {
    let mut all = Arguments::command();
    all.build();
    walk(&all, "", &mut see);
}

/// Help of a command or an option that a person can choose; arguments by place are named, not ordered.
fn helps(path: &str, command: &Command) -> Vec<(String, String)> {
    let own = |arg: &&Arg| !arg.is_positional() && !["help", "version"].contains(&arg.get_id().as_str());
    let about = command.get_about().map(|about| (path.to_owned(), about.to_string()));
    let args = command.get_arguments().filter(own);
    let args = args.map(|arg| (format!("{path} --{}", arg.get_id()), arg.get_help().map_or_else(String::new, ToString::to_string)));
    about.into_iter().chain(args).collect()
}

/// What help begins with: orders, as in "Write tables".
const VERBS: &str = "Add Also Answer Back Begin Bring Calibrate Change Check Choose Collect Confirm Count Cover Decrypt Delete Do Encrypt \
    End Explain Export Forget Give Go Hand Hear Keep Lead Learn Leave Let List Listen Look Make Mark Mix Name Open Play \
    Print Recognise Remove Replace Report Ring Run Say Serve Set Show Speak Take Tell Use Wait Withdraw Write";

#[test]
fn every_help_is_an_order_in_one_plain_sentence() {
    let mut seen = 0;
    of_each_command(|path, command| {
        if command.get_name() == "help" {
            return;
        }
        for (name, help) in helps(path, command) {
            let verb = help.split([' ', ',']).next().unwrap_or_default();
            assert!(VERBS.split(' ').any(|known| known == verb), "{name}: \"{help}\" begins with no verb of the list");
            assert!(!help.ends_with('.'), "{name}: \"{help}\" ends with a full stop");
            assert!(!help.contains("Default:") && !help.contains("(default)"), "{name}: \"{help}\": write [default: …]");
            seen += 1;
        }
    });
    assert!(seen > 100, "{seen}");
}

#[test]
fn help_fits_a_terminal() {
    let mut all = Arguments::command().term_width(100);
    all.build();
    walk(&all, "", &mut |path, command| {
        // The line of usage is never wrapped.
        for line in command.clone().term_width(100).render_long_help().to_string().lines().filter(|line| !line.starts_with("Usage:")) {
            assert!(line.chars().count() <= 100, "{path}: {line}");
        }
    });
}

#[test]
fn shared_options_say_the_same_wherever_they_stand() {
    let mut said: Vec<(String, String, String)> = Vec::new();
    of_each_command(|path, command| {
        for arg in command.get_arguments().filter(|arg| ["voice", "model"].contains(&arg.get_id().as_str())) {
            if arg.get_action().takes_values() && path != " tidecount hand make" && !path.starts_with(" tidecount __") {
                said.push((arg.get_id().to_string(), arg.get_help().map_or_else(String::new, ToString::to_string), path.to_owned()));
            }
        }
    });
    for name in ["voice", "model"] {
        let of_it: Vec<&(String, String, String)> = said.iter().filter(|(id, ..)| id == name).collect();
        assert!(of_it.len() >= 6 && of_it.iter().all(|(_, help, _)| *help == of_it[0].1), "{of_it:?}");
    }
}

#[test]
fn what_can_be_done_with_routines_is_told_and_the_data_folder_is_named_alike_everywhere() {
    let mut places = std::collections::BTreeSet::new();
    of_each_command(|path, command| {
        if path == " tidecount routine" {
            let help = command.clone().render_help().to_string();
            assert!(["new", "check", "show", "templates"].iter().all(|name| help.contains(&format!("  {name} "))), "{help}");
        }
        for arg in command.get_arguments().filter(|arg| arg.get_id() == "data") {
            let help = arg.get_help().map_or_else(String::new, ToString::to_string);
            places.insert(help.split_once('[').map_or_else(String::new, |(_, place)| place.to_owned()));
        }
    });
    assert_eq!(places.len(), 1, "{places:?}");
    let about = Arguments::command().find_subcommand("routine").and_then(|routine| routine.get_about().map(ToString::to_string));
    assert!(about.is_some_and(|about| about.contains("new") && about.contains("show")));
}
