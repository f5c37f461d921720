# What `tidecount enrol` says while it learns how a client says the commands. The rules of session.ftl hold here, too.
#
# The commands themselves come from commands.ftl, as { $word }.

enrol-welcome = I'd like to learn how you say the words I listen for. I'll say a word, and you say it after me, three times. There's no hurry, and nothing to touch.
enrol-what-is-kept = I don't keep the sound of your voice. I keep figures about each word: how strong its low and high tones are, moment by moment. They stay on this computer, and you can have them deleted.
enrol-ask-consent = Is that all right with you? Please answer yes or no.
enrol-ask-consent-shown = May I keep figures about how you say the commands? The sound itself is not kept.
enrol-ask-consent-again = Take your time. May I keep these figures? Yes, or no?
enrol-was-that-yes = I'm not sure I heard you. If you agree, please say yes once more.
enrol-agreed = Thank you. Speak as you always do, after the tone.
enrol-not-agreed = That's quite all right. Nothing has been kept.
enrol-no-answer = I haven't heard from you, so I'll end here. Nothing has been kept.

enrol-say = Please say: { $word }.
enrol-say-next = Thank you. The next one is: { $word }.
enrol-once-more = And again: { $word }.
    .v1 = Once again: { $word }.
enrol-last-time = One last time: { $word }.
enrol-say-again = Take your time. Please say: { $word }.
enrol-wait = I'm here. Say { $word } whenever you like.
enrol-shown = Please say: { $word }
enrol-heading = Your own voice · word { $number } of { $words }
enrol-heading-consent = Your own voice

enrol-too-soft = That was a little quiet for me. A bit louder, or closer to the microphone, please: { $word }.
enrol-too-noisy = There's some noise around you. If you can, make it quieter, and then say: { $word }.
enrol-clipped = That was very close. A little further away, or a little softer, please: { $word }.
enrol-too-long = That was longer than I expected. Just this, please: { $word }.
enrol-too-short = I only caught part of that. Please say it once again: { $word }.
enrol-in-two = I heard two things. Just this, please: { $word }.
enrol-too-early = You were a little early. After the tone, please: { $word }.
enrol-sounded-like = To me that sounded like { $other }. Please say: { $word }.
enrol-leave-out = To me that sounded like { $other }. If you want to leave this word out, say that again. Otherwise, say: { $word }.
enrol-unlike = That one was rather different from the others. Please say it as you usually do: { $word }.
enrol-near = That sounded close to { $other }. Once again, please: { $word }.
enrol-left-out = We'll leave that one out.
enrol-leave-for-now = We'll leave that one for now.
enrol-doubtful-again = I'm not quite sure of this one yet. Once again, please: { $word }.

enrol-halted = That's enough for now, and it's saved. Say go on if you'd like to go on. Otherwise we'll end here.
enrol-halted-shown = Say go on, or just stay silent
enrol-going-on = Let's go on.

enrol-learnt = { $surer ->
    [0] I haven't learnt a word yet.
    [one] I know one of your words better now.
   *[other] I know { SPOKEN($surer) } of your words better now.
}
enrol-doubtful = { $doubtful ->
    [one] I'm still not sure about one: { $names }. You can say it for me another day.
   *[other] I'm still not sure about { SPOKEN($doubtful) }: { $names }. You can say them for me another day.
}
enrol-thanks = Thank you. I'll use them from your next practice.

# In the terminal after it, and for --show and --forget.

enrol-summary-head = { $client }'s words
enrol-summary-surer = known better now
enrol-summary-doubtful = still not sure
enrol-none-kept = Nothing is kept about { $client }'s voice.
enrol-forgotten = Forgotten: { $words ->
    [one] one word
   *[other] { $words } words
} of { $client }.
