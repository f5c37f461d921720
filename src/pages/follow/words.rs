//! The words of the live page, from the catalogue.

use crate::web::live_page::LiveWords;
use session::Line;
use speak::Words;

/// All of them; one that is missing shows its key rather than nothing.
pub fn live_words(words: &Words) -> LiveWords {
    let text = |key: &str| words.text(&Line { key: key.to_owned(), args: Vec::new() }).unwrap_or_else(|_| key.to_owned());
    let page = |name: &str| text(&format!("page-{name}-shown"));
    LiveWords {
        language: text("language-tag"),
        direction: text("language-direction"),
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

#[cfg(test)]
mod tests {
    use super::*;
    use speak::Language;

    #[test]
    fn the_live_page_is_in_the_language_of_the_practice() {
        let german = live_words(&Words::of(Language::find("de").unwrap()).unwrap());
        assert_eq!((german.language.as_str(), german.direction.as_str(), german.stop.as_str()), ("de", "ltr", "stopp"));
        let folder = tempfile::tempdir().unwrap();
        let pack = "tag = \"he\"\nname = \"Made up\"\ndirection = \"rtl\"\nvoices = [\"he\"]\n";
        std::fs::write(folder.path().join("pack.toml"), pack).unwrap();
        std::fs::write(folder.path().join("page.ftl"), "page-title-shown = תרגול\n").unwrap();
        let made_up = live_words(&Words::of(std::sync::Arc::new(Language::open(folder.path()).unwrap())).unwrap());
        assert_eq!((made_up.language.as_str(), made_up.direction.as_str(), made_up.title.as_str()), ("he", "rtl", "תרגול"));
        assert_eq!(made_up.stop, "stop", "what a pack lacks is said in English");
    }
}
