# Words of the exercises. For each exercise ID of the catalogue:
#   ex-ID-name         in headings and lists
#   ex-ID-purpose      what it is for, said when asked
#   ex-ID-instruction  what to do, said the first time
#   ex-ID-short        the same from the second time on
#   ex-ID-cue          starts one repetition
#   ex-ID-phase-NAME   said as a phase of a timed posture begins
#   ex-ID-rung-NAME    said before a step of a ladder of loudness or pitch: low, middle, high
#   ex-ID-before       where a clinician must agree: who must not do it, said once, before the question about agreement. It names the
#                      exercise, has 45 words at most, and covers every notfor-KEY of it, several in one plain word if need be
#   ex-ID-care         what matters each time, in one sentence of 14 words at most: where a caution of it matters every time
# For each caution KEY: caution-KEY; for each group of people who should leave an exercise out: notfor-KEY.
#
# Nothing here may hold the wording of a command that is listened for while it is being said, above all not the two that
# interrupt. Say "end", "leave it", "hold still" instead. A test watches over this.

## Voice

ex-long-ah-name = Long ah
ex-long-ah-purpose = It's meant to train a strong, steady voice on one breath.
ex-long-ah-instruction = Sit tall and breathe in. Then hold an ah on a middle note, for as long as it stays steady.
ex-long-ah-short = The long ah, clear and steady.
ex-long-ah-cue = Breathe in… and ah.
ex-long-ah-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-comfortable-ah-name = Comfortable ah
ex-comfortable-ah-purpose = It's meant to show your voice as it usually is.
ex-comfortable-ah-instruction = Say ah for about five seconds, at the pitch and loudness you talk with.
ex-comfortable-ah-short = An ordinary ah, as you talk.
ex-comfortable-ah-cue = Breathe in… and an easy ah.
ex-comfortable-ah-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-high-ee-name = High ee
ex-high-ee-purpose = It's meant to stretch your voice upward.
ex-high-ee-instruction = Breathe in, then sing a high, light ee and hold it for a few seconds. Go high, but don't push.
ex-high-ee-short = The high ee, light and easy.
ex-high-ee-cue = Breathe in… and a high ee.
ex-high-ee-care = Go only as high as is comfortable, and end it if you feel light-headed.

ex-glide-up-name = Glide up
ex-glide-up-purpose = It's meant to keep the range of your voice wide.
ex-glide-up-instruction = Start on your lowest comfortable note, and slide an ah up smoothly to your highest comfortable note.
ex-glide-up-short = Slide from low to high.
ex-glide-up-cue = Breathe in… start low, and glide up.
ex-glide-up-care = Stay on comfortable notes, and end it if you feel light-headed.

ex-glide-down-name = Glide down
ex-glide-down-purpose = It's meant to keep the range of your voice wide.
ex-glide-down-instruction = Start on your highest comfortable note, and slide an ah down smoothly to your lowest comfortable note.
ex-glide-down-short = Slide from high to low.
ex-glide-down-cue = Breathe in… start high, and glide down.
ex-glide-down-care = Stay on comfortable notes, and end it if you feel light-headed.

ex-functional-phrases-name = Own phrases
ex-functional-phrases-purpose = It's meant to carry your strong voice into the sentences you use every day.
ex-functional-phrases-instruction = I'll say a phrase from your own day. Say it after me in a strong voice.
ex-functional-phrases-short = Your own phrases, in a strong voice.
ex-functional-phrases-cue = Your turn.

ex-counting-on-a-breath-name = Counting on one breath
ex-counting-on-a-breath-purpose = It's meant to make your voice carry on one breath.
ex-counting-on-a-breath-instruction = I'll count. Take a breath, and count the same after me on that one breath, as clear at the end as at the start.
ex-counting-on-a-breath-short = Count after me, all on one breath.
ex-counting-on-a-breath-cue = Your turn.
ex-counting-on-a-breath-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-days-on-a-breath-name = Days on one breath
ex-days-on-a-breath-purpose = It's meant to make your voice carry on one breath.
ex-days-on-a-breath-instruction = I'll say some days of the week. Take a breath, and say them after me on that one breath, as clear at the end as at the start.
ex-days-on-a-breath-short = Say the days after me, all on one breath.
ex-days-on-a-breath-cue = Your turn.
ex-days-on-a-breath-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-reading-passage-name = Passage to read
ex-reading-passage-purpose = It's meant to carry your voice through a whole page, and to show its level and its pauses.
ex-reading-passage-instruction = There's a short story on the screen, or on your sheet. Read it out from start to end, at your own pace.
ex-reading-passage-short = Read the story out, at your own pace.
ex-reading-passage-cue = Begin when you like.

