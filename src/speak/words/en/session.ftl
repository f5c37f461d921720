# What the engine says and shows while it leads. Keys that end in -shown are for the screen alone.
#
# Tone (docs and dialogue): one thing at a time, short sentences, then silence. Adult, warm, plain; no exclamation.
# No line may hold a wording of cmd-stop or cmd-pause, which are live while we speak; `you-can-stop` is the one
# exception, and the ears are closed for those words while it is said. Near sounds are no better: "set it" was heard as
# "stop it" through the loudspeaker.

# Greeting

greeting = { $title }. { $steps ->
    [one] One exercise
   *[other] { SPOKEN($steps) } exercises
}, about { $minutes ->
    [one] a minute
   *[other] { SPOKEN($minutes) } minutes
}.
greeting-shown = { $steps ->
    [one] One exercise
   *[other] { SPOKEN($steps) } exercises
}
aid-notice = I'm a practice aid. I don't make a diagnosis. What your own clinician says, and the rules where you are, come before anything I say.
# Where there is no model for the language, shown at the beginning.
ear-none-shown = Nothing is heard in this language without a recognition model. Use the keys or the page; with a Vosk model, give --model.
ear-commands-shown = Commands, yes, no and numbers are heard in this language, other words are not: answers of word games are not judged.
you-can-stop = You can say stop at any time.
stop-by-hand = Spoken commands don't reach me here. Press Escape at any time and I'll fall silent. On the page, it's the red button.
heading-session = { $title }
heading-step = { $name } · { $repetition } of { $repetitions }
heading-set = { $name } · set { $set } of { $sets } · { $repetition } of { $repetitions }

# Going on with an interrupted session

ask-resume = Last time we didn't get to the end. Shall we pick up from there? Yes, or no?
ask-resume-shown = Pick up where you left off?
resumed = Let's go on with { $name }.

# Cautions and agreement

cautions-first = Before we begin, a few words on safety.
cautions-shown = { $name }: safety first
# After `ex-ID-before`, which names the exercise and who must not do it.
ask-agreement = { $asked ->
    [0] Has your clinician agreed to it for you? Yes, no, or not sure?
   *[other] Has your clinician agreed?
}
ask-agreement-shown = { $name }: has your clinician agreed to it for you?
ask-agreement-again = Has your clinician agreed to it for you? Yes, no, or not sure?
agreement-yes = Good.
agreement-no = Then we'll leave it out.
agreement-not-sure = Then we'll leave it out until you've asked your clinician.
agreement-missing-all = That leaves nothing to practise today. Please ask your clinician about these exercises.
ask-yes-no-again = Take your time. Yes, or no?

# Waiting for ready

ask-ready-first = Sit upright with both feet on the floor. Say ready when you'd like to begin.
ask-ready-first-shown = Sit upright, both feet on the floor
ask-ready = Sit upright with both feet on the floor, then say ready.
ask-ready-shown = Sit upright, both feet on the floor
ask-position = Say ready when you're in position.
ask-position-shown = Get into position
ask-rest-over = Rest for as long as you like. Say ready to go on.
ask-rest-over-shown = Rest
ask-ready-again = Take your time. Say ready when you are.
ask-ready-once-more = No hurry. Say ready when you'd like to go on.
ready-not-understood = I heard someone, but I didn't catch the word. Say ready once more, or come a little closer.
wait-for-ready = I'm here. Say ready whenever you like.
gave-up = I haven't heard from you for a while, so I'll end here. Everything is saved.

# Steps

