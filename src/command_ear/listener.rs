//! One path of the command ear: takes up an utterance when the sound rises above the room, decides when it falls again.
//!
//! The decoder's partial results lag about 0.3 s behind the sound, because the network looks ahead and works in blocks. So a
//! short quiet after something loud asks for the final result at once (a *trial*). If that is no command, the speaker
//! may only have paused: the sound so far is decoded anew and listening goes on, until a longer quiet ends the utterance.
//!
//! Whether a phrase counts is weighed from several cues (`cues`), among them a second decoding of the utterance at another speed.

use super::alone::{LONGEST_PHRASE_S, Limits};
use super::cues::{Candidate, Cues, agreed};
use super::decide::{Phrase, PhraseBook, Refusal, UNKNOWN, Word, judge, listed};
use super::decoder::Decoder;
use super::embedding::{Classes, Stretch, WordSpotter};
use super::level::Level;
use super::path::{Decided, Tuning, seconds};
use super::templates::{GUESS_CONFIDENCE, Weigher};
use super::utterance::Utterance;
use super::verdict::Verdict;
use super::{ACT_CONFIDENCE, ASK_CONFIDENCE, RATE_HZ};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::Rc;

/// A phrase this sure that is said again within [`TWICE_S`] counts as sure, 0 to 1.
const TWICE_FROM: f64 = 0.25;
/// See [`TWICE_FROM`], s from end to start.
const TWICE_S: f64 = 3.0;
/// An urgent phrase of several words is reported as doubtful from this sureness on, 0 to 1, but for over our own voice: it costs a question or a pause,
/// where a missed one may cost a life, and talk hardly ever comes so near (`command.talk.false` in `benches/figures.toml`).
const URGENT_FROM: f64 = 0.25;
/// A first decoding this sure needs no second.
const CERTAIN: f64 = 0.95;
/// Each word of a list needs this confidence, 0 to 1: it stands between others of its kind, so the decoder alone decides.
const LISTED_FROM: f64 = 0.6;
/// Longer utterances, by the time that they are loud, get no second decoding where the first found no phrase: a command is short, talk is not, s.
const SHORT_S: f64 = 1.8;
/// Talk before an utterance is averaged over this time, s.
const TALK_S: f64 = 5.0;
/// Sound kept from before an utterance, s.
const BEFORE_S: f64 = 0.36;
/// An utterance begins in the middle of sound where what was kept from before it holds less quiet than this, s.
const QUIET_BEFORE_S: f64 = 0.09;
/// An utterance without a known word is cut at this length, s: trials stay cheap, and long vowels and talk are shed.
const LONGEST_UNKNOWN_S: f64 = 4.0;
/// Any utterance is cut at this length, s.
const LONGEST_S: f64 = 8.0;
/// Sound carried over such a cut, s.
const OVERLAP_S: f64 = 1.2;
/// Where the recogniser found nothing, a phrase that the second ear gives less than this is not considered, 0 to 1.
const CONSIDERED_FROM: f64 = 0.2;
/// Nor is one with more sound beside it that stands out, s.
const MOST_ELSEWHERE_S: f64 = 0.3;
/// Partial results are looked at this often, s: the network gives new ones every 0.12 s.
const LOOK_EVERY_S: f64 = 0.12;

/// One path.
pub(crate) struct Listener<D> {
    decoder: D,
    book: PhraseBook,
    tuning: Tuning,
    before: VecDeque<(Vec<i16>, Level)>,
    before_len: usize,
    utterance: Option<Utterance>,
    /// The recording has just begun: nothing stood before its first sound.
    at_beginning: bool,
    /// Share of loud sound of late, 0 to 1.
    talk: f64,
    /// The last phrase that was not sure, and its end on the clock, s.
    unsure: Option<(String, f64)>,
    /// Everything considered since they were last asked for.
    candidates: Vec<Candidate>,
    /// The client's own way of saying the commands, shared by both paths; none before it is known.
    own: Rc<RefCell<Option<Weigher>>>,
    /// The second ear, and which of its phrases are listened for; none where it knows none of them.
    second_ear: Option<(Rc<RefCell<dyn WordSpotter>>, Classes)>,
    /// It is asked about what the recogniser found, too.
    second_ear_always: bool,
    /// Our own voice may be in the sound now.
    over_own_voice: bool,
    /// Choices from this one on may follow each other in one breath.
    list_from: Option<usize>,
    /// Further phrases of a list, since they were last asked for.
    further: Vec<Decided>,
    /// Choices that cost more to miss than to take wrongly.
    urgent: Vec<usize>,
}