ex-talk-on-a-prompt-name = Talk
ex-talk-on-a-prompt-purpose = It's meant to carry your voice into everyday talk.
ex-talk-on-a-prompt-instruction = I'll ask you about something. Talk about it freely, and I'll tell you when the time is up.
ex-talk-on-a-prompt-short = Talk freely until the time is up.
ex-talk-on-a-prompt-cue = Tell me about something you enjoy doing.

ex-loudness-steps-name = Loudness steps
ex-loudness-steps-purpose = It's meant to give you command of how loud you are.
ex-loudness-steps-instruction = Hold an ah in steps: soft, medium, strong, and back to medium. Make each step clear, and never force it.
ex-loudness-steps-short = An ah in steps: soft, medium, strong.
ex-loudness-steps-cue = Breathe in… and ah.
ex-loudness-steps-rung-low = Breathe in… a soft ah.
ex-loudness-steps-rung-middle = Breathe in… a medium ah.
ex-loudness-steps-rung-high = Breathe in… a strong ah.
ex-loudness-steps-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-pitch-steps-name = Pitch steps
ex-pitch-steps-purpose = It's meant to give you command of your pitch.
ex-pitch-steps-instruction = Hold an ah in steps: low, in the middle, high, and back to the middle. Stay on comfortable notes.
ex-pitch-steps-short = An ah in steps: low, middle, high.
ex-pitch-steps-cue = Breathe in… and ah.
ex-pitch-steps-rung-low = Breathe in… a low ah.
ex-pitch-steps-rung-middle = Breathe in… an ah in the middle.
ex-pitch-steps-rung-high = Breathe in… a high ah.
ex-pitch-steps-care = Stay on comfortable notes, and end it if you feel light-headed.

ex-sentence-melody-name = Sentence melody
ex-sentence-melody-purpose = It's meant to let people hear whether you ask or tell.
ex-sentence-melody-instruction = I'll say a sentence, as a question or as a statement. Say it after me. Let your voice rise at the end of a question, and fall at the end of a statement.
ex-sentence-melody-short = Say each sentence after me: questions rise, statements fall.
ex-sentence-melody-cue = Your turn.

ex-sentence-stress-name = Sentence stress
ex-sentence-stress-purpose = It's meant to let the word that matters stand out.
ex-sentence-stress-instruction = I'll say a sentence that sets one word against another. Say it after me, and let those two words stand out.
ex-sentence-stress-short = Say each sentence after me, and let the words that matter stand out.
ex-sentence-stress-cue = Your turn.

ex-paced-phrases-name = Phrases to a beat
ex-paced-phrases-purpose = It's meant to slow your speech, so that each word is clear. It helps some people and not others.
ex-paced-phrases-instruction = I'll say a phrase and count four beats. Then say it in the same beat, one word to each. A dot on the screen shows the beat.
ex-paced-phrases-short = I'll count four. Then say the phrase, one word to each beat.
ex-paced-phrases-cue = Your turn.

ex-easy-hum-name = Easy hum
ex-easy-hum-purpose = It's meant to let your voice settle after loud work.
ex-easy-hum-instruction = Close your lips lightly, and hum a soft mm, so that your lips buzz.
ex-easy-hum-short = A soft hum, with a buzz in your lips.
ex-easy-hum-cue = Breathe in… and hum.
ex-easy-hum-care = Keep it soft and easy, and end it if you feel light-headed.

