# What the set-up pages show. It is read, never heard; every key begins with page-.

page-skip = Skip to content
page-nav-label = Set-up pages
page-nav-start = Set-up
page-nav-microphone = Sound check
page-nav-calibration = Calibration
page-nav-routines = Routines
page-nav-cautions = Cautions
page-nav-enrolment = Own voice
page-nav-history = History
page-nav-progress = Progress
page-nav-sound = Kept sound
page-nav-caseload = Caseload

page-told-address = The set-up pages are open at this address, on this computer alone. Ctrl-C closes them.
page-trouble-title = That did not work
page-trouble-own = The page could not be made; this is a fault of the program. What was there before is as it was.
page-practising = A practice is under way. These pages can be used when it is over.
page-back-to-start = Back to the set-up
page-no-such-button = This page has no such button. Load it again.
page-yes = Yes
page-no = No
page-remove = Remove
page-break-off = Cancel
page-broken-off = Cancelled. Nothing was kept.
page-look-again = Check progress
page-whose = Whose
page-everybody = Everybody
page-figures = Figures
page-figure-none = not known
page-number-wrong = Type a number within these limits.
page-sure-missing = Tick the box first: this cannot be undone.
page-client-missing = Say whose it is.
page-no-model = There is no recognition model, so the household cannot be checked. Install one, or name its folder with --model.
page-can-say = You can say: { $words }
page-level-label = Loudness now
page-level-hint = The bar is the loudness now; the line in it is the room.
page-summary-title = { $n ->
    [one] One thing to put right
   *[other] { $n } things to put right
}
page-title-faults = To put right: { $title }
page-hint-limits = From { $from } to { $to }.
page-hint-default = Left empty: { $value }.
page-hint-optional = May be left empty.
page-hint-a-line-each = One on each line.
page-not-for = Not for, unless their own clinician says otherwise:
page-cautions = Look out for this:

# The first page

page-start-title = Set-up
page-start-lead = What is ready, and what is still missing, in order.
page-start-then = And then
page-start-then-one = To wait for a practice all day: start “tidecount attend”. It begins when somebody says so.
page-start-then-two = To begin one at once: start “tidecount practise” with the routine’s file.
page-standing-done = Done
page-standing-missing = Still missing
page-standing-optional = If you like
page-standing-again = Check again
page-start-mic = Try microphone and loudspeaker where the practice will be, and again whenever one of them was moved.
page-start-mic-works = Microphone and loudspeaker work.
page-start-mic-trouble = The last check found something to put right.
page-start-uncalibrated = Levels are relative. With a sound level meter they become decibels that can be compared.
page-start-calibrated = Calibrated on { $date }: { $device }.
page-start-calibration-void = A calibration no longer holds. Levels are relative until it is done again.
page-start-no-routine = There is no routine yet. Write one, or take a clinician’s package.
page-start-routine-faults = { $n } of { $of } routines have faults and cannot be practised.
page-start-routines = { $n ->
    [one] One routine is ready.
   *[other] { $n } routines are ready.
} { $persons ->
    [0] Nobody has been chosen for it yet; that is needed only for “attend”.
    [one] One person practises.
   *[other] { $persons } persons practise.
}
page-start-cautions-done = Nothing waits for a clinician’s agreement.
page-start-cautions-open = Exercises wait for a clinician’s agreement: { $names }. Until then they are left out or asked about aloud.
page-start-no-voice = Somebody who is often not understood can teach the tool their own way of saying the commands.
page-start-voice = Learnt: { $names }.
page-start-no-practice = No practice yet.
page-start-practices = { $n ->
    [one] One practice so far.
   *[other] { $n } practices so far.
}

# Microphone and loudspeaker

