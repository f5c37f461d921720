# What the pictures show, one sentence or two for whoever cannot see them. For each drawing NAME: picture-NAME-shown. They are never said.
#
# Left and right are the person's own: the drawings are as in a mirror.

## Voice

picture-long-ah-shown = A person holds an ah with the mouth open; the note stays level.
picture-high-ee-shown = A person holds an ee, high above the usual note.
picture-glide-up-shown = A person slides an ah from a low note up to a high one.
picture-glide-down-shown = A person slides an ah from a high note down to a low one.
picture-comfortable-ah-shown = A person says a short, level ah.
picture-counting-on-a-breath-shown = A person counts, the numbers along one line.
picture-days-on-a-breath-shown = A person says the days of the week along one line.
picture-reading-passage-shown = A person reads from a sheet.
picture-talk-on-a-prompt-shown = A person talks.
picture-loudness-steps-shown = A person holds an ah in four steps, soft, medium, strong, medium.
picture-pitch-steps-shown = A person holds an ah in steps, from low to high.
picture-sentence-melody-shown = A person says one sentence that rises at the end, and one that falls.
picture-sentence-stress-shown = A person says a sentence in which one word stands out.
picture-paced-phrases-shown = A person says a phrase, one word to each beat.
picture-functional-phrases-shown = A person says a phrase.
picture-easy-hum-shown = A person hums softly with closed lips.
picture-straw-voicing-shown = A person closes the lips around a straw, and sounds a soft oo through it.

## Swallowing

picture-tongue-hold-swallow-shown = A person holds the tip of the tongue between the front teeth, and swallows.
picture-mid-swallow-hold-shown = A person swallows, and keeps the voice box up at the top of its way.
picture-effortful-swallow-shown = A person swallows hard, and squeezes with tongue and throat.

## Head and neck

picture-head-lift-sustained-shown = A person lying flat lifts only the head, looks at the toes, and stays like that; the shoulders stay down.
picture-head-lift-repeated-shown = A person lying flat lifts only the head, looks at the toes, and lays it back down; the shoulders stay down.
picture-chin-tuck-ball-shown = A person presses the chin down on a soft ball against the chest, and keeps pressing.
picture-chin-tuck-ball-repeated-shown = A person presses the chin down on a soft ball against the chest, then lets go.
picture-neck-turns-shown = A person turns the head to one side, then to the other; the shoulders stay where they are.
picture-neck-turns-left-shown = A person turns the head to the left; the shoulders stay where they are.
picture-neck-turns-middle-shown = A person looks straight ahead.
picture-neck-turns-right-shown = A person turns the head to the right; the shoulders stay where they are.
picture-neck-tilts-shown = A person tilts the head to one side, then to the other; the shoulders stay down.
picture-neck-tilts-left-shown = A person tilts the left ear towards the shoulder; the shoulders stay down.
picture-neck-tilts-middle-shown = A person holds the head upright and looks straight ahead.
picture-neck-tilts-right-shown = A person tilts the right ear towards the shoulder; the shoulders stay down.
picture-shoulder-rolls-shown = A person seen from the side rolls the shoulders up, back and down, with the arms hanging.

## Face, tongue and jaw

picture-lip-press-smile-shown = A person presses the lips together.
picture-lip-press-smile-smile-shown = A person gives a wide smile.
picture-cheek-puff-shown = A person with closed lips fills both cheeks with air.
picture-tongue-press-shown = A person with a closed mouth pushes the tongue up against the roof of the mouth, and keeps pushing.
picture-tongue-side-to-side-shown = A person with the mouth a little open moves the tip of the tongue from one corner of the mouth to the other.
picture-tongue-reach-shown = A person puts the tongue straight out.
picture-tongue-reach-up-shown = A person points the tongue up towards the nose.
picture-jaw-opening-shown = A person opens the mouth wide and keeps it open.

## Breathing and speech

picture-nasal-breathing-shown = A person with a closed mouth breathes in and out through the nose.
picture-nasal-breathing-in-shown = A person with a closed mouth breathes in through the nose.
picture-nasal-breathing-out-shown = A person with a closed mouth breathes out through the nose.
picture-pa-repetition-shown = A person says one syllable quickly and evenly, with the lips.
picture-ta-repetition-shown = A person says one syllable quickly and evenly, with the tip of the tongue.
picture-ka-repetition-shown = A person says one syllable quickly and evenly, with the back of the tongue.
picture-syllable-repetition-shown = A person says syllables quickly and evenly, one after another.
picture-word-questions-shown = A person thinks of the word that a clue asks for.
picture-category-naming-shown = A person names one thing after another: an apple, a banana, a pear.
picture-rest-shown = A person leans back in a chair and rests.

## Postures and getting up

picture-sitting-shown = A person sits upright on a firm chair, with both feet on the floor.
picture-standing-shown = A person stands upright behind a firm chair and holds on to its back.
picture-lying-shown = A person lies flat on the back, without a pillow.
picture-rise-side-shown = A person who lay flat has rolled onto one side, with a knee bent.
picture-rise-sit-shown = A person pushes up with one hand from lying to sitting, with both feet on the floor.
picture-rise-stand-shown = A person holds on to something firm and stands up slowly from a chair.

picture-tongue-against-spoon-shown = A person pushes the tongue forward against the back of a spoon.
picture-lips-around-spoon-shown = A person holds the handle of a spoon level between the lips.
picture-breath-out-resistance-shown = A person blows out hard through a small trainer held at the lips.
picture-voluntary-cough-shown = A person coughs once, hard and short.