ex-straw-voicing-name = Voice through a straw
ex-straw-voicing-purpose = It's meant to let your voice settle after loud work.
ex-straw-voicing-instruction = Close your lips around a straw. Let a soft oo flow out, with all the air going through the straw.
ex-straw-voicing-short = A soft oo through the straw.
ex-straw-voicing-cue = Breathe in… and oo, through the straw.
ex-straw-voicing-care = Keep it soft and easy, and end it if you feel light-headed.

## Swallowing

ex-tongue-hold-swallow-name = Tongue-hold swallow
ex-tongue-hold-swallow-purpose = It's meant to work the back wall of your throat. Studies don't agree on whether it does.
ex-tongue-hold-swallow-instruction = Use only saliva, with your mouth empty. Put the tip of your tongue just past your front teeth, hold it there gently with your teeth, and swallow.
ex-tongue-hold-swallow-short = Tip of your tongue between your teeth, and swallow. Saliva only.
ex-tongue-hold-swallow-cue = Tongue between the teeth… and swallow.
ex-tongue-hold-swallow-before = Tongue-hold swallow. Don't do it if your throat doesn't clear well when you swallow, or your voice box moves little; never with food, drink or pills in your mouth.
ex-tongue-hold-swallow-care = Use saliva only, with nothing else in your mouth.

ex-mid-swallow-hold-name = Mid-swallow hold
ex-mid-swallow-hold-purpose = It's meant to keep your voice box up longer, so that the top of the food pipe stays open.
ex-mid-swallow-hold-instruction = Swallow, and feel your voice box rise. When it's at the top, squeeze and keep it up for a few seconds. Then let it come down, and breathe out.
ex-mid-swallow-hold-short = Swallow, keep it up at the top, then let it come down.
ex-mid-swallow-hold-cue = Swallow… and keep it up.
ex-mid-swallow-hold-before = Mid-swallow hold. You hold your breath. Don't do it with heart disease, an irregular heartbeat, high blood pressure, lung disease or shortness of breath, or after a recent stroke.
ex-mid-swallow-hold-care = Begin with a clear mouth, and breathe freely between swallows.

ex-effortful-swallow-name = Strong swallow
ex-effortful-swallow-purpose = It's meant to work your tongue and throat together. In Parkinson's, one small study found mixed results.
ex-effortful-swallow-instruction = Gather your saliva. Then swallow as hard as you can, as if you had a big bite to get down. Squeeze with your tongue and throat.
ex-effortful-swallow-short = Swallow hard, with your tongue and throat.
ex-effortful-swallow-cue = And swallow hard.
ex-effortful-swallow-before = Strong swallow. You hold your breath. Don't do it with heart disease, an irregular heartbeat, high blood pressure, lung disease or shortness of breath, or after a recent stroke.
ex-effortful-swallow-care = Begin with a clear mouth, and breathe freely between swallows.

## Head and neck

ex-head-lift-sustained-name = Head lift, held
ex-head-lift-sustained-purpose = It's meant to work the muscles under the chin that open the top of the food pipe.
ex-head-lift-sustained-instruction = Lie flat on your back, without a pillow. Keep both shoulders down. Lift only your head, look at your toes, and keep your head up while you breathe.
ex-head-lift-sustained-short = Flat on your back. Lift only your head, look at your toes, and breathe.
ex-head-lift-sustained-cue = Shoulders down… and lift.
ex-head-lift-sustained-before = Head lift, held. Don't do it with fragile bones, a hernia, an opening in the neck, or trouble with neck, head, eyes, heart or blood pressure; nor in pregnancy, after recent belly surgery, or if you can't lie flat and get up safely.
ex-head-lift-sustained-care = Lie flat, keep breathing, and roll to your side before you sit up.
ex-head-lift-sustained-phase-lift = Keep it up, and breathe.

ex-head-lift-repeated-name = Head lift, repeated
ex-head-lift-repeated-purpose = It's meant to work the muscles under the chin that open the top of the food pipe.
ex-head-lift-repeated-instruction = Lie flat on your back, without a pillow. Keep both shoulders down. Each time I say lift, raise only your head, look at your toes, and lay it back down.
ex-head-lift-repeated-short = Flat on your back. Lift your head, look at your toes, and lay it back down.
ex-head-lift-repeated-cue = Lift… and down.
ex-head-lift-repeated-before = Head lift, repeated. Don't do it with fragile bones, a hernia, an opening in the neck, or trouble with neck, head, eyes, heart or blood pressure; nor in pregnancy, after recent belly surgery, or if you can't lie flat and get up safely.
ex-head-lift-repeated-care = Lie flat, keep breathing, and roll to your side before you sit up.