impl<D: Decoder> Listener<D> {
    pub fn new(decoder: D, choices: &[Vec<String>], tuning: Tuning) -> Self {
        Self {
            decoder,
            book: PhraseBook::new(choices),
            tuning,
            before: VecDeque::new(),
            before_len: 0,
            utterance: None,
            at_beginning: false,
            talk: 0.0,
            unsure: None,
            candidates: Vec::new(),
            own: Rc::default(),
            second_ear: None,
            second_ear_always: false,
            over_own_voice: false,
            list_from: None,
            further: Vec::new(),
            urgent: Vec::new(),
        }
    }

    /// Lets the client's own voice weigh in.
    pub fn with_own_voice(mut self, own: Rc<RefCell<Option<Weigher>>>) -> Self {
        self.own = own;
        self
    }

    /// Asks a second ear, where this path does; with `always` also about what the recogniser found, which changes nothing but the trace.
    pub fn with_second_ear(mut self, ear: Option<Rc<RefCell<dyn WordSpotter>>>, always: bool) -> Self {
        self.second_ear_always = always;
        let classes = ear.as_ref().map(|ear| Classes::new(ear.borrow().phrases(), &self.book));
        self.second_ear = ear.zip(classes).filter(|(_, classes)| self.tuning.second_ear && classes.any());
        self
    }

    /// Says whether our own voice may be in the next sound. Beside a recogniser what is left of it is not asked about: nobody has measured what the second
    /// ear takes it for.
    pub fn over_own_voice(&mut self, may_be: bool) {
        self.over_own_voice = may_be;
        if let Some(utterance) = &mut self.utterance {
            utterance.over_own_voice |= may_be;
        }
    }

    /// Hears lists: several phrases of the choices from this one on in one breath.
    pub fn with_lists(mut self, from: Option<usize>) -> Self {
        self.list_from = from;
        self
    }

    /// Reports these choices, by their numbers, at less sureness.
    pub fn with_urgent(mut self, urgent: Vec<usize>) -> Self {
        self.urgent = urgent;
        self
    }

    /// Takes the further phrases of a list that were decided since the last call.
    pub fn take_further(&mut self) -> Vec<Decided> {
        std::mem::take(&mut self.further)
    }

    /// Clock from which sound still matters, if an utterance is open.
    pub fn open_since_s(&self) -> Option<f64> {
        self.utterance.as_ref().map(|u| u.start_s)
    }

    /// Takes a batch that begins at `start_s` and follows the last one without a gap.
    pub fn hear(&mut self, start_s: f64, samples: &[i16], level: Level) -> Option<Decided> {
        // Of the time before [`BEFORE_S`], so that the beginning of the utterance itself does not count.
        let talk_before = self.talk;
        let share = seconds(samples.len()) / TALK_S;
        self.talk += share * (f64::from(u8::from(level.loud)) - self.talk);
        self.overhear(samples, level);
        let Some(utterance) = self.utterance.as_mut() else {
            if level.loud {
                return self.take_up(start_s + seconds(samples.len()), talk_before);
            }
            return None;
        };
        utterance.sound.extend_from_slice(samples);
        utterance.note(level);
        if level.loud {
            utterance.quiet_s = 0.0;
            utterance.tried_quiet = false;
        } else {
            utterance.quiet_s += seconds(samples.len());
        }
        let over = self.decoder.accept(samples);
        self.consider(over)
    }