step-first = First: { $name }.
step-next = Next: { $name }.
dose-times = { $sets ->
    [one] { $repetitions ->
        [one] Once.
       *[other] { SPOKEN($repetitions) } times.
    }
   *[other] { SPOKEN($sets) } sets of { SPOKEN($repetitions) }.
}
dose-rounds = { $repetitions ->
    [one] One round. I'll count.
   *[other] { SPOKEN($repetitions) } rounds. I'll count.
}
dose-talks = { $repetitions ->
    [one] Just once.
   *[other] { SPOKEN($repetitions) } times.
}
dose-phrases = { $repetitions ->
    [one] One phrase.
   *[other] { SPOKEN($repetitions) } phrases.
}
dose-categories = { $repetitions ->
    [one] One category, for one minute. Say one word after another.
   *[other] { SPOKEN($repetitions) } categories, a minute each. Say one word after another.
}
dose-questions = { $repetitions ->
    [one] One question.
   *[other] { SPOKEN($repetitions) } questions.
}
setting = Your setting: { $setting }.
knock-will-do = When you've swallowed, say done, or knock twice on the table.
goal = Your goal is { SECONDS($seconds) }.
cue-words = In your { $words }.
cue-words-again = { $words }.
cue-words-shown = { $words }
repetition-number = Number { SPOKEN($n) }.
repetition-last = The last one.
skipped = Leaving out { $name }. Say go back if you'd like to do it after all.
went-back = Back to { $name }.

went-back-done = { $name } is done for today.
# An exercise or a practice has reached a limit that the catalogue sets. Why is said in half a sentence; nothing is anybody's fault.
enough-now = { $name }: that's as much as is good for you in one practice, so we'll leave it there.
enough-today = { $name }: that's as much as is good for you in one day. We'll leave it for another day.
long-enough = That's nearly an hour now, and longer would only tire you.
practices-enough = You've already practised { $practices ->
    [one] once today
   *[other] { SPOKEN($practices) } times today
}, and your body needs the rest of the day to recover. I'll be here tomorrow.
rest-first = First, { SPOKEN($seconds) } seconds to recover. Just breathe.
rest-longer = A little longer, { SPOKEN($seconds) } seconds, so you can recover.

# Getting up from lying, each part with its own time, and from a chair.
rise-side = Now we'll get up, slowly. Roll onto your side, and stay there for a moment.
rise-sit = Push yourself up until you sit, with both feet on the floor. Stay sitting, and breathe.
rise-stand = Now hold on to something firm, and stand up slowly. If your head swims, sit down again.
rise-longer = Stay like that a little longer, { SPOKEN($seconds) } seconds, so you don't get light-headed.
rise-at-end = When you get up, take your time: roll onto your side, sit up, and stay sitting for two minutes.
posture-standing = You'll stand for this one. Stand behind a firm chair, and hold on to it.

wind-down = Now ease your voice. Hum softly once or twice, as low and easy as you like, and breathe.
loud-enough = That's enough loud voice for today. Let your voice rest.

# When holds or level fall over the last trials. Nothing is said of the numbers.
offer-rest = You've worked hard. Would you like a rest? Yes, or no? You can also finish for today.
offer-rest-shown = Would you like a rest?
sip-rules-now = For the sips: sit fully upright, keep your chin level, and take one small sip at a time. If you cough, if your voice sounds wet or gurgly, or if you're short of breath, put the drink away for today and tell your clinician.

# Voiced trials, reading, syllables

voice-again = Whenever you're ready.
voice-once-more = Take a breath, and start in your own time.
hold-cue = Keep going.
# Not "rest": that can be said then, and a late echo of our own would count.
trial-over = And relax.
    .v1 = Relax.
    .v2 = And let go.
reading-again = Say it in your own time.
reading-once-more = No hurry. Read it out when you like.
read-phrase = { $phrase }
read-phrase-shown = { $phrase }
read-rising-shown = { $phrase } ↗
read-falling-shown = { $phrase } ↘

# Talk and passages

talk-prompt = { $prompt }
talk-prompt-shown = { $prompt }
read-passage-shown = { $passage }
talk-again = Take your time. I'm listening.
talk-once-more = There's no hurry. Begin with whatever comes to mind.
talk-go-on = There's still time. What else comes to mind?
talk-read-on = Take your time, and read on.
talk-over = Thank you.
    .v1 = That was it. Thank you.

# Postures and paced breathing