ex-chin-tuck-ball-name = Chin to the ball, held
ex-chin-tuck-ball-purpose = It's meant to work the muscles under your chin while you sit.
ex-chin-tuck-ball-instruction = Sit tall, with a soft ball between your chin and your chest. Press your chin down on the ball, and keep pressing while you breathe.
ex-chin-tuck-ball-short = Press your chin down on the ball, and breathe.
ex-chin-tuck-ball-cue = Sit tall… and press.
ex-chin-tuck-ball-before = Chin to the ball, held. Don't do it with neck or jaw joint trouble, weak neck bones, or an opening in your neck. With high blood pressure, ask your clinician first.
ex-chin-tuck-ball-care = Keep breathing, and let go if your jaw or neck aches.
ex-chin-tuck-ball-phase-press = Keep pressing, and breathe.

ex-chin-tuck-ball-repeated-name = Chin to the ball, repeated
ex-chin-tuck-ball-repeated-purpose = It's meant to work the muscles under your chin while you sit.
ex-chin-tuck-ball-repeated-instruction = Sit tall, with a soft ball between your chin and your chest. Each time I say press, press your chin down on the ball, then let go.
ex-chin-tuck-ball-repeated-short = Press your chin down on the ball, then let go.
ex-chin-tuck-ball-repeated-cue = Press… and let go.
ex-chin-tuck-ball-repeated-before = Chin to the ball, repeated. Don't do it with neck or jaw joint trouble, weak neck bones, or an opening in your neck.
ex-chin-tuck-ball-repeated-care = Keep breathing, and let go if your jaw or neck aches.

ex-neck-turns-name = Neck turns
ex-neck-turns-purpose = It's meant to keep your neck easy to turn.
ex-neck-turns-instruction = Sit tall, with your shoulders loose. Turn your head slowly to one side, as far as is comfortable, and stay there. Then turn to the middle, and then to the other side.
ex-neck-turns-standing = Stand tall behind a firm chair, hold on to its back, and keep your shoulders loose. Turn your head slowly to one side, as far as is comfortable, and stay there. Then turn to the middle, and then to the other side.
ex-neck-turns-short = Turn slowly to each side, only as far as is comfortable.
ex-neck-turns-cue = Look straight ahead.
ex-neck-turns-before = Neck turns. Don't do them after a recent stroke or a neck injury or operation, or with weak neck bones, narrowed neck arteries, or a stiff, unstable or twisting neck. Nor with an opening in your neck, or an implant's wire.
ex-neck-turns-care = Move slowly, and only as far as is comfortable.
ex-neck-turns-phase-left = Turn slowly to the left, and stay.
ex-neck-turns-phase-middle = And back to the middle.
ex-neck-turns-phase-right = Turn slowly to the right, and stay.

ex-neck-tilts-name = Neck tilts
ex-neck-tilts-purpose = It's meant to loosen the sides of your neck.
ex-neck-tilts-instruction = Sit tall, with your shoulders loose. Tilt one ear slowly towards your shoulder, as far as is comfortable, and stay there. Then come back to the middle, and tilt to the other side.
ex-neck-tilts-standing = Stand tall behind a firm chair, hold on to its back, and keep your shoulders loose. Tilt one ear slowly towards your shoulder, as far as is comfortable, and stay there. Then come back to the middle, and tilt to the other side.
ex-neck-tilts-short = Tilt slowly to each side, only as far as is comfortable.
ex-neck-tilts-cue = Look straight ahead.
ex-neck-tilts-before = Neck tilts. Don't do them after a recent stroke or a neck injury or operation, or with weak neck bones, narrowed neck arteries, or a stiff, unstable or twisting neck. Nor with an opening in your neck, or an implant's wire.
ex-neck-tilts-care = Move slowly, and only as far as is comfortable.
ex-neck-tilts-phase-left = Left ear towards your shoulder, and stay.
ex-neck-tilts-phase-middle = And back to the middle.
ex-neck-tilts-phase-right = Right ear towards your shoulder, and stay.