page-field-mic = Microphone
page-field-speaker = Loudspeaker
page-device-default = The computer’s own choice
page-device-is-default = { $name } (the computer’s own choice)
page-device-gone = This device is no longer there. Load the page again and choose another.
page-device-failed = The device could not be used: { $why }. If another program uses it, close that program and try again.
page-device-busy-here = Microphone or loudspeaker are in use by another of these pages. Wait until that is over, or break it off.
page-microphone-lead = Choose both, try the loudspeaker, then the microphone. It takes half a minute.
page-microphone-kept = The devices are open only while a try lasts. No sound is kept.
page-speaker-title = Loudspeaker
page-speaker-lead = You hear a tone and a sentence.
page-speaker-play = Play a tone and a sentence
page-speaker-playing = Listen: a tone, and then a sentence.
page-speaker-heard = Did you hear it well?
page-speaker-well = Good. Now try the microphone.
page-speaker-help = Turn the loudspeaker up, see that it is switched on and plugged in, or choose another one above. Then play it again.
page-spoken-test = This is how I sound. If you hear me well, all is in order.
page-listen-title = Microphone
page-listen-lead = First five seconds of quiet, then five seconds in which somebody speaks as in a practice, then the tool says a sentence.
page-listen-start = Start the check
page-listen-room = Quiet, please. The room is listened to.
page-listen-speech = Now speak, as loudly as in a practice: say the days of the week.
page-listen-own = Thank you. Now the tool speaks; stay quiet.
page-mic-works = It works
page-mic-head-dead = Nothing was heard
page-mic-head-no-speech = Nobody was heard to speak
page-mic-head-trouble = Something to put right
page-mic-dead = The microphone gives nothing but silence. Is it muted, switched off, or the wrong one?
page-mic-no-speech = No voice was heard. Come nearer, speak for the whole five seconds, or choose another microphone.
page-mic-clips = Too loud: the sound is cut off at its peaks. Turn the microphone’s level down, or sit farther away.
page-mic-room-loud = The room is too loud for a soft voice. Close the window, switch off what hums or plays, or turn the microphone’s level down.
page-mic-too-soft = The voice is too soft: it hardly stands out of the room. Bring the microphone nearer, or turn its level up.
page-mic-changes-volume = The microphone changes its own volume, so levels cannot be compared. Switch off “automatic gain” in the computer’s sound settings.
page-mic-own-voice = The tool’s own voice comes back too loud. Turn the loudspeaker down, or move it away from the microphone.
page-mic-lost = Some sound was lost. Close other programs, or unplug the microphone and plug it in again.
page-figure-room = Room, re full scale
page-figure-voice = Voice, re full scale
page-figure-own = The tool’s own voice in the microphone, re full scale
page-figure-clipped = Cut off at the peaks
page-figure-lost = Lost sound

# Calibration

page-calibration-lead = A calibrated microphone gives decibels that can be compared from week to week. Without it a practice works all the same.
page-calibration-kept = Calibrated
page-calibration-none = No microphone is calibrated; levels are relative.
page-calibration-how = { $date }, by { $method }: { $level } at { $at } cm.
page-calibration-scale = Microphone at { $distance } cm; full scale is { $full } dB SPL at 30 cm.
page-calibration-void = It no longer holds: { $why }
page-calibration-forget = Forget
page-calibration-forgotten = The calibration is forgotten.
page-calibration-new = Calibrate
page-calibration-step-place = Put the microphone where it will stay in practice. Switch off automatic gain and noise reduction.
page-calibration-step-meter = Put the sound level meter beside it, set to A and Slow.
page-calibration-step-listen = Keep quiet for { $quiet } seconds; then hold one steady “ah” for { $sound } seconds and read the number meanwhile.
page-calibration-listen = Start listening
page-calibration-listening = Calibration
page-calibration-quiet = Quiet, please.
page-calibration-voice = Now one steady “ah”. Read the number meanwhile.
page-calibration-source = Now switch the source on.
page-calibration-heard = Heard { $length } s of sound at { $level } dB({ $weighting }) re full scale, { $over } dB over the room; it wandered by { $spread } dB.
page-calibration-keep = Keep the calibration
page-calibration-drop = Drop it
page-calibration-done = Calibrated and kept
page-field-method = What tells the level
page-method-choose-meter = A sound level meter
page-method-choose-source = A source of known level, such as an acoustic calibrator
page-method-choose-phone = A phone’s sound level app: levels stay marked “rough”
page-method-meter = a sound level meter
page-method-source = a source of known level
page-method-phone = a phone’s number (rough)
page-field-distance_cm = From the mouth to the microphone, cm
page-hint-distance = As it will stay in practice. Left empty: 30.
page-field-reference_cm = From the mouth to the meter or phone, cm
page-hint-reference = Left empty: as far as the microphone.
page-field-weighting = Frequency weighting of the meter
page-hint-weighting = The letter behind dB on the meter.
page-weighting-usual = Usual: A, for a source Z
page-field-level_db = Level, dB, if it is known already
page-hint-level-before = Left empty: asked after listening.
page-field-level-read = What was shown, dB({ $weighting })
page-field-level-source = The level of the source, dB({ $weighting })
page-level-missing = Type the number that was shown.

