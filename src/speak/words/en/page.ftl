# What the live page shows beside what is said. For the eye and for screen readers only, never spoken by the tool.

# Names of parts

page-title-shown = Practice
page-always-shown = Always
page-exercise-shown = Exercise
page-captions-shown = What is said
page-log-shown = What was said
page-can-say-shown = You can say
page-more-shown = more
page-less-shown = less
page-everything-shown = You can also say
page-settings-shown = Settings
page-keys-shown = Keys and page-turner
page-keys-help-shown = Space or page down: done. Page up: again. Full stop: pause. S: skip. Y, n: yes, no. Escape stops at any time, even when this is off.
page-aloud-shown = Let a screen reader read out what is said
page-messages-shown = Messages
page-done-shown = What was done
page-others-shown = Other pages
page-no-script-shown = This page needs JavaScript. The practice goes on without it, led by voice.

# Connection

page-connecting-shown = The practice goes on. This page is reconnecting.
page-ended-shown = The practice program has ended. You can close this page.
page-anew-shown = tidecount was restarted. Open the address it printed.
page-refused-shown = That didn't get through. Say it, or press again.

# What the tool is doing

page-speaking-shown = Speaking
page-listening-shown = Listening
page-holding-shown = I hear you
page-still-shown = Quiet

# Where the page alone leads and nothing is heard: what to do now, over everything else.

page-read-shown = Read
page-go-shown = Now
page-rest-shown = Rest
page-turn-shown = Your turn
page-paused-shown = Paused

# Dialogue

page-heard-shown = You: “{ $words }”
page-held-shown = Held { $seconds } seconds.

# The figure

page-seconds-held-shown = Seconds held
page-seconds-rest-shown = Seconds of rest left
page-seconds-shown = Seconds
page-count-shown = Count
page-syllables-shown = Syllables
page-of-seconds-shown = of { $n } { $n ->
    [one] second
   *[other] seconds
}
page-of-shown = of { $n }

# Before, between and after

page-starting-shown = The practice begins in a moment
page-broken-off-shown = The practice was cut short. What was measured is saved.
page-exercises-shown = { $done } of { $all } exercises done
page-done-of-shown = { $done } of { $all }
page-begun-shown = started
page-left-out-shown = left out

# The live bar. Levels of a microphone that is not calibrated have no number that means anything by itself.

page-loudness-shown = Loudness
page-usual-level-shown = your usual level
page-as-usual-shown = as loud as usual
page-louder-shown = { $n } dB louder than usual
page-softer-shown = { $n } dB softer than usual
page-level-shown = { $n } dB
page-voice-heard-shown = I hear you
page-pitch-shown = Pitch
page-usual-voice-shown = your usual voice
page-first-note-shown = where you started
page-usual-note-shown = your usual high note
page-semitones-higher-shown = { $n } { $n ->
    [one] semitone
   *[other] semitones
} higher
page-semitones-lower-shown = { $n } { $n ->
    [one] semitone
   *[other] semitones
} lower
page-same-pitch-shown = at the same pitch

# The terminal

page-address-shown = The page: { $address }