ex-shoulder-rolls-name = Shoulder rolls
ex-shoulder-rolls-purpose = It's meant to loosen your shoulders, so your breath and voice flow freely.
ex-shoulder-rolls-instruction = Sit tall, and let your arms hang. Each time I say roll, roll both shoulders up, back and down in one slow circle.
ex-shoulder-rolls-standing = Stand tall beside a firm chair, close enough to hold on to it, and let your arms hang. Each time I say roll, roll both shoulders up, back and down in one slow circle.
ex-shoulder-rolls-short = Slow circles: up, back and down.
ex-shoulder-rolls-cue = And roll.

## Face, tongue and jaw

ex-lip-press-smile-name = Lip press and smile
ex-lip-press-smile-purpose = It's meant to train your lips to close firmly and move clearly.
ex-lip-press-smile-instruction = Press your lips together and breathe through your nose. When I say tighter, press harder. At the end, give a wide smile.
ex-lip-press-smile-short = Press your lips together, tighter at the end, then smile.
ex-lip-press-smile-cue = Lips together… and press.
ex-lip-press-smile-care = Breathe through your nose, and let go if your face aches.
ex-lip-press-smile-phase-press = Hold.
ex-lip-press-smile-phase-tighter = Tighter now.
ex-lip-press-smile-phase-smile = And smile.

ex-cheek-puff-name = Full cheeks
ex-cheek-puff-purpose = It's meant to train your lips and cheeks to keep your mouth closed.
ex-cheek-puff-instruction = Close your lips, fill your cheeks with air, and keep it in. Breathe through your nose.
ex-cheek-puff-short = Fill your cheeks, and keep the air in.
ex-cheek-puff-cue = Lips closed… and fill your cheeks.
ex-cheek-puff-care = Breathe through your nose, and let go if your face aches.
ex-cheek-puff-phase-puff = Keep the air in.

ex-tongue-against-spoon-name = Tongue against a spoon
ex-tongue-against-spoon-purpose = It's meant to make your tongue stronger to the front and to both sides.
ex-tongue-against-spoon-instruction = Hold the back of a spoon against your tongue. Push against it with your tongue, to the front, then to the left, then to the right, and keep breathing.
ex-tongue-against-spoon-short = Push your tongue against the spoon: front, left, right.
ex-tongue-against-spoon-cue = Spoon against your tongue… and push.
ex-tongue-against-spoon-before = Tongue against a spoon. You push hard. Don't do it after a recent injury or operation in your mouth. With high blood pressure, ask your clinician first.
ex-tongue-against-spoon-care = Keep breathing while you push.
ex-tongue-against-spoon-phase-forward = To the front.
ex-tongue-against-spoon-phase-left = To the left.
ex-tongue-against-spoon-phase-right = And to the right.

ex-lips-around-spoon-name = Lips around a spoon
ex-lips-around-spoon-purpose = It's meant to train your lips to close firmly.
ex-lips-around-spoon-instruction = Hold the handle of a spoon level between your lips, not your teeth. Keep it there, and breathe through your nose.
ex-lips-around-spoon-short = Hold the spoon level between your lips.
ex-lips-around-spoon-cue = Spoon between your lips… and hold.
ex-lips-around-spoon-care = Breathe through your nose, and let go if your face aches.
ex-lips-around-spoon-phase-hold = Hold it level.

ex-tongue-press-name = Tongue press
ex-tongue-press-purpose = It's meant to make your tongue stronger for swallowing and for clear sounds.
ex-tongue-press-instruction = Close your mouth. Push your tongue firmly against the roof of your mouth, and keep pushing while you breathe through your nose.
ex-tongue-press-short = Push your tongue against the roof of your mouth.
ex-tongue-press-cue = Tongue up… and push.
ex-tongue-press-before = Tongue press. You push hard. Don't do it after a recent injury or operation in your mouth. With high blood pressure, ask your clinician first.
ex-tongue-press-care = Keep breathing while you push.
ex-tongue-press-phase-press = Keep pushing.