# Own voice

page-enrolment-lead = The tool says each command, and you say it after it, three times. It takes about ten minutes and can be broken off at any word.
page-enrolment-consent = It asks aloud first whether it may. No sound is kept, only figures about each word; they stay on this computer and can be deleted below.
page-enrolment-begin = Begin
page-enrolment-starting = One moment: the tool gets ready to listen.
page-enrolment-learnt = Learnt just now
page-enrolment-nothing = Nothing was learnt, and nothing was kept.
page-enrolment-kept = What is kept
page-enrolment-none = Nothing is kept of anybody’s voice.
page-enrolment-word = { $takes ->
    [one] said once
   *[other] said { $takes } times
}, { $day }, { $bytes } bytes of figures
page-enrolment-sure = Delete all that is kept of { $name }’s voice. This cannot be undone.
page-enrolment-forget = Delete
page-enrolment-forgotten = Deleted. Nothing of it is left.
page-field-whose = Whose voice
page-field-client-name = Whose voice
page-hint-client-name = A short name, the same as in the routine. No real name is needed.

# Cautions

page-cautions-lead = Some exercises are done only where the client’s own clinician has agreed. Read what is said about each before you tick it.
page-cautions-nobody = There is nobody here yet. Write a routine with a client’s name, or choose who practises it.
page-cautions-none = No routine of { $name } needs a clinician’s agreement.
page-cautions-open = { $n ->
    [0] nothing open
    [one] one exercise waits
   *[other] { $n } exercises wait
}
page-cautions-routines = In: { $names }.
page-cautions-no-routine = In no routine of this client now.
page-cautions-box = A clinician has agreed to this for { $name }.
page-cautions-keep = Keep the agreement
page-cautions-withdraw = Withdraw
page-cautions-agreed = The agreement is kept. The tool asks no more, and still says what matters.
page-cautions-withdrawn = Withdrawn. The exercise is left out until somebody agrees again.
page-cautions-tick = Tick the exercises to which a clinician has agreed.
page-field-agreed-by = Who has agreed
page-hint-agreed-by = The clinician, in words by which you will know them again.
page-agreed-by-missing = Say who has agreed, in at most 80 characters.
page-agreed-aloud = Agreed aloud in a practice on { $when }.
page-agreed-page = Agreed by { $by }, kept by page on { $when }.
page-agreed-package = Agreed in the clinician’s package of { $when } (key { $by }).
page-by-page = by page

# Routines

page-routines-lead = Each routine is one file that can also be changed with any editor.
page-routines-none = There is no routine here yet.
page-routines-about = { $steps ->
    [one] One exercise
   *[other] { $steps } exercises
}, about { $minutes ->
    [one] one minute
   *[other] { $minutes } minutes
}
page-routines-faults = { $n ->
    [one] One fault: it cannot be practised as it is.
   *[other] { $n } faults: it cannot be practised as it is.
}
page-routines-who = Practised by { $names }
page-routines-new = A new routine
page-routines-begin = Begin
page-routines-empty = Empty
page-routines-copy-of = As a copy of { $file }
page-routines-folder = They lie in { $folder }
page-field-file-name = Name of the file
page-hint-file-name = Letters, digits, spaces and hyphens, such as “evening”.
page-field-like = Begin with