    /// Remembers a batch as what comes before the next utterance. For a path that is closed: a word may begin just before it opens.
    pub fn overhear(&mut self, samples: &[i16], level: Level) {
        self.before.push_back((samples.to_vec(), level));
        self.before_len += samples.len();
        while seconds(self.before_len) > BEFORE_S {
            let Some((dropped, _)) = self.before.pop_front() else { break };
            self.before_len -= dropped.len();
            self.at_beginning = false;
        }
    }

    /// Sound ends here (file over, path closed): decides on what there is.
    pub fn finish(&mut self) -> Option<Decided> {
        let decided = self.utterance.is_some().then(|| self.end()).flatten();
        self.forget();
        decided
    }

    /// A recording begins with the next batch. (Where the path alone is opened anew, sound may have been going on.)
    pub fn begin(&mut self) {
        (self.at_beginning, self.talk, self.unsure) = (true, 0.0, None);
    }

    /// Drops everything half heard.
    pub fn forget(&mut self) {
        self.utterance = None;
        self.before.clear();
        self.before_len = 0;
        self.decoder.restart();
    }

    /// Opens an utterance with the sound kept from before it, which ends at `now_s`.
    fn take_up(&mut self, now_s: f64, talk: f64) -> Option<Decided> {
        let quiet: usize = self.before.iter().filter(|(_, l)| !l.loud).map(|(s, _)| s.len()).sum();
        let mid_sound = seconds(quiet) < QUIET_BEFORE_S && !std::mem::take(&mut self.at_beginning);
        let mut utterance = Utterance::new(now_s - seconds(self.before_len), mid_sound, talk);
        utterance.over_own_voice = self.over_own_voice;
        for (samples, level) in self.before.drain(..) {
            utterance.sound.extend_from_slice(&samples);
            utterance.note(level);
        }
        self.before_len = 0;
        self.decoder.restart();
        let over = self.decoder.accept(&utterance.sound);
        self.utterance = Some(utterance);
        self.consider(over)
    }

    /// Looks whether it is time to decide.
    fn consider(&mut self, over: bool) -> Option<Decided> {
        let tuning = self.tuning;
        let utterance = self.utterance.as_mut()?;
        let now_s = utterance.heard_s();
        let mut stands = false;
        if now_s - utterance.looked_s >= LOOK_EVERY_S - 1e-6 {
            utterance.looked_s = now_s;
            let partial = self.decoder.partial_text();
            let text = partial.split(' ').filter(|word| *word != UNKNOWN).collect::<Vec<_>>().join(" ");
            utterance.has_known = !text.is_empty();
            stands = utterance.stability.stands_for_s(&text, now_s) >= tuning.stands_s
                && !partial.ends_with(UNKNOWN)
                && self.book.is_phrase(&text)
                && utterance.tried_text != text
                && self.decoder.partial().last().is_some_and(|w| w.text != UNKNOWN && now_s - w.end_s >= tuning.stands_s);
            if stands {
                utterance.tried_text = text;
            }
        }
        if over || utterance.quiet_s >= tuning.end_quiet_s {
            let decided = self.end();
            // What was no command may end with the beginning of one: its soft first sound, right after our own voice.
            let kept = decided.is_none().then(|| (std::mem::take(&mut self.before), self.before_len));
            self.forget();
            (self.before, self.before_len) = kept.unwrap_or_default();
            return decided;
        }
        // In talk only where a known word was heard: a trial decodes all of it anew, and the end of it is judged in any case.
        let fell = utterance.quiet_s >= tuning.trial_quiet_s
            && !utterance.tried_quiet
            && (utterance.has_known || utterance.loud_s(0.0, now_s) <= SHORT_S);
        if fell {
            utterance.tried_quiet = true;
        }
        if fell || stands {
            return self.trial();
        }
        // Not in a quiet: it may be over.
        if utterance.quiet_s == 0.0 && (now_s > LONGEST_S || (now_s > LONGEST_UNKNOWN_S && !utterance.has_known)) {
            self.shed();
        }
        None
    }