posture-over = And relax.
paced-last-round = Last round.
paced-over = And breathe as you like.
seconds-to-go = { $seconds ->
    [one] One second to go.
   *[other] { SPOKEN($seconds) } to go.
}
rounds-to-go = { $rounds ->
    [0] This is the last round.
    [one] One round to go.
   *[other] { SPOKEN($rounds) } rounds to go.
}
pace-changed = I'll count at the new pace.
speech-rate-changed = I'll speak like this now.
pace-slowest = That's as slow as I'll count: a longer breath could strain you.
pace-fastest = That's as fast as I'll count: quicker breaths could make you dizzy.
pace-stays = These are real seconds, so the count stays as it is.
volume-changed = Is this better?

# Self-paced repetitions

done-again = Take your time. Say done when you've done it.
done-once-more = No hurry. Say done when you are.
done-not-understood = I heard someone, but I didn't catch the word. When you've done it, say all done, or press a key.
wait-for-done = I'm here. Say done whenever you like.
ask-sip = Take one small sip, if your clinician allows it. Swallow it all, then say done.
ask-sip-shown = One small sip, swallow it all
ask-sip-again = Say done when it's all gone down.

# Questions

question-clue = { $clue }
question-kind-double-meaning = One word with two meanings.
question-kind-opposite = Now an opposite.
question-kind-saying = Finish the saying.
question-kind-odd-one-out = Which one doesn't belong?
question-kind-definition = What is it?
question-kind-pair = Two things that go together.
question-kind-category = Name as many as you can think of.
question-clue-shown = { $clue }
question-hint = Let me give you a hint. { $hint }
question-hint-asked = Here's a hint. { $hint }
question-near = That's close. { $hint }
    .v1 = Good thinking, you're close. { $hint }
question-found = Yes. { $answer }.
    .v1 = That's it. { $answer }.
    .v2 = { $answer }. You've got it.
question-told = I was thinking of { $answer }.
question-fact = { $fact }

naming-count = { $number ->
    [one] I heard one of the { $category }.
   *[other] I heard { SPOKEN($number) } { $category }.
}
naming-over = That's the minute over.

# Results

held = { SECONDS($seconds) }.
held-longest-this-month = { SECONDS($seconds) }. Your longest this month.
held-more-than-last = { SECONDS($seconds) }. { $more ->
    [one] One more
   *[other] { SPOKEN($more) } more
} than last time.
held-more-than-weekday = { SECONDS($seconds) }. { $more ->
    [one] One more
   *[other] { SPOKEN($more) } more
} than on { $weekday }.
# Steps of loudness or pitch, and sentences that rise or fall: how many went as they were meant to.
ladder-result = { $reached ->
    [0] The steps were hard to tell apart. That can come with time.
   *[other] { SPOKEN($reached) } of { SPOKEN($all) } steps were clear.
}
melody-result = { $reached ->
    [0] Your voice stayed level at the ends. That can come with time.
   *[other] { SPOKEN($reached) } of { SPOKEN($all) } went the way they were meant to.
}
ladder-louder-shown = { $by } dB louder
ladder-softer-shown = { $by } dB softer
ladder-higher-shown = { $by ->
    [one] 1 semitone higher
   *[other] { $by } semitones higher
}
ladder-lower-shown = { $by ->
    [one] 1 semitone lower
   *[other] { $by } semitones lower
}
best = That one's done. Your best was { SECONDS($seconds) }.
    .v1 = Done. Your best was { SECONDS($seconds) }.
best-longest-this-month = That one's done. Your best was { SECONDS($seconds) }, your longest this month.
best-more-than-last = That one's done. Your best was { SECONDS($seconds) }, { $more ->
    [one] one more
   *[other] { SPOKEN($more) } more
} than last time.
best-more-than-weekday = That one's done. Your best was { SECONDS($seconds) }, { $more ->
    [one] one more
   *[other] { SPOKEN($more) } more
} than on { $weekday }.
best-so-far = Your best so far is { SECONDS($seconds) }.
done-so-far = { SPOKEN($done) } of { SPOKEN($all) } done so far.
why-practice = Each exercise has its own purpose. Ask me again once it has begun.
step-done = That one's done.
    .v1 = Done.
    .v2 = That's that one done.