page-file-none = There is no routine file { $file } here.
page-file-bad-name = Give the file a name of letters, digits, spaces and hyphens, such as “evening”.
page-file-exists = There is a file { $file } already. Choose another name.
page-file-changed = The file { $file } was changed by somebody else meanwhile, so nothing was written. Your changes are still on this page: look at the file as it is now, in another window, and then make them anew.
page-file-not-text = The file { $file } is no UTF-8 text. Save it as UTF-8 with an editor.
page-file-too-large = The file { $file } is too large for a routine.
page-file-system = The file { $file } could not be used: { $why }

page-no-such-file = There is no such file here.
page-file-report-pdf = Report of { $name } for the clinician, to print (PDF)
page-file-report-html = Report of { $name } for a browser (HTML)
page-file-csv = Every trial of { $name } as a table (CSV)
page-file-csv-all = Every trial as a table (CSV)
page-file-json = Every entry of { $name }’s practices (JSON Lines)
page-file-json-all = Every entry of all practices (JSON Lines)
page-file-fhir = Practices of { $name } for a health record (HL7 FHIR)

page-routine-back = All routines
page-routine-edit = Change it
page-routine-print = Print a handout
page-routine-saved = Saved: { $file }. What stood there before is kept beside it; its name ends in “before”.
page-routine-chosen = Chosen. “tidecount attend” offers it from its next start on.
page-routine-unchosen = Taken from the list.
page-routine-raw = The file
page-routine-too-large = This file is too large for a form. Change it with an editor.
page-routine-who = Who practises it
page-routine-who-does = { $name } practises it.
page-routine-who-not = { $name } does not practise it.
page-routine-choose = Choose it for { $name }
page-routine-unchoose = Take it from { $name }
page-routine-choose-new = Choose it for this person
page-field-person = Somebody else
page-hint-person = A name as it is said, such as “grandpa”. No real name is needed.
page-person-missing = Type a name.
page-person-last = Somebody must practise something: choose another routine first.
page-household-faults = The household would not pass its check, and was left as it was:

page-routine-new-title = A new routine: { $file }
page-routine-edit-title = Change { $file }
page-routine-edit-lead = Nothing is written before “Save”. Fields left empty take the usual value.
page-routine-save = Save
page-routine-check = Check only
page-routine-as-text = Change the file’s text instead
page-routine-as-form = Back to the form
page-routine-well = All is well. It is not saved yet.
page-routine-not-yet-saved = Changed here, and not saved yet.
page-routine-text-title = The text of { $file }
page-routine-text-lead = For whoever knows the file’s form. It is checked as the form is.
page-field-text = The file
page-hint-text = Each setting on a line of its own; comments begin with #.
page-routine-general = In general
page-routine-plan = When
page-routine-plan-hint = Times at which it is meant to be done. Without any it is done whenever the client likes.
page-routine-plan-add = Add a time
page-routine-plan-number = Time { $n }
page-routine-patience = When nobody answers
page-routine-steps = Exercises
page-routine-no-steps = There is no exercise yet. Add one below.
page-routine-adding = Add an exercise
page-routine-add-step = Add
page-routine-doses = Doses that are published or usual
page-routine-disagree = Where sources disagree
page-routine-whys = Why these limits
page-dose-take = Take this dose
page-dose-taken-as = Taken as: { $dose }
page-dose-no-number = It gives no number to take over.
page-dose-beyond = It cannot be taken: { $why }
page-step-earlier = Earlier
page-step-later = Later
page-step-remove = Take out
page-add-phase = Add a phase
page-add-question = Add a question
page-add-stage = Add a stage
page-grow = Let the dose grow over the weeks
page-phase-number = Phase { $n }
page-question-number = Question { $n }
page-stage-number = Stage { $n }
page-ramp-when = When it grows
page-ramp-remove = Do not let it grow
page-packs-choose = Choose word packs