    /// The utterance is over: a phrase that is sure enough is reported, also one that was said twice.
    fn end(&mut self) -> Option<Decided> {
        if self.list_from.is_some() {
            let words = self.decoder.finish();
            let mut all = self.listed_before(&words, f64::INFINITY);
            if !all.is_empty() {
                let first = all.remove(0);
                self.further.append(&mut all);
                return Some(first);
            }
            // No list; a command, perhaps, with all that guards one.
            let utterance = self.utterance.as_ref()?;
            self.decoder.restart();
            self.decoder.accept(&utterance.sound);
        }
        let mut decided = self.weigh(true)?;
        let phrase = &mut decided.phrase;
        let again = self.unsure.as_ref().is_some_and(|(text, end_s)| *text == phrase.text && phrase.start_s - end_s < TWICE_S);
        if again && phrase.confidence >= TWICE_FROM {
            phrase.confidence = phrase.confidence.max(ACT_CONFIDENCE);
        }
        let urgent = phrase.text.contains(' ') && self.book.choice_of(&phrase.text).is_some_and(|choice| self.urgent.contains(&choice));
        let over_own_voice = self.utterance.as_ref().is_some_and(|utterance| utterance.over_own_voice);
        if urgent && !over_own_voice && phrase.confidence >= URGENT_FROM {
            phrase.confidence = phrase.confidence.max(ASK_CONFIDENCE);
        }
        if phrase.confidence >= TWICE_FROM {
            self.unsure = Some((phrase.text.clone(), phrase.end_s));
        }
        let verdict = match phrase.confidence {
            sure if sure >= ACT_CONFIDENCE => Verdict::Taken,
            doubtful if doubtful >= ASK_CONFIDENCE => Verdict::Doubtful,
            _ => Verdict::Unsure,
        };
        self.decide_on_newest(verdict);
        (verdict != Verdict::Unsure).then_some(decided)
    }

    /// Asks for the final result now. A sure phrase that cannot go on is taken; else the sound so far is decoded anew.
    fn trial(&mut self) -> Option<Decided> {
        if let Some(decided) = self.weigh(false) {
            let verdict = match decided.phrase.confidence >= self.tuning.trial_sureness {
                true if self.book.may_mean_more(&decided.phrase.text) => Verdict::WaitsForMore,
                true => Verdict::Taken,
                false => Verdict::NotYet,
            };
            self.decide_on_newest(verdict);
            if verdict == Verdict::Taken {
                self.forget();
                return Some(decided);
            }
        }
        let utterance = self.utterance.as_ref()?;
        self.decoder.restart();
        self.decoder.accept(&utterance.sound);
        None
    }

