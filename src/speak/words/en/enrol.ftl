# What `tidecount enrol` says while it learns how a client says the commands. The rules of session.ftl hold here, too.
#
# The commands themselves come from commands.ftl, as { $word }.

enrol-welcome = I would like to learn how you say the words I listen for. I say a word, and you say it after me, three times. There is no hurry, and nothing to touch.
enrol-what-is-kept = I do not keep the sound of your voice. I keep figures about each word: how strong its low and high tones are, moment by moment. They stay on this computer, and you can have them deleted.
enrol-ask-consent = Is that all right with you? Please answer yes or no.
enrol-ask-consent-shown = May I keep figures about how you say the commands? The sound itself is not kept.
enrol-ask-consent-again = Take your time. May I keep these figures? Yes, or no?
enrol-was-that-yes = I am not sure that I heard you. If you agree, please say yes once more.
enrol-agreed = Thank you. Speak as you always do, after the tone.
enrol-not-agreed = That is quite all right. Nothing has been kept.
enrol-no-answer = I have not heard from you, so I end here. Nothing has been kept.

enrol-say = Please say: { $word }.
enrol-say-next = Thank you. The next one is: { $word }.
enrol-once-more = And again: { $word }.
    .v1 = Once again: { $word }.
enrol-last-time = One last time: { $word }.
enrol-say-again = Take your time. Please say: { $word }.
enrol-wait = I am here. Say { $word } whenever you like.
enrol-shown = Please say: { $word }
enrol-heading = Your own voice · word { $number } of { $words }
enrol-heading-consent = Your own voice

enrol-too-soft = That was a little soft for me. A bit louder, or nearer to the microphone, please: { $word }.
enrol-too-noisy = There's some noise around you. If you can, make it quieter, and then say: { $word }.
enrol-clipped = That was very near. A little farther away, or a little softer, please: { $word }.
enrol-too-long = That was longer than I expected. Only this, please: { $word }.
enrol-too-short = I only caught a bit of that. Please say once again: { $word }.
enrol-in-two = I heard two things. Only this, please: { $word }.
enrol-too-early = You were a little ahead of me. After the tone, please: { $word }.
enrol-sounded-like = To me that sounded like { $other }. Please say: { $word }.
enrol-leave-out = To me that sounded like { $other }. If you want to leave this word out, say it again. Otherwise say: { $word }.
enrol-unlike = That one was rather different from the others. As you usually say it, please: { $word }.
enrol-near = That sounded close to { $other }. Once again, please: { $word }.
enrol-left-out = Then we leave that one out.
enrol-leave-for-now = We leave that one for now.
enrol-doubtful-again = I am not quite sure yet of this one. Once again, please: { $word }.

enrol-halted = That is enough for now, and it is kept. Say go on if you would like to go on. Otherwise we end here.
enrol-halted-shown = Say go on, or simply be silent
enrol-going-on = Then we go on.

enrol-learnt = { $surer ->
    [0] I have not learnt a word yet.
    [one] I am surer of one of your words now.
   *[other] I am surer of { SPOKEN($surer) } of your words now.
}
enrol-doubtful = { $doubtful ->
    [one] I'm still not sure about one: { $names }. You can say it for me another day.
   *[other] I'm still not sure about { SPOKEN($doubtful) }: { $names }. You can say them for me another day.
}
enrol-thanks = Thank you. I'll use them from your next practice.

# In the terminal after it, and for --show and --forget.

enrol-summary-head = Words of { $client }
enrol-summary-surer = surer now
enrol-summary-doubtful = still doubtful
enrol-none-kept = Nothing is kept of the voice of { $client }.
enrol-forgotten = Forgotten: { $words ->
    [one] one word
   *[other] { $words } words
} of { $client }.
