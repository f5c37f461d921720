//! The words of the live page, from the catalogue.

use crate::web::live_page::LiveWords;
use session::Line;
use speak::Words;

/// All of them; one that is missing shows its key rather than nothing.
pub fn live_words(words: &Words) -> LiveWords {
    let text = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).unwrap_or_else(|_| key.to_owned());
    let page = |name: &str| text(&format!("page-{name}-shown"));
    LiveWords {
        language: "en".into(),
        title: page("title"),
        stop: text("say-stop"),
        pause: text("say-pause"),
        always: page("always"),
        exercise: page("exercise"),
        captions: page("captions"),
        log: page("log"),
        you_can_say: page("can-say"),
        more: page("more"),
        less: page("less"),
        everything: page("everything"),
        settings: page("settings"),
        keys: page("keys"),
        keys_help: page("keys-help"),
        aloud: page("aloud"),
        messages: page("messages"),
        done: page("done"),
        connecting: page("connecting"),
        ended: page("ended"),
        anew: page("anew"),
        refused: page("refused"),
        no_script: page("no-script"),
        other_pages: page("others"),
        nav: Vec::new(),
    }
}
