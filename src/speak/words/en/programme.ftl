# What the printed handout of a routine says. It is read, not heard; therefore every key ends in -shown.

handout-for-shown = For { $client }
handout-about-shown = about { $minutes ->
    [one] one minute
   *[other] { $minutes } minutes
}
handout-seated-shown = Sit upright with both feet on the floor, unless it says otherwise.
handout-every-day-shown = every day at { $times }
handout-on-days-shown = { $days } at { $times }
handout-and-shown = { $before } and { $last }

# The dose

handout-times-shown = { $sets ->
    [one] { $n ->
        [one] once
        [2] twice
       *[other] { $n } times
    }
   *[other] { $sets } sets of { $n }
}
handout-goal-shown = aim for { $s } seconds
handout-no-goal-shown = as long as is comfortable
handout-ladder-shown = in steps: { $rungs }
handout-setting-shown = set to: { $setting }
handout-held-shown = held { $s } seconds
handout-phase-shown = { $name } { $s } s
handout-phases-shown = { $phases }
handout-counts-shown = in on { $in }, out on { $out }
handout-next-on-done-shown = say “{ $done }” after each
handout-next-on-cue-shown = one at each call
handout-phrases-shown = { $n ->
    [one] one phrase
   *[other] { $n } phrases
}
handout-talk-shown = { $s } seconds
handout-passage-shown = once, at your own pace
handout-questions-shown = { $n ->
    [one] one question
   *[other] { $n } questions
}
handout-categories-shown = { $n ->
    [one] one category
   *[other] { $n } categories
}
handout-minute-shown = as many as come to mind in { $s } seconds
handout-syllables-shown = “{ $syllables }” for { $s } seconds
handout-rest-length-shown = { $s } seconds
handout-rest-ready-shown = until you say “{ $ready }”
handout-rest-between-shown = rest { $s } s between
handout-sips-shown = { $every ->
    [one] one small sip after each
   *[other] one small sip after every { $every }
}
handout-posture-lying-shown = lying down
handout-posture-standing-shown = standing, holding a firm chair
# More than usual, which a clinician has spoken for.
handout-word-shown = { $name }: more than usual. { $who } agreed ({ $why }).
handout-word-whole-shown = More practice than usual. { $who } agreed ({ $why }).
handout-grows-shown = grows over the weeks to { $goal }

# What to say

handout-say-title-shown = Say
handout-say-ready-shown = “{ $word }” to begin
handout-say-done-shown = “{ $word }” when you've done one
handout-say-stop-shown = “{ $word }” at any time
handout-say-pause-shown = “{ $word }” to wait
handout-say-help-shown = “{ $word }” to hear it again
handout-say-finish-shown = “{ $word }” to end for today

# When to end

handout-care-shown = Care: { $list }.
handout-not-for-shown = Not for, unless your clinician says otherwise: { $list }.
handout-stop-title-shown = Stop at once
handout-stop-unwell-shown = Dizziness, faintness, breathlessness or pain. If it lasts, call someone.
handout-stop-swallow-shown = Coughing, choking or a wet voice: no more swallows today. Tell your clinician.
handout-stop-emergency-shown = Chest pain, sudden weakness, trouble speaking: call your emergency number.
handout-asked-shown = Short questions at the end: say “next” to leave one out.
handout-asked-weekly-shown = Once a week, a few short questions at the end: say “next” to leave one out.
handout-asked-both-shown = Short questions at the end, and once a week a few more: say “next” to leave one out.
handout-foot-shown = A practice aid. It makes no diagnosis. What your own clinician says comes first.
handout-page-shown = Page { $page } of { $pages }

# Cautions in a few words; the whole ones are the messages caution-KEY

care-voice-strain-shown = end it if your throat is sore or strained
care-voice-hoarse-shown = not while hoarse
care-voice-no-force-shown = keep it easy
care-bearing-down-shown = don't bear down
care-straw-water-shown = straw in the air, in water only if allowed
care-stand-safely-shown = stand behind a firm chair, one hand on it
care-sit-upright-shown = sit upright, feet on the floor
care-swallow-assessed-shown = only as shown by your clinician
care-saliva-only-shown = on saliva only, mouth empty
care-clear-mouth-shown = mouth clear first
care-gentle-bite-shown = hold your tongue gently
care-residue-shown = swallow once more afterwards
care-breath-break-heart-shown = with heart trouble, only if allowed
care-sip-rules-shown = sips only if your clinician allows them
care-keep-breathing-shown = keep breathing
care-lie-flat-shown = end it if lying flat makes you breathless
care-neck-soreness-shown = end it if the pain is sharp
care-static-effort-shown = high blood pressure: ask first
care-rise-slowly-shown = afterwards, roll over and sit for two minutes
care-jaw-pain-shown = end it if your jaw aches or catches
care-neck-signs-shown = end it if dizzy, sick, numb or seeing double
care-neck-range-shown = slowly, and only as far as is comfortable
care-shoulder-pain-shown = small circles if it is sore
care-face-comfort-shown = end it if it aches
care-breathe-through-nose-shown = breathe through your nose
care-dentures-shown = dentures firm, or take them out
care-light-headed-shown = if light-headed, breathe as you like
care-no-forcing-shown = no force, never hold your breath
care-set-by-clinician-shown = only as shown and set by your clinician
care-spoon-clean-shown = a clean, smooth spoon, at the front of the mouth
care-syllable-tired-shown = end it when your lips or tongue tire
care-game-enjoy-shown = leave it whenever you like