page-field-title = Title
page-hint-title = What it is called aloud, such as “Evening routine”.
page-field-language = Language
page-field-client = Client
page-hint-client = Whose routine it is: a short name, no real one is needed. May be left empty.
page-field-cue_words = Cue words before a loud trial
page-hint-cue_words = The clinician’s own, such as “big voice”. May be left empty.
page-field-feedback_every = The result is told after so many trials (0: only when asked)
page-field-loud_limit_s = Loud holds of one practice together, at most, seconds
page-field-no_answer = When nobody answers
page-field-ask_again_after_s = Asks again after, seconds
page-field-asks = Asks again so many times
page-field-give_up_after_s = Ends after silence of, seconds
page-field-plan = When
page-field-at = At
page-hint-at = Hours and minutes, such as 18:30.
page-field-days = Days
page-field-step = Exercises
page-field-exercise = Exercise
page-field-add = Exercise
page-field-cautions_acknowledged = The cautions above were read, and the client’s clinician agrees
page-hint-acknowledge = Without this tick the routine cannot be practised.
page-field-sets = Sets
page-field-repetitions = Repetitions
page-field-rest_s = Rest between repetitions, seconds
page-field-set_rest_s = Rest between sets, seconds
page-field-target_s = Goal, seconds
page-field-max_break_s = Breaks up to this long do not end a hold, seconds
page-field-min_hold_s = Shorter voicing is no trial, seconds
page-field-cues_at_s = Brief cues during the hold, at seconds
page-hint-cues = Numbers with commas, such as 5, 10. May be left empty.
page-field-phases = Phases
page-field-phase-name = What
page-field-phase-length = How long, seconds
page-field-phase_s = How long, seconds
page-field-name = Name
page-field-count_every_s = Counted aloud each, seconds
page-field-count_last_s = Each second is counted in the last, seconds
page-field-in = Counts in
page-field-out = Counts out
page-field-beat_s = From count to count, seconds
page-field-next_cue_after_s = The next cue comes by itself after, seconds
page-field-sip_every = A sip of water is offered after so many
page-field-sips_enabled_by_clinician = The client’s clinician has enabled sips of water
page-field-phrases = Phrases
page-hint-phrases = One on each line; they are shown large and read aloud.
page-field-syllables = Syllables
page-field-length_s = How long, seconds
page-field-questions = Questions
page-field-question-clue = What is asked
page-field-question-answers = Answers that count
page-field-question-near = Answers that come near
page-field-question-hint = Hint
page-field-question-fact = Told after the answer
page-field-packs = Word packs
page-field-packs-other = Other word packs
page-hint-packs-other = File names beside the routine, with commas. May be left empty.
page-field-think_s = Time to think, seconds
page-field-ramp = A dose that grows
page-field-ramp-days = On so many days before the next stage
page-field-stages = Stages
page-field-hold_s = Held for, seconds
page-pack-categories = Name as many as you can
page-pack-definitions = What is it?
page-pack-double-meanings = One word, two meanings
page-pack-odd-one-out = Which one does not belong?
page-pack-opposites = Opposites
page-pack-pairs = What goes with it?
page-pack-sayings = The end of a saying

page-remedy-acknowledge = Read the cautions; if the client’s clinician agrees, tick the box.
page-remedy-sips = If the client’s clinician has enabled sips, tick the box; otherwise leave the field empty.
page-remedy-sips-client = Fill in the client above: a clinician enables sips for one client.
page-remedy-questions = Tick a word pack, or add a question.
page-remedy-phrases = Write at least one phrase.
page-remedy-packs = Tick at least one word pack.
page-remedy-title = Fill in the title.
page-remedy-steps = Add at least one exercise.
page-remedy-type = Type a number, or leave the field empty.

# History

page-history-none = No practice yet.
page-history-table = Practices, newest first
page-history-pages = More practices
page-history-newer = Newer
page-history-older = Older
page-history-range = Practices { $from } to { $to } of { $of }, newest first
page-history-when = When
page-history-who = Who
page-history-routine = Routine
page-history-done = Done
page-history-length = Length
page-history-best = Longest holds
page-history-ended = Ended
page-history-steps = { $done } of { $of } exercises
page-history-minutes = { $n } min
page-history-not-ended = not ended
page-history-exports = As a file
page-source-replay = from a recording
page-source-rehearsal = rehearsed
page-end-completed = to its end
page-end-finished = ended by the client
page-end-interrupted = broken off
page-end-abandoned = not gone on with
page-end-no-answer = nobody answered
page-practice-back = All practices
page-practice-none = There is no practice with this number.
page-practice-what = What happened
page-practice-part = Part { $n }, from { $when }
page-practice-sounds = Kept sound