ex-tongue-side-to-side-name = Tongue from side to side
ex-tongue-side-to-side-purpose = It's meant to keep your tongue quick and easy to move.
ex-tongue-side-to-side-instruction = Open your mouth a little. Each time I say left and right, touch one corner of your mouth with the tip of your tongue, and then the other.
ex-tongue-side-to-side-short = Tip of your tongue from corner to corner.
ex-tongue-side-to-side-cue = Left… and right.

ex-tongue-reach-name = Tongue reach
ex-tongue-reach-purpose = It's meant to keep your tongue moving freely.
ex-tongue-reach-instruction = Put your tongue out as far as is comfortable, and hold it there. Then point it up towards your nose, and hold it there.
ex-tongue-reach-short = Tongue out, then up.
ex-tongue-reach-cue = Mouth open.
ex-tongue-reach-phase-out = Tongue out, and hold it there.
ex-tongue-reach-phase-up = Now point it up.

ex-jaw-opening-name = Jaw opening
ex-jaw-opening-purpose = It's meant to work the muscles that lift the voice box when you swallow.
ex-jaw-opening-instruction = Open your mouth as wide as is comfortable. Keep it open, and keep breathing, until I say relax.
ex-jaw-opening-short = Open wide, as far as is comfortable, and hold.
ex-jaw-opening-cue = And open wide.
ex-jaw-opening-before = Jaw opening. Don't do it with jaw joint trouble, or a jaw that has ever come out of place. With high blood pressure, ask your clinician first.
ex-jaw-opening-care = Keep breathing, and close your mouth if your jaw aches.
ex-jaw-opening-phase-open = Keep it open, and breathe.

## Breathing and speech

ex-nasal-breathing-name = Nasal breathing
ex-nasal-breathing-purpose = It's meant to calm you, and to give you control of a longer breath out.
ex-nasal-breathing-instruction = Close your mouth. Breathe in through your nose while I count. Then let the air flow slowly out through your nose while I keep counting.
ex-nasal-breathing-short = In and out through your nose, on my count.
ex-nasal-breathing-cue = Let your breath out… and we begin.
ex-nasal-breathing-care = Breathe gently, and let the count go if you feel light-headed.

ex-breath-out-resistance-name = Breathing out against resistance
ex-breath-out-resistance-purpose = It's meant to strengthen the muscles that you breathe out and cough with.
ex-breath-out-resistance-instruction = Take the trainer that your clinician gave you. Breathe in, close your lips around it, and blow out hard and steadily, until the air is out.
ex-breath-out-resistance-short = Breathe in, and blow out hard through the trainer.
ex-breath-out-resistance-cue = Breathe in… and blow.
ex-breath-out-resistance-before = Breathing out against resistance. Don't do it with lung or heart disease, an irregular heartbeat, high blood pressure, a hernia or late in pregnancy, or after a recent stroke or a recent operation on your belly, eyes, ears, sinuses or teeth.
ex-breath-out-resistance-care = Take ordinary breaths in between, and end it if you feel light-headed.

ex-voluntary-cough-name = Strong cough
ex-voluntary-cough-purpose = It's meant to keep your cough strong enough to clear your throat.
ex-voluntary-cough-instruction = Breathe in deeply, close your throat, and cough once, hard and short. Do it as your clinician has shown you.
ex-voluntary-cough-short = Breathe in, and cough once, hard and short.
ex-voluntary-cough-cue = Breathe in… and cough.
ex-voluntary-cough-before = Strong cough. Don't do it with a throat infection, lung disease, high blood pressure, a hernia, fragile bones or eye disease, late in pregnancy, or after a recent stroke or an operation on your throat, belly, eyes, ears, sinuses or teeth.
ex-voluntary-cough-care = Begin with a clear mouth, and end it if you feel light-headed.

ex-syllable-repetition-name = Quick syllables
ex-syllable-repetition-purpose = It's meant to train your lips and tongue to move quickly and evenly.
ex-syllable-repetition-instruction = Take a breath, then say the syllables over and over, as quickly and as evenly as you can, until I say thank you.
ex-syllable-repetition-short = The syllables, quick and even.
ex-syllable-repetition-cue = Breathe in… and off you go.
ex-syllable-repetition-care = Swallow first, and take ordinary breaths between the runs.

