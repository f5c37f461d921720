# Keeping recordings of practices: asked aloud once, after somebody asked for it on the page.

ask-sound = Someone asked on the set-up page to keep recordings of your practices for { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}, on this computer only. Is that all right? Yes, or no?
ask-sound-shown = Keep recordings of your practices for { $days ->
    [one] one day
   *[other] { $days } days
}?
ask-sound-again = Recordings of your practices are kept for { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}. Is that still all right? Yes, or no?
ask-sound-again-shown = Go on keeping recordings of your practices?
sound-agreed = Thank you. Recordings are kept, and deleted after { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}.
sound-not-agreed = All right. No recordings are kept.
sound-unanswered = All right. I'll ask another time.

# Shown while a practice runs.
sound-kept-shown = The recording of this practice is kept until { $date }.
sound-over-shown = The recording of this practice is no longer kept: { $why }
sound-withdrawn-shown = consent was withdrawn.
sound-too-slow-shown = the disk is too slow.