rest-done = Let's go on.
minutes-left = { $minutes ->
    [one] About a minute left.
   *[other] About { SPOKEN($minutes) } minutes left.
}

# Standing still

stopped = I'll be quiet. Say go on, skip, or finish.
stopped-shown = Stopped
paused = Take your time. Say go on when you like.
paused-shown = Paused
resting = Have a rest. Say ready when you'd like to go on.
resting-shown = Rest
# A dry mouth. Sips are only spoken of where a clinician has enabled them.
dry-sip = Take one small sip if you like, and swallow it all. Say ready when you'd like to go on.
dry-lips = Moisten your lips, and take your time. Say ready when you'd like to go on.
halted-reminder = I'm still here. Say go on, or finish.
going-on = Let's go on.
finishing = Finishing here. Say go on to keep practising.
finishing-shown = Finishing. Say "go on" to keep practising.
ask-confirm = Was that { $command }?
ask-confirm-shown = Was that { $command }?

# Help and feeling unwell

# One sentence each, and then it listens. The rest comes into the silence behind it.
help = If something is wrong, call someone, or in an emergency your emergency number.
help-more = Otherwise I lead and you follow, in your own time.
help-go-on = Say go on when you like, skip for the next exercise, or finish.
help-shown = Help
unwell-leave = We'll leave { $name } for today.
unwell-leave-all = We'll leave { $name } for today, and everything like it.
unwell-leave-others = I'll leave out what could bring it back today.
unwell-earlier = You weren't well earlier today, so I'll leave out what could bring it back.
unwell-earlier-all = You weren't well earlier today, so we'll leave this practice for another day.
unwell-earlier-no-practice = Earlier today you had chest pain or couldn't breathe. We won't practise today. Please speak to your doctor before you practise again.
unwell-dizzy = Breathe as you like and stay seated, or lie down.
unwell-dizzy-more = If it doesn't pass, call someone. If you have chest pain, sudden weakness or trouble speaking, call your emergency number. I've noted it for your clinician.
unwell-pain = Relax, and let everything go loose.
unwell-pain-more = If it doesn't ease, call someone. If you have chest pain, call your emergency number. I've noted it for your clinician.
unwell-choking = Lean forward and cough. Keep coughing. If you can't breathe or speak, you need help at once.
unwell-sick = Sit up, and breathe as you like.
unwell-sick-more = If it doesn't pass, or you have chest pain, call someone. I've noted it for your clinician.
all-right = Good. Say go on when you like, or finish.

# Chest pain or no breath. $number is dialled figure by figure, and said twice. After the first words it says them again and again.
emergency-chest-pain = Stay where you are, and keep still. Chest pain needs help now.
emergency-cant-breathe = Sit up and lean forward a little. You need help now.
emergency-call = Call { DIGITS($number) } I'll say it again: { DIGITS($number) }
emergency-call-unknown = Call your emergency number. I'll say it again: call your emergency number.
emergency-anybody = If anyone can hear me, somebody here needs help. Please come now.
emergency-or-fine = If it has passed, say I'm fine.
emergency-shown = Call { $number }
emergency-shown-unknown = Call your emergency number
emergency-passed = Good. We'll end here for today. Please tell your doctor about this today, even though it has passed. Everything is saved.
emergency-passed-shown = Tell your doctor about this today
emergency-ends = I'm ending the practice now. Everything is saved. If you need help, call for it.
unwell-go-on = Say go on for the next exercise, or finish.
unwell-shown = Left for today

# The end

summary-all = That's all for today. { $done ->
    [one] You did the whole exercise.
    [2] You did both exercises.
   *[other] You did all { SPOKEN($done) } exercises.
} Good work.
summary-part = That's all for today. { $done ->
    [0] We'll leave it there.
   *[other] { SPOKEN($done) } of { SPOKEN($all) } done{ $left ->
        [0] .
        [one] , one left for another day.
       *[other] , { SPOKEN($left) } left for another day.
    }
}
summary-all-but = That's all for today. { SPOKEN($done) } of { SPOKEN($all) } done; { $name } is left for another day.
summary-shown = { $done } of { $all } exercises done

