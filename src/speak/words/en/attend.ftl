# Waiting for a practice: what can be said, what is said to client and carer.
#
# Tone as everywhere: one thing at a time, short, kind, never pressing. What is said to a carer in the next room is said once,
# plainly, with the name first. No line may hold a wording of cmd-stop, which is heard while we speak.

# What can be said; wordings separated by |, every word in the recogniser's lexicon, none the beginning of another meaning's but where
# several are named (tested in src/live/attend/tests/grammar.rs).

attend-say-mine = start my practice | start my practice please
# "The" is hardly said before a vowel: "start the evening routine" is often heard without it.
attend-say-called = start the { $called } | start { $called } | start my { $called } | start { $called } please
# Where the call name begins with "my" or "the" itself.
attend-say-called-plain = start { $called } | start { $called } please
attend-say-for = start for { $name } | start for { $name } please
# Two at once, and all: which of them is asked. "Start for grandma" waits for such an "and".
attend-say-for-two = start for { $first } and { $second } | start for { $second } and { $first }
attend-say-for-both = start for both | start for both of us | start for both of them
attend-say-for-all = start for everyone | start for everybody | start for all of us
# And then a name that nobody here has.
attend-say-for-unknown = start for
attend-say-for-and-unknown = start for { $name } and
attend-say-name = { $name } | for { $name }
attend-say-which = { $called } | the { $called }
attend-say-which-plain = { $called }
attend-say-not-now = not now | maybe later | later please | later
# Said to a question that is not to be answered after all.
attend-say-never-mind = never mind | finish for today | enough for today | forget it
attend-say-left = what is left today | what is left
attend-say-how = how did it go | how did that go
attend-say-thanks = thank you | okay | i'm coming

# What the screen shows

attend-waiting-shown = Waiting. Say "start my practice".
attend-next-shown = Next: { $called }, { $clock }
attend-next-shown-for = Next: { $called } for { $name }, { $clock }
attend-start-unheard-shown = What starts a practice isn't heard in this language without a recognition model: start on the page. Commands in the practice are heard. With a Vosk model, give --model.
attend-deaf-shown = Can't hear

# The time of day

attend-time-full = { SPOKEN($hour) } o'clock
attend-time-quarter-past = quarter past { SPOKEN($hour) }
attend-time-half-past = half past { SPOKEN($hour) }
attend-time-quarter-to = quarter to { SPOKEN($hour) }
attend-time-past = { SPOKEN($past) } past { SPOKEN($hour) }
attend-time-to = { SPOKEN($past) } to { SPOKEN($hour) }

# Inviting, at the agreed time, twice at most

attend-invite = It's { $time }, time for { $the }. Say start my practice when you like.
attend-invite-for = It's { $time }. { $name }, it's time for { $the }. Say start for { $name } when you like.
attend-invite-again = I'm still here for { $the }. Say start my practice when you like, or say later.
attend-invite-again-for = { $name }, I'm still here for { $the }. Say start for { $name } when you like, or say later.
attend-postponed = All right. I'll ask again in half an hour.
attend-left-alone = All right. We'll leave it for today. You can still begin whenever you like.

# Starting

attend-starting = Yes. One moment.
attend-starting-for = For { $name }. One moment.
attend-for-whom-two = Who is it for? { $first }, or { $second }?
attend-for-whom-more = Who is it for? Please say the name.
attend-who-first-two = I lead one person at a time. Who goes first? { $first }, or { $second }?
attend-who-first-more = I lead one person at a time. Who goes first? Please say the name.
attend-unknown-name = I don't know that name. I know { $names } and { $last }. Who is it for?
attend-unknown-name-one = I don't know that name. I know { $name }.
attend-which-two = Which one? { $first }, or { $second }?
attend-which-more = Which one? Please say its name.
attend-dropped = All right.
attend-confirm = Was that: { $said }? Yes, or no?
attend-again-mine = start my practice
attend-again-for = start for { $name }
attend-again-called = start { $the }
attend-again-not-now = not now
attend-again-left = what is left today
attend-again-how = how did it go
attend-not-begun = The practice couldn't begin. The screen says why.

