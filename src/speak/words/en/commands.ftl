# What can be said to tidecount. The first wording is the one that is shown and asked for; wordings are parted by |.
#
# Rules, tested in words/tests.rs:
# - every word is in the lexicon of the built-in recognition model (models/en/graph/words.txt);
# - no wording stands for two commands, and none begins another command's: a command is acted on before the pause after it;
# - "go" and "on" never stand alone; they are too near to "no" and "done".
#
# Near pairs that a state should not listen for together, after the model's own tests: "no" with "go on" and "go back",
# "done" with "go on" and "carry on". Short single words are missed more often by the model than phrases of two words,
# therefore each command has one of those.

cmd-ready = ready | i'm ready | i am ready
cmd-done = done | all done | i'm done | i am done
cmd-yes = yes | yes please | yes i do | yes i have
cmd-no = no | no thanks | no thank you | not yet
# "stop it" is left out: over our own voice "set it" and "until it" have passed for it.
cmd-stop = stop | stop now | please stop
cmd-pause = pause | pause please | wait please | wait a moment
cmd-go-on = go on | continue | carry on | continue please
cmd-again = again | once more | one more time | repeat that
cmd-skip = skip | skip this | skip it | next | next exercise
cmd-go-back = go back | go back one | previous exercise
cmd-how-long = how long | how long was that | how many seconds
cmd-help = help | help me | i need help
cmd-slower = slower | slow down | slower please | a little slower
cmd-faster = faster | faster please | a little faster | too slow
# Not "i can't hear you": it begins like "i can't breathe", and took it away in a room with echo.
cmd-louder = louder | louder please | a little louder | speak up please
cmd-softer = softer | softer please | a little softer | too loud
cmd-rest = rest | i need a rest | take a break | i need a break
cmd-dry = my mouth is dry | my throat is dry | i'm dry | some water please
cmd-finish = finish | finish for today | end the session | enough for today
cmd-dizzy = i'm dizzy | i feel dizzy | i am dizzy | i feel faint | i'm light headed | i feel light headed | my head is spinning
# What a person in trouble says, heard in every state and over our own voice.
cmd-chest-pain = chest pain | i have chest pain | pain in my chest | my chest hurts | my chest is tight
cmd-cant-breathe = i can't breathe | i cannot breathe | can't breathe | i can't get any air | i can't get my breath | i can't catch my breath | can't get my breath
cmd-choking = i'm choking | i am choking | choking | it went down the wrong way | something went down the wrong way
cmd-feel-sick = i feel sick | i'm feeling sick | i feel ill | i'm going to be sick
# Not "i feel fine": too near to "i feel faint", and it would end an emergency.
cmd-all-right = i'm fine | i'm all right | i'm alright | i'm okay | i feel better
cmd-not-sure = not sure | i'm not sure | i am not sure
cmd-why = tell me why | why this one | what is it for
cmd-how-did = how did i do | how am i doing
cmd-hint = a hint please | give me a hint | i don't know
cmd-hurts = it hurts | that hurts | this hurts | i have pain

# What people say that sounds like one of these and is none of them. It is recognised, so that it is not taken for a command.
near-misses = i'm busy | i feel busy | i'm joking | i'm talking | i'm cooking | i'm looking | i feel fit | i feel fine | i feel the same | i have paint | i can't read it

# Answers to the short questions at the end, listened for beside a few commands. Not "none" for zero: it is too near to "nine".
answer-0 = zero | nothing at all
answer-1 = one
answer-2 = two
answer-3 = three
answer-4 = four
answer-5 = five
answer-6 = six
answer-7 = seven
answer-8 = eight
answer-9 = nine
answer-10 = ten
answer-not-well = not well | i wasn't well | i was ill
answer-too-tired = too tired | i was too tired | i was tired
answer-no-time = no time | i had no time | i was busy
answer-forgot = i forgot | forgot | i forgot it
answer-something-else = something else | another reason

# In a class many people talk, so only wordings of two words and more count there. Where a command has none that a clinician
# would say to a class, it is given here.
class-cmd-ready = we are ready | everyone ready | here we go
class-cmd-go-on = go on | carry on | continue please
class-cmd-rest = everyone rest | take a break
class-cmd-again = once more | one more time
class-cmd-skip = next exercise | skip this
class-cmd-hurts = it hurts | that hurts
# In a roll call alone, where one person after another is called. "Here" by itself is said too often.
class-cmd-yes = present | i am here | i'm here
class-cmd-no = not here | not here today | not today
class-cmd-not-sure = next person | next one
# Whoever has not been called yet, or was passed over: a part of any sentence would count otherwise.
class-name-here = { $name } is here
class-name-not-here = { $name } is not here | { $name } isn't here
class-number-here = number { SPOKEN($n) } is here
class-number-not-here = number { SPOKEN($n) } is not here | number { SPOKEN($n) } isn't here