ex-pa-repetition-name = Quick pa
ex-pa-repetition-purpose = It's meant to train your lips to move quickly and evenly.
ex-pa-repetition-instruction = Take a breath, then say pa, pa, pa, over and over, as quickly and as evenly as you can, until I say thank you.
ex-pa-repetition-short = Pa, pa, pa, quick and even.
ex-pa-repetition-cue = Breathe in… and off you go.
ex-pa-repetition-care = Swallow first, and take ordinary breaths between the runs.

ex-ta-repetition-name = Quick ta
ex-ta-repetition-purpose = It's meant to train the tip of your tongue to move quickly and evenly.
ex-ta-repetition-instruction = Take a breath, then say ta, ta, ta, over and over, as quickly and as evenly as you can, until I say thank you.
ex-ta-repetition-short = Ta, ta, ta, quick and even.
ex-ta-repetition-cue = Breathe in… and off you go.
ex-ta-repetition-care = Swallow first, and take ordinary breaths between the runs.

ex-ka-repetition-name = Quick ka
ex-ka-repetition-purpose = It's meant to train the back of your tongue to move quickly and evenly.
ex-ka-repetition-instruction = Take a breath, then say ka, ka, ka, over and over, as quickly and as evenly as you can, until I say thank you.
ex-ka-repetition-short = Ka, ka, ka, quick and even.
ex-ka-repetition-cue = Breathe in… and off you go.
ex-ka-repetition-care = Swallow first, and take ordinary breaths between the runs.

ex-category-naming-name = Naming
ex-category-naming-purpose = It's meant to make finding words quicker.
ex-category-naming-instruction = I'll give you a category. Name as many things in it as you can think of, one after another, in a clear voice. I'll count and keep time.
ex-category-naming-short = As many as you can think of, in a clear voice.
ex-category-naming-cue = Begin now.

ex-word-questions-name = Word questions
ex-word-questions-purpose = It's meant to train finding words and saying them clearly.
ex-word-questions-instruction = I'll give you a clue, and you say the word. Take your time.
ex-word-questions-short = I give you a clue, and you say the word.
ex-word-questions-cue = Here's the clue.

ex-rest-name = Rest
ex-rest-purpose = It's meant to let your voice and body recover.
ex-rest-instruction = Sit back, stay silent, and breathe as you like.
ex-rest-short = Sit back and breathe as you like.
ex-rest-cue = Sit back.

## What stands in place of the first count of a paced phase

paced-in = In
paced-out = Out

## Cautions