    /// The phrase that the utterance may be, with its sureness as confidence; where the client's own voice is known it weighs
    /// in. `over`: nothing more is said.
    fn weigh(&mut self, over: bool) -> Option<Decided> {
        let first_words = self.decoder.finish();
        let utterance = self.utterance.as_ref()?;
        let judged = |words: &[Word]| judge(&utterance.standing_out(words), &self.book, &self.tuning.rules, utterance.mid_sound);
        let first = judged(&first_words);
        // A second decoding costs as much as the first: only where it can change the outcome, and for sound without a phrase
        // only once it is over, and not on the path that hears our own sentences.
        let loud_s = utterance.loud_s(0.0, utterance.heard_s());
        let worth_it = match &first {
            Ok(phrase) => phrase.confidence < CERTAIN,
            Err(_) => over && self.tuning.minds_context && (self.tuning.rules.min_loud_s..=SHORT_S).contains(&loud_s),
        };
        let second_words = if worth_it { self.decoder.again(&utterance.sound) } else { first_words.clone() };
        let second = judged(&second_words);
        let mut refused = [&first, &second].into_iter().find_map(|found| found.as_ref().err().cloned().flatten());
        let agreed = agreed(first.ok(), second.ok(), &[&first_words, &second_words], &self.book).filter(|(phrase, _)| {
            let stands = !self.tuning.minds_context || stands_in_the_whole(&mut self.decoder, utterance, phrase, &self.book, &self.tuning);
            if !stands {
                refused = Some(Refusal { heard: phrase.clone(), why: Verdict::NotInTheWhole });
            }
            stands
        });
        let found = match &self.second_ear {
            Some((ear, classes)) if self.tuning.alone => self.hear_alone(&mut *ear.borrow_mut(), classes, utterance),
            Some((ear, classes)) if !utterance.over_own_voice && (agreed.is_none() || self.second_ear_always) => {
                second_opinion(&mut *ear.borrow_mut(), classes, utterance, agreed)
            }
            Some((ear, classes)) if utterance.over_own_voice && agreed.is_none() => {
                self.hear_urgent(&mut *ear.borrow_mut(), classes, utterance, &first_words)
            }
            _ => agreed,
        };
        let weighed = found.and_then(|(phrase, cues)| {
            let weighed = utterance.weigh(phrase.clone(), cues, &self.tuning);
            if weighed.is_none() {
                refused = Some(Refusal { heard: phrase, why: Verdict::TooSoft });
            }
            weighed
        });
        if let (None, true, Some(refusal)) = (&weighed, over, refused) {
            self.candidates.push(utterance.refused(refusal));
        }
        let recognised = weighed.map(|(decided, candidate)| {
            self.candidates.push(candidate);
            decided
        });
        match self.own.borrow_mut().as_mut() {
            Some(own) if !utterance.mid_sound => {
                let from_s = utterance.start_s;
                let at = |phrase: Phrase, by_s: f64| Phrase { start_s: phrase.start_s + by_s, end_s: phrase.end_s + by_s, ..phrase };
                let guess = recognised.map(|decided| at(decided.phrase, -from_s)).filter(|phrase| phrase.confidence >= GUESS_CONFIDENCE);
                let phrase = own.weigh(guess, over, &utterance.sound, &utterance.levels, &self.book)?;
                Some(Decided { phrase: at(phrase, from_s), decided_s: from_s + utterance.heard_s() })
            }
            _ => recognised,
        }
    }

    /// What the second ear makes of an utterance that no recogniser hears. Our own voice takes none of it for a phrase: what is no louder than what may
    /// be left of us does not stand out ([`super::level::Meter`]), and what is must be surer.
    fn hear_alone(&self, ear: &mut dyn WordSpotter, classes: &Classes, utterance: &Utterance) -> Option<(Phrase, Cues)> {
        let stretch = Stretch::last(&utterance.levels, LONGEST_PHRASE_S)?;
        let (phrase, cues) = standing_alone(ear, classes, utterance, stretch, |text| !stretch.is_long() || text.contains(' '))?;
        let urgent = self.book.choice_of(&phrase.text).is_some_and(|choice| self.urgent.contains(&choice));
        let alone = Some(Limits::of(utterance.over_own_voice, urgent));
        Some((phrase, Cues { alone, ..cues }))
    }

    /// What a person in trouble says over our own voice, where the recogniser heard speech that is no phrase of the list, as the second ear takes it.
    /// It must be as sure there as of a single word that the recogniser misses in quiet.
    fn hear_urgent(&self, ear: &mut dyn WordSpotter, classes: &Classes, utterance: &Utterance, words: &[Word]) -> Option<(Phrase, Cues)> {
        let unknown = utterance.standing_out(words).into_iter().rfind(|word| word.text == UNKNOWN)?;
        let stretch = Stretch::of(&utterance.levels, Some((unknown.start_s + unknown.end_s) / 2.0))?;
        let (phrase, cues) = standing_alone(ear, classes, utterance, stretch, |_| true)?;
        let urgent = self.book.choice_of(&phrase.text).is_some_and(|choice| self.urgent.contains(&choice));
        urgent.then_some((phrase, cues))
    }

    /// The phrases of a list that end before `until_s` of the utterance.
    fn listed_before(&self, words: &[Word], until_s: f64) -> Vec<Decided> {
        let (Some(utterance), Some(from)) = (&self.utterance, self.list_from) else { return Vec::new() };
        let decided_s = utterance.start_s + utterance.heard_s();
        let at = |phrase: Phrase| Phrase { start_s: phrase.start_s + utterance.start_s, end_s: phrase.end_s + utterance.start_s, ..phrase };
        listed(&utterance.standing_out(words), &self.book, from, LISTED_FROM)
            .into_iter()
            .filter(|phrase| phrase.end_s < until_s)
            .map(|phrase| Decided { phrase: at(phrase), decided_s })
            .collect()
    }