page-fact-place = { $name }{ $sets ->
    [one] { $of ->
        [one] { "" }
       *[other] , { $n } of { $of }
    }
   *[other] , set { $set } of { $sets }, { $n } of { $of }
}
page-fact-begun = “{ $routine }” was begun, with { $n ->
    [one] one exercise
   *[other] { $n } exercises
}.
page-fact-resumed = Gone on with after an interruption.
page-fact-agreed = Yes: a clinician has agreed to { $names }.
page-fact-not-agreed = No agreement to { $names }.
page-fact-left-out = Left out: { $reason }.
page-fact-step = { $name } begins.
page-fact-stage = Stage { $n } of a dose that grows.
page-fact-hold = Held { $s } s.
page-fact-hold-figures = { $level }, { $hz } Hz, pitch range { $span } semitones.
page-fact-distance = Level for { $cm } cm from the mouth.
page-fact-distance-unknown = Nobody said how far the microphone stood.
page-fact-clipped = Cut off at the peaks for { $s } s: the true level is higher.
page-fact-auto-gain = The microphone changed its own volume: the level compares with nothing.
page-fact-breaks = { $n ->
    [one] One break in the voice was bridged.
   *[other] { $n } breaks in the voice were bridged.
}
page-fact-masked = The tool’s own voice lay over { $s } s of it.
page-fact-cut-off = Cut off by a command: it counts in no figure.
page-fact-posture = Held { $s } of { $of } s.
page-fact-round = One round in { $s } s, { $beat } s from count to count.
page-fact-repetition = Done in { $s } s, ended by { $by }.
page-fact-phrase = “{ $phrase }” in { $s } s.
page-fact-level = { $level }, { $hz } Hz.
page-fact-syllables = { $n } syllables in { $s } s: { $rate } per second, uneven by { $irregularity } %.
page-fact-question-right = “{ $clue }” Answered: { $answer }.
page-fact-question-other = “{ $clue }” Another answer: { $answer }.
page-fact-question-none = “{ $clue }” No answer.
page-fact-named = { $n } named of { $category } in { $s } s: { $words }
page-fact-rested = Rested { $s } s.
page-fact-fall-length = The holds grew shorter than usual for this client: { $from } s, then { $to } s.
page-fact-fall-level = The voice grew softer than usual for this client: { $from } dB, then { $to } dB.
page-fact-rest-taken = A rest was offered and taken.
page-fact-rest-declined = A rest was offered and not wanted.
page-fact-loud-limit = Loud holds reached { $s } of { $limit } s; the rest was left for another day.
page-fact-command = “{ $text }” was heard: { $command }.
page-fact-no-answer = Nobody answered, though asked { $n ->
    [one] once more
   *[other] { $n } times more
}.
page-fact-step-done = Done: { $done } of { $of }.
page-fact-step-ended = Ended early ({ $reason }): { $done } of { $of }.
page-fact-safety = The client said that something was wrong: { $reason }.
page-fact-recogniser = The recogniser was started again; { $s } s went unheard.
page-fact-microphone = { $text }
page-fact-room-loud = The room became too loud to measure in ({ $db } dB re full scale).
page-fact-room-quiet = The room is quiet enough again.
page-fact-in-noise = That hold stood only { $db } dB over the room: it counts in no figure.
page-fact-sound-lost = { $s } s of sound were lost.
page-fact-ended = The end ({ $reason }): { $done } of { $of } exercises.
page-fact-other = Something else was kept: { $kind }.
page-mark-left-out = Left out
page-mark-look = Look at this
page-mark-discarded = Not counted
page-mark-ended = Ended early
page-mark-safety = Safety
page-trouble-loudspeaker-too-loud = The tool’s own voice drowned the client’s.
page-trouble-room-too-loud = The room was too loud to measure in.
page-trouble-room-talks = Others talked, or a television did.
page-trouble-microphone-clips = The microphone’s loudest parts were cut off.
page-trouble-microphone-gain = The microphone changed its own volume.

# Progress

