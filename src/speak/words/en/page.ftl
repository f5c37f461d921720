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

# The terminal's log of results

log-here-shown = { $name }: here
log-not-here-shown = { $name }: not here
log-not-asked-shown = { $name }: not asked
log-hold-shown = held { $s } s, { $pitch }, { $level }
log-hold-cut-off-shown = held { $s } s, { $pitch }, { $level }, cut off
log-hz-shown = { $hz } Hz
log-no-hz-shown = no Hz
log-posture-shown = posture { $s } of { $of } s
log-phrase-shown = phrase { $s } s, { $level }
log-talk-shown = talk { $s } s, { $pauses } pauses, { $level }
log-syllables-shown = { $n } syllables, { $rate } per second
log-left-out-shown = { $name } left out: { $why }
log-recogniser-shown = the recogniser was restarted; { $s } s went unheard
log-room-loud-shown = the room is too loud to measure in ({ $db } dB re full scale)
log-room-quiet-shown = the room is quiet enough again
log-in-noise-shown = that hold stood only { $db } dB over the room; its figures are doubtful
log-sound-lost-shown = { $s } s of sound were lost

# A level in words, in the log and on pages: "72 dB(A) SPL at 30 cm", "-29 dB(A) relative"

level-relative-shown = { $db } dB({ $weighting }) relative
level-spl-shown = { $db } dB({ $weighting }) SPL at 30 cm
level-rough-shown = { $db } dB({ $weighting }) SPL at 30 cm, ROUGH
level-none-shown = no
level-auto-gain-shown = { $level }, not comparable (automatic gain)
level-clipped-shown = { $level }, clipped

# The terminal's table at the end. Heads of columns: at most 5 letters for table-done and table-f0, 6 for the other figures.

table-exercise-shown = Exercise
table-done-shown = Done
table-best-shown = Best s
table-mean-shown = Mean s
table-f0-shown = F0 Hz
table-level-shown = dB(A)
table-notes-shown = Notes
table-left-out-shown = left out: { $why }
table-stopped-shown = stopped: { $why }
table-rate-shown = { $rate } syll/s
table-right-shown = { $right } of { $all } right
table-clipped-shown = { $n } clipped
table-not-comparable-shown = levels not comparable
table-masked-shown = { $n } under our voice
table-none-shown = * relative to full scale: the microphone is not calibrated
table-void-shown = * relative to full scale: the microphone's calibration no longer holds
table-rough-shown = ~ rough: dB SPL at 30 cm by a phone's number
table-meter-shown = dB(A): dB SPL at 30 cm, energy mean, calibrated with a sound level meter
table-source-shown = dB(A): dB SPL at 30 cm, energy mean, calibrated with a known source
table-auto-gain-shown = The microphone changed its own volume: levels are not comparable.
table-ended-shown = { $done } of { $all } exercises done; ended: { $why }
table-ratings-shown = Own ratings, 0 to 10: { $list }
table-rating-shown = { $what } { $value }
table-moment-shown = A moment when the voice worked was told; the report says where it is.
table-signs-shown = Tell the clinician: { $list }
table-sign-shown = { $what } ({ $answer })