# What is left, how it went. $who is a name or "he", "she", "they".

# A routine in a sentence: "the evening routine". What begins with one of these needs no other.
attend-articles = the | my | our
attend-the-called = the { $called }

attend-he = he
attend-she = she
attend-they = they
attend-left-today = Still to do: { $the }, at { $time }.
attend-left-today-for = Still to do: { $the } for { $name }, at { $time }.
attend-left-undated = There's still { $the } to do today.
attend-left-undated-for = { $name } still has { $the } to do today.
attend-left-none = There's nothing left to do today.
attend-told-nobody = Nobody has practised yet today.
attend-told-all = { $who } did { $all ->
    [one] the one exercise
   *[other] all { SPOKEN($all) }
}.
attend-told-part = { $who } did { SPOKEN($done) } of { SPOKEN($all) }.
attend-told-none = { $who } started, but did none of { SPOKEN($all) }.
attend-told-left-one = { $who } did { SPOKEN($done) } of { SPOKEN($all) }; the { $first } was left out.
attend-told-left-two = { $who } did { SPOKEN($done) } of { SPOKEN($all) }; the { $first } and the { $second } were left out.
attend-told-left-more = { $who } did { SPOKEN($done) } of { SPOKEN($all) }; { SPOKEN($left) } were left out.
attend-told-pain = Something hurt during the practice.
attend-told-dizzy = There was some dizziness during the practice.
attend-told-help = There was a call for help during the practice.
attend-told-chest-pain = There was chest pain during the practice.
attend-told-cant-breathe = There was trouble with breathing during the practice.
attend-told-choking = Something went down the wrong way during the practice.
attend-told-sick = There was some sickness during the practice.
attend-early-chest-pain = It ended early: there was chest pain.
attend-early-cant-breathe = It ended early: there was trouble with breathing.
attend-early-choking = It ended early: something went down the wrong way.
attend-early-sick = It ended early: there was some sickness.
attend-early-unwell = It ended early: something was wrong.
attend-early-pain = It ended early: something hurt.
attend-early-dizzy = It ended early: there was some dizziness.
attend-early-help = It ended early, after a call for help.
attend-early-finished = It ended early, by choice.
attend-early-no-answer = It ended early: there was no answer.
attend-early-no-agreement = Nothing was done: the clinician hasn't agreed yet.
attend-early-broken-off = It was cut short.

# Notices: something needs a person. Said aloud for whoever is near.

attend-notice-pain = { $name } said it hurts. Please look in.
attend-notice-pain-during = { $name } said it hurts during the { $exercise }. Please look in.
attend-notice-dizzy = { $name } feels dizzy. Please look in.
attend-notice-dizzy-during = { $name } felt dizzy during the { $exercise }. Please look in.
attend-notice-chest-pain = { $name } said they have chest pain. Please go to them now.
attend-notice-chest-pain-during = { $name } had chest pain during the { $exercise }. Please go to them now.
attend-notice-cant-breathe = { $name } said they can't breathe. Please go to them now.
attend-notice-cant-breathe-during = { $name } couldn't breathe well during the { $exercise }. Please go to them now.
attend-notice-choking = Something went down the wrong way for { $name }. Please go to them now.
attend-notice-choking-during = Something went down the wrong way for { $name } during the { $exercise }. Please go to them now.
attend-notice-sick = { $name } feels sick. Please look in.
attend-notice-sick-during = { $name } felt sick during the { $exercise }. Please look in.
attend-notice-help = { $name } asked for help. Please look in.
attend-notice-no-answer = { $name } isn't answering any more. Please look in.
attend-notice-missed = { $name } often didn't answer. Please look in.
attend-notice-thanks = Say thank you when you have heard this.
attend-notice-answered = Good.
attend-deaf-gone = I can't hear anybody: my microphone isn't connected. Please check that it's plugged in.
attend-deaf-silent = I can't hear anybody: I'm getting no sound from my microphone. Please check whether it's switched off.
attend-deaf-words = I can't understand anybody just now. Please restart me.
attend-tell-faults = Please tell { $whom }.
attend-hears-again = I can hear again.