page-progress-nobody = Choose whose progress to look at. It is shown once there are practices.
page-progress-lengths = How far back
page-progress-weeks = { $n } weeks
page-progress-all = All
page-progress-window = From { $from } to { $to }
page-progress-files = Reports and files
page-progress-adherence = Done of what was prescribed
page-progress-practices = { $n ->
    [0] No practice in this time.
    [one] One practice in this time.
   *[other] { $n } practices in this time.
}
page-progress-done = { $done } of { $of } repetitions were done: { $percent } %.
page-progress-nothing-prescribed = Nothing was prescribed in this time.
page-progress-extra = { $n ->
    [one] One repetition more than prescribed.
   *[other] { $n } repetitions more than prescribed.
}
page-progress-no-plan = Without planned days nobody can tell what was not begun.
page-progress-calendar = Calendar, newest week first
page-progress-earlier = Earlier weeks
page-progress-week = Week from
page-progress-share = Done
page-progress-day = { $done } of { $of } repetitions
page-short-monday = Mon
page-short-tuesday = Tue
page-short-wednesday = Wed
page-short-thursday = Thu
page-short-friday = Fri
page-short-saturday = Sat
page-short-sunday = Sun
page-day-outside = not yet
page-day-free = nothing planned
page-day-all = all done
page-day-part = part done
page-day-nothing = not done
page-day-extra = done without a plan
page-progress-none = Nothing was measured in this time.
page-progress-table = The figures as a table
page-progress-table-of = Table: { $title }
page-progress-stops = Safety stops
page-progress-left-out = Left out
page-progress-programme = What changed in the programme
page-progress-foot = A practice aid. It makes no diagnosis.
page-progress-baseline = Baseline: { $median }, trials from { $low } to { $high }, over { $days } days from { $from } on.
page-progress-no-baseline = No baseline yet: it needs trials on three days.
page-progress-week-median = Median of the week from { $monday }: { $median }, from { $trials ->
    [one] one trial
   *[other] { $trials } trials
}.
page-progress-slope = Trend: { $slope } a week, with 95 % between { $low } and { $high }.
page-progress-mdc = A change of more than { $mdc } exceeds this person’s own scatter.
page-progress-within-scatter = The change since the baseline, { $change }, lies within that scatter.
page-progress-higher = The latest days lie { $change } above the baseline, beyond that scatter.
page-progress-lower = The latest days lie { $change } below the baseline, beyond that scatter.
page-progress-break = New series from { $day } on: { $why }.
page-progress-discarded = { $n ->
    [one] One value is
   *[other] { $n } values are
} in no figure: { $why }.
page-progress-conditions = Latest conditions: weighting { $weighting }, distance { $distance }, { $scale }, microphone { $microphone }.
page-progress-conditions-mic = Latest microphone: { $microphone }.
page-scale-none = not calibrated, relative
page-scale-void = calibration no longer valid, relative
page-scale-meter = calibrated with a sound level meter
page-scale-source = calibrated with a known source
page-scale-rough = rough, by a phone
page-column-day = Day
page-column-trials = Trials
page-column-median = Median
page-column-low = Lowest
page-column-high = Highest
page-measure-hold-s = hold time
page-measure-level-db = level of holds
page-measure-f0-median-hz = pitch of holds
page-measure-f0-span-st = pitch range
page-measure-f0-sd-st = pitch variation within holds
page-measure-level-slope-db-per-s = fading of holds
page-measure-phrase-level-db = level of phrases
page-measure-phrase-f0-hz = pitch of phrases
page-measure-syllable-rate-hz = syllables per second
page-measure-syllable-irregularity-pct = unevenness of syllables
page-measure-named-count = words named
page-programme-begun = begun, with { $n ->
    [one] one exercise
   *[other] { $n } exercises
}
page-programme-replaced = replaced by { $by }
page-programme-added = { $name } added, { $dose }
page-programme-removed = { $name } taken out
page-programme-dose = { $name }: { $field } from { $from } to { $to }
page-programme-stage = { $name } at stage { $n }, { $dose }
page-programme-order = another order
page-programme-plan = when: { $from }, now { $to }
page-programme-setting = { $field } from { $from } to { $to }

# Kept sound