caution-voice-strain = End the exercise if your throat is sore or you feel strain in your neck, and tell your clinician.
caution-voice-hoarse = If you have been hoarse for more than a day, leave out the loud exercises and ask your clinician first.
caution-voice-no-force = Keep it easy: end it at the first discomfort, and never push into a squeak.
caution-bearing-down = Let the sound flow, and don't bear down. If you have a hernia or strong reflux, ask your clinician before you hold long sounds.
caution-straw-water = Hold the other end of the straw in the air. Use water only if your clinician allows it: keep the end just under the surface, and blow, never sip.
caution-stand-safely = Stand upright behind a firm chair, and hold on to its back with one hand.
caution-sit-upright = Sit upright on a firm chair with both feet on the floor.
caution-swallow-assessed = Do this only if your own clinician has looked at your swallowing and has shown you how to do it.
caution-saliva-only = Do this with an empty mouth, using only saliva, never food, drink or pills.
caution-clear-mouth = Begin with a clear mouth, and take ordinary breaths between swallows.
caution-gentle-bite = Hold your tongue gently, so your teeth don't hurt it.
caution-residue = Your throat clears less well during this exercise, so afterwards swallow a second time in your usual way.
caution-breath-break-heart = You hold your breath for a moment here. If you have any heart trouble, do this only if your clinician has allowed it.
caution-sip-rules = Take a sip only if your clinician allows it. Sit fully upright, keep your chin level, take one small sip, and swallow it all before you take another. If you cough or your voice sounds wet or gurgly, leave the sips for today, and tell your clinician the same day.
caution-keep-breathing = Breathe all the way through. Holding your breath strains the heart.
caution-lie-flat = Lie flat, keep your shoulders down, and end the exercise at once if lying flat makes you breathless.
caution-neck-soreness = A little soreness in the neck is usual in the first weeks. If the pain is sharp or lasts, end the exercise and ask your clinician.
caution-static-effort = Holding still with effort raises blood pressure. If yours is high, ask your clinician first.
caution-rise-slowly = Afterwards, roll onto your side, then sit for two minutes before you stand.
caution-jaw-pain = End the exercise at once if your jaw aches, clicks painfully or catches, and ask your clinician.
caution-neck-signs = End the exercise at once and call someone if you feel light-headed, see double, can't speak clearly, feel queasy, or your face or arm goes numb.
caution-neck-range = Move slowly and only as far as is comfortable, never in full circles.
caution-shoulder-pain = Keep the circles small if a shoulder is sore.
caution-face-comfort = End the exercise if your face or mouth aches.
caution-breathe-through-nose = Breathe through your nose. Leave the exercise out if your nose is blocked.
caution-dentures = Check that your dentures fit firmly, or take them out.
caution-light-headed = If you feel light-headed, breathe as you like until you feel well, and tell your clinician.
caution-no-forcing = Let the air come and go without force, and never hold your breath.
caution-set-by-clinician = Do this only as your clinician has shown you, and only with what they have set for you.
caution-spoon-clean = Use a clean, smooth spoon, and keep it at the front of your mouth.
caution-syllable-tired = End the exercise when your lips or tongue are tired. If saliva gathers, end it and swallow first.
caution-game-enjoy = This is for pleasure and practice. Leave it whenever it upsets you.

## Who should leave an exercise out unless their own clinician says otherwise

notfor-voice-acute = People with a fresh throat infection, or with a fresh bleed or a recent operation on the vocal folds.
notfor-poor-clearing = People whose throat clears poorly, or whose hyoid bone moves little when they swallow.
notfor-heart-rhythm = People with heart disease or an irregular heartbeat.
notfor-recent-stroke = People who had a stroke or a mini-stroke lately.
notfor-blood-pressure = People whose blood pressure isn't under control.
notfor-breathless = People who are short of breath or have a lung disease.
notfor-neck-unstable = People whose neck is injured, unstable, stiff or has been operated on, or who have rheumatoid disease of the neck.
notfor-tracheostomy = People who breathe through an opening in the neck.
notfor-head-pressure = People with raised pressure in the head, or after a recent operation on the head or neck.
notfor-flat-lying = People who can't lie flat, or who have heart failure, severe reflux, or blood pressure that isn't under control.
notfor-eye-pressure = People with glaucoma or a disease of the retina.
notfor-fragile-bones = People with fragile bones, above all in the spine.
notfor-late-pregnancy = People who are more than 16 weeks pregnant.
notfor-hernia = People with a hernia.
notfor-belly-recent = People with a recent operation on the belly.
notfor-floor-unsafe = People who can't lie down and get back up safely on their own.
notfor-neck-arteries = People with diseased or narrowed arteries in the neck.
notfor-neck-dystonia = People whose neck twists or pulls by itself (cervical dystonia).
notfor-neck-implant = People with the wire or the box of an implanted stimulator in the neck.
notfor-jaw-joint = People with jaw joint trouble, or whose jaw has been dislocated.
notfor-neck-bones = People with fragile bones in the neck, or a recent neck injury.
notfor-shoulder-injury = People with a recent shoulder injury or operation.
notfor-face-recent = People with a recent injury to, or operation on, the face.
notfor-face-palsy = People whose face is weak or droops on one side (facial palsy).
notfor-pressure-recent = People with a recent operation on an eye, an ear, the sinuses or the teeth.
notfor-mouth-recent = People with a recent injury to, or operation on, the mouth or tongue.
notfor-breathing-illness = People with an acute lung illness, or with asthma that isn't under control.
notfor-lung-disease = People with a long-term lung disease, even a stable one.