# The short questions at the end. Each can be passed over with "next"; a number is said back, so that it can be corrected. Numbers
# stand for the client's own judgement, so no answer is praised or judged.

questions-first = { $n ->
    [one] One short question before you go.
   *[other] { SPOKEN($n) } short questions before you go.
} Say next for any you'd rather not answer, or finish.
ask-effort = How hard was that? Give it a number: zero is no effort at all, ten is the most you could do.
ask-effort-shown = How hard was that? 0 no effort · 10 the most you could do
ask-tiredness = How tired are you now? Zero is not tired at all, ten is as tired as you've ever been.
ask-tiredness-shown = How tired are you now? 0 not at all · 10 as tired as ever
ask-pain = How much pain do you have now? Zero is no pain, ten is the worst you can imagine.
ask-pain-shown = How much pain do you have now? 0 none · 10 the worst
ask-voice = How well has your voice served you this week, in daily life? Zero is not at all, ten is as well as you could wish.
ask-voice-shown = How well did your voice serve you this week? 0 not at all · 10 as you could wish
ask-rating-again = Take your time. A number from zero to ten, or next.
rating-taken = { SPOKEN($n) }. Thank you.
ask-moment = Was there a moment this week when your voice did what you wanted? Tell me about it in a sentence or two. I'll keep it for you and your clinician.
ask-moment-shown = A moment this week when your voice did what you wanted? Tell me about it.
ask-moment-again = Take your time. Tell me about a moment like that, or say next.
moment-tell = Tell me about it.
moment-taken = Thank you. I've kept that.
moment-none = All right.
ask-missed = { $days ->
    [one] One planned day this week went by without practice. That happens.
   *[other] { SPOKEN($days) } planned days this week went by without practice. That happens.
} What got in the way? You can say: not well, too tired, no time, I forgot, or something else.
ask-missed-shown = What got in the way? Not well · too tired · no time · I forgot · something else
ask-missed-again = Take your time. Not well, too tired, no time, I forgot, something else, or next.
missed-taken-not-well = Not well. I'm sorry to hear that. Thank you.
missed-taken-too-tired = Too tired. Thank you.
missed-taken-no-time = No time. Thank you.
missed-taken-forgot = You forgot. Thank you.
missed-taken-something-else = Something else. Thank you.
ask-sign-cough-at-meals = This week, did you cough or choke while eating or drinking? Yes, no, or not sure?
ask-sign-cough-at-meals-shown = Coughed or choked at meals this week?
ask-sign-wet-voice = Did your voice sound wet or gurgly after eating or drinking? Yes, no, or not sure?
ask-sign-wet-voice-shown = Wet or gurgly voice after eating or drinking?
ask-sign-weight-loss = Have you been losing weight without meaning to? Yes, no, or not sure?
ask-sign-weight-loss-shown = Losing weight without meaning to?
ask-sign-chest-infection = Have you had a chest infection this week? Yes, no, or not sure?
ask-sign-chest-infection-shown = A chest infection this week?
ask-sign-again = Take your time. Yes, no, not sure, or next?
sign-taken-yes = Yes. Please tell your clinician about that soon. It will stand first in your report.
sign-taken-no = No. Thank you.
sign-taken-not-sure = Not sure. Please ask your clinician about that. It will stand first in your report.
questions-over = Thank you. Your answers are saved.
questions-left = All right. No more questions.
questions-over-shown = Thank you
questions-unwell = The practice is over. I'll listen for a little while. Say I'm fine when you are.
questions-unwell-shown = The practice is over

# How a command is named aloud and on the screen