page-sound-lead = No sound is kept unless the client wants it: it is switched on here, and the client must also say yes aloud at the next practice. It stays on this computer and is deleted by itself.
page-sound-nobody = Choose whose sound. It is asked only of somebody who is known here.
page-sound-never = Off. No sound is kept.
page-sound-asked = Wanted since { $when }, for { $days } days each. The client will be asked aloud at the next practice; until then no sound is kept.
page-sound-refused = Off: the client said no on { $when }.
page-sound-given = On: the client said yes on { $when }. Each sound is kept for { $days } days.
page-sound-withdrawn = Off since { $when }.
page-sound-on = Ask to keep sound
page-sound-change = Change the number of days
page-sound-off = Switch it off
page-sound-stored = What is stored
page-sound-none = No sound is stored.
page-sound-one = Practice { $practice }, { $when }, { $minutes } min, deleted after { $until }
page-sound-sure = Delete all stored sound of this client. This cannot be undone.
page-sound-delete = Delete
page-sound-told-on = Kept. The client is asked aloud at the next practice.
page-sound-told-off = Off. No more sound is kept; what is stored is deleted at its time, or below at once.
page-sound-told-deleted = Deleted.
page-field-sound-days = Kept for so many days

# The caseload of a clinic
page-caseload-lead = { $n ->
    [one] One of { $of } clients needs
   *[other] { $n } of { $of } clients need
  } attention on { $day }.
page-caseload-choices = Which clients
page-caseload-needing = Needs attention
page-caseload-range = { $from } to { $to } of { $of }, the gravest first
page-caseload-nobody = Nobody here, as far as the results tell.
page-caseload-nothing = Nothing to tell, as far as is known.
page-caseload-desk = of { $desk }
page-caseload-pages = More clients
page-caseload-before = Before
page-caseload-behind = Next
page-caseload-back = Back to the caseload
page-caseload-none = There is no clinic database here. Take in results with `tidecount clinic import`, then open the pages again.
page-caseload-no-client = There is no client with this number.
page-caseload-foot = What is told rests on the results that have come. What it means is for the clinician to say.
page-caseload-foot-sheet = All figures compare this person with this person alone. What they mean is for the clinician to say.
page-caseload-why = Why attention
page-caseload-note = Note
page-caseload-note-hint = A word to yourself and the other desks; may stay empty. What is told until now is not told again.
page-caseload-note-long = Keep it to { $n } characters.
page-caseload-news = New results have come since this page was made. They stand here now: look again.
page-caseload-seen = I have looked
page-caseload-told-seen = Noted that you looked.
page-caseload-events = Told by the practices
page-caseload-event = What
page-caseload-event-state = State
page-caseload-event-seen = seen
page-caseload-event-new = new
page-caseload-measures = Measures
page-caseload-measures-hint = First days and latest days, and the smallest change beyond this person’s own scatter (95 %).
page-caseload-measure = Exercise and measure
page-caseload-baseline = First
page-caseload-latest = Latest
page-caseload-smallest = Smallest change
page-caseload-verdict = Verdict
page-caseload-conditions = Rests on
page-caseload-trials = { $n ->
    [one] one trial
   *[other] { $n } trials
  }
page-caseload-days = Adherence by day
page-caseload-days-hint = Repetitions done of those prescribed on planned days. What is more than prescribed is not counted.
page-caseload-days-begun = Adherence of the practices that were begun
page-caseload-days-begun-hint = No days were agreed, so days without practice cannot be counted.
page-caseload-share = Share
page-caseload-reps = Repetitions
page-caseload-practices = Practices
page-caseload-discarded = in no figure
page-caseload-sessions = Practices, newest first
page-caseload-looks = Who looked when
page-verdict-unknown = too little to tell
page-verdict-unchanged = within the scatter
page-verdict-fallen = fallen
page-verdict-risen = risen
page-reason-safety = Safety
page-reason-no-practice = No practice
page-reason-no-results = No results
page-reason-adherence = Adherence
page-reason-decline = Decline
page-reason-left-out = Left out
page-reason-tired = Tired
page-reason-programme = Programme
page-reason-microphone = Microphone
page-reason-clock = Clock
