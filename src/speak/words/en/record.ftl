# Keeping the sound of practices: asked aloud once after the page asked.

ask-sound = Someone asked on the set-up page to keep recordings of your practices for { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}, on this computer only. Is that all right? Yes, or no?
ask-sound-shown = Keep the sound of your practices for { $days ->
    [one] one day
   *[other] { $days } days
}?
ask-sound-again = The sound of your practices is kept for { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}. Is that still all right? Yes, or no?
ask-sound-again-shown = Keep the sound of your practices on?
sound-agreed = Thank you. The sound is kept, and deleted after { $days ->
    [one] one day
   *[other] { SPOKEN($days) } days
}.
sound-not-agreed = All right. No sound is kept.
sound-unanswered = All right. I will ask another time.

# Shown while a practice runs.
sound-kept-shown = The sound of this practice is kept until { $date }.
sound-over-shown = The sound of this practice is no longer kept: { $why }
sound-withdrawn-shown = the consent was taken back.
sound-too-slow-shown = the disk is too slow.