    /// What came of the candidate weighed last.
    fn decide_on_newest(&mut self, verdict: Verdict) {
        if let Some(newest) = self.candidates.last_mut() {
            newest.verdict.get_or_insert(verdict);
        }
    }

    /// Takes what was considered since the last call.
    pub fn take_candidates(&mut self) -> Vec<Candidate> {
        std::mem::take(&mut self.candidates)
    }

    /// Keeps only the end of an utterance grown too long.
    fn shed(&mut self) {
        let kept = (OVERLAP_S * f64::from(RATE_HZ)) as usize;
        if self.list_from.is_some() {
            let cut_s = self.utterance.as_ref().map_or(0.0, |utterance| seconds(utterance.sound.len().saturating_sub(kept)));
            let words = self.decoder.finish();
            let mut all = self.listed_before(&words, cut_s);
            self.further.append(&mut all);
        }
        let Some(new) = self.utterance.take().map(|utterance| utterance.cut(kept)) else { return };
        self.decoder.restart();
        self.decoder.accept(&new.sound);
        self.utterance = Some(new);
    }
}

/// What both ears make of an utterance: the phrase that the recogniser found with the second ear's opinion of it or, where it found none, the single
/// word that the second ear takes all of a short utterance for. Without a short stretch there is no opinion.
fn second_opinion(
    ear: &mut dyn WordSpotter,
    classes: &Classes,
    utterance: &Utterance,
    found: Option<(Phrase, Cues)>,
) -> Option<(Phrase, Cues)> {
    let at_s = found.as_ref().map(|(phrase, _)| (phrase.start_s + phrase.end_s) / 2.0);
    let Some(stretch) = Stretch::of(&utterance.levels, at_s) else { return found };
    match found {
        Some((phrase, cues)) => {
            let second_ear = classes.opinion(&phrase.text, &ear.hear(&stretch.window(&utterance.sound)));
            Some((phrase, Cues { second_ear, ..cues }))
        }
        // Of several words it won none that the recogniser had missed, and took "how lonely" for "how long".
        None => standing_alone(ear, classes, utterance, stretch, |text| !text.contains(' ')),
    }
}

/// The phrase that the second ear takes this stretch of an utterance for, where the level says that it stands alone and `may_be` admits it.
fn standing_alone(
    ear: &mut dyn WordSpotter,
    classes: &Classes,
    utterance: &Utterance,
    stretch: Stretch,
    may_be: impl Fn(&str) -> bool,
) -> Option<(Phrase, Cues)> {
    if utterance.was_cut() || !stretch.begins_alone(!utterance.mid_sound) || stretch.elsewhere_s(&utterance.levels) > MOST_ELSEWHERE_S {
        return None;
    }
    let probabilities = ear.hear(&stretch.window(&utterance.sound));
    let text = classes.likeliest(&probabilities).filter(|text| may_be(text))?;
    let opinion = classes.opinion(text, &probabilities).filter(|opinion| opinion.this >= CONSIDERED_FROM)?;
    let phrase = Phrase { text: text.to_owned(), start_s: stretch.start_s, end_s: stretch.end_s, confidence: opinion.this };
    Some((phrase, Cues { second_ear: Some(opinion), ..Cues::default() }))
}

/// The phrase also stands in the utterance as it was before it was cut: the end of a sentence alone sounds like many a word.
fn stands_in_the_whole(decoder: &mut impl Decoder, utterance: &Utterance, phrase: &Phrase, book: &PhraseBook, tuning: &Tuning) -> bool {
    let Some(whole) = utterance.whole() else { return true };
    decoder.restart();
    decoder.accept(&whole.sound);
    let words = decoder.finish();
    judge(&whole.standing_out(&words), book, &tuning.rules, whole.mid_sound)
        .is_ok_and(|found| book.choice_of(&found.text) == book.choice_of(&phrase.text))
}

#[cfg(test)]
#[path = "tests/listener.rs"]
mod tests;