say-ready = ready
say-done = done
say-yes = yes
say-no = no
say-stop = stop
say-pause = pause
say-go-on = go on
say-again = again
say-skip = skip
say-go-back = go back
say-how-long = how long
say-help = help
say-slower = slower
say-faster = faster
say-louder = louder
say-softer = softer
say-rest = rest
say-dry = my mouth is dry
say-finish = finish
say-dizzy = I'm dizzy
say-hurts = it hurts
say-chest-pain = chest pain
say-cant-breathe = I can't breathe
say-choking = I'm choking
say-feel-sick = I feel sick
say-all-right = I'm fine
say-not-sure = not sure
say-why = tell me why
say-how-did = how did I do
say-hint = a hint please

# The same in a class, where only these wordings of two words and more count; a command without one is named as above.

class-say-ready = here we go
class-say-yes = present
class-say-no = not here
class-say-not-sure = next person
class-say-done = all done
class-say-again = once more
class-say-skip = next exercise
class-say-help = help me
class-say-slower = slow down
class-say-faster = a little faster
class-say-louder = a little louder
class-say-softer = a little softer
class-say-rest = everyone rest
class-say-finish = finish for today

# Shown, not spoken


# Days

weekday-monday = Monday
weekday-tuesday = Tuesday
weekday-wednesday = Wednesday
weekday-thursday = Thursday
weekday-friday = Friday
weekday-saturday = Saturday
weekday-sunday = Sunday

# Warnings: each is said once, when nothing is being timed.
trouble-loudspeaker-too-loud = My voice is so loud here that I can't hear you over it. Answer after I've spoken, or turn me down a little.
trouble-room-too-loud = The room is loud just now, so I can't measure well. If a television or a tap is on, please turn it off. If you can't, that's fine.
trouble-room-talks = I can hear other people talking, or a television, so I may miss you. If it can be turned off, please turn it off, or come closer to me.
trouble-microphone-clips = Your microphone is cutting off the loudest parts. Move it a little further away, or turn it down.
trouble-microphone-gain = Your microphone keeps changing its own volume. Today's levels can't be compared with other days.
trouble-microphone-silent = I hear nothing at all, not even the room. Please check that the microphone is switched on and plugged in. Until then you can use the keys or the page.
trouble-microphone-back = I can hear you now.
trouble-loudspeaker-back = You couldn't hear me for a while.
trouble-loudspeaker-gone = My loudspeaker is gone. Plug it in again. Until then, read here what I say.
loudspeaker-back-shown = My loudspeaker is back.

# A class, led by its clinician

class-greeting = { $title }. { $steps ->
    [one] One exercise
   *[other] { SPOKEN($steps) } exercises
} for everyone. I'll count and keep time.
class-shown = For the class
class-safety = Everyone, keep to what's easy. If you feel dizzy or have pain, leave the exercise out.
# Who is there. $name is what the class calls somebody.
class-roll = First, who is here? Say present, not here, or next person. Or here we go, to leave it.
class-call = { $name }?
class-call-shown = { $name }?
class-call-number = Number { SPOKEN($n) }?
class-call-number-shown = Number { $n }?
class-roll-over = { $present ->
    [0] Nobody is marked as here.
    [one] One person is here.
   *[other] { SPOKEN($present) } people are here.
}
# At an exercise that somebody in the room leaves out or does seated.
class-leave-out = Leaving this one out: { $names }.
class-seated = Seated for this one: { $names }.
class-start = Say here we go, or press the key, to begin.
class-start-shown = "Here we go", or the key
class-position = When everyone is ready, say here we go.
class-position-shown = "Here we go", or the key
class-rest-over = Everyone rest. Say here we go for the next one.
class-rest-over-shown = Rest
class-keys-shown = Keys: space or page down goes on, page up repeats, full stop pauses, escape stops, s skips, r rests, + and - change the loudness, < and > the pace, q ends.
class-sip = If you're allowed to, take one small sip and swallow it all. Say here we go when everyone has.
class-sip-shown = One small sip
class-halted = I'll be quiet. Say go on, or next exercise.
class-resting = Everyone rest. Say here we go when you'd like to go on.
class-unwell = If you feel unwell, leave it out and stay seated. Your clinician is here.
class-over = That's all. Good work, everyone.
