# What the set-up pages show. It is read, never heard; every key begins with page-.

page-skip = Skip to content
page-nav-label = Pages
page-nav-today = Today
page-nav-results = Results
page-nav-setup = Set-up
page-nav-glance = At a glance
page-nav-in-order = In order
page-nav-microphone = Sound check
page-nav-calibration = Calibration
page-nav-routines = Routines
page-nav-cautions = Cautions
page-nav-enrolment = Your voice
page-nav-history = History
page-nav-progress = Progress
page-nav-sound = Recordings
page-nav-caseload = Caseload

page-told-address = The pages are open at this address, on this computer only. Ctrl-C closes them.
page-trouble-title = That did not work
page-trouble-own = This page could not be made because of a fault in the program. Nothing was changed. Load the page again.
page-practising-title = A practice is running
page-practising = You can use these pages when it is over.
page-practising-look = Look at the practice
page-back-to-today = Back to today
page-no-such-button = This page has no such button. Reload the page.
page-yes = Yes
page-no = No
page-remove = Remove
page-break-off = Cancel
page-broken-off = Cancelled. Nothing was kept.
page-look-again = Check progress
page-whose = Person
page-everybody = Everyone
page-figures = Figures
page-figure-none = not known
page-number-wrong = Type a number within these limits.
page-sure-missing = Tick the box first: this cannot be undone.
page-client-missing = Say who it is for.
page-no-model = There is no recognition model, so the household can’t be checked. Install one, or name its folder with --model.
page-can-say = You can say: { $words }
page-level-label = Loudness now
page-level-hint = The bar shows the loudness now. The line in it is the background level of the room.
page-summary-title = { $n ->
    [one] One thing to fix
   *[other] { $n } things to fix
}
page-title-faults = To fix: { $title }
page-hint-limits = From { $from } to { $to }.
page-hint-default = If left empty: { $value }.
page-hint-optional = You can leave this empty.
page-hint-a-line-each = One per line.
page-not-for = Not for these people, unless their own clinician says otherwise:
page-cautions = Watch for this:

# Today

page-start = Start
page-start-for = Start for { $name }
page-start-asked = A practice is about to begin. Wait a moment.
page-start-not-chosen = Nobody has been chosen for this routine. Choose someone under “Routines”, then open “tidecount attend” again.
page-start-unanswered = The practice didn’t begin. Another one may still be ending: try again in a moment.
page-today-for = For { $name }
page-today-planned = Planned today at { $at }.
page-today-next = Not planned today. Next: { $day } at { $at }.
page-today-any-time = No time is planned: whenever you like.
page-today-done = Practised today at { $at }: { $done } of { $of } exercises.
page-today-others = Other routines here
page-today-no-routine = There is no routine to practise yet.
page-today-write = Write a routine
page-today-hindrances = What stands in the way
page-today-no-hindrance = Nothing stands in the way.
page-today-how = A practice starts at this computer’s microphone, and its page opens here.
page-today-how-else = To start from this page, open it with “tidecount pages”, or with “tidecount attend --screen” while nobody practises.
page-today-over = The practice is over. Its results are under “Results”.

# Results at a glance

page-results-lead = What was done in the last four weeks.
page-results-all-of = All practices of { $name }
page-results-latest = Latest practices

# Set-up in order

page-start-lead = What is ready, and what is still missing, in order.
page-start-then-one = When everything is ready, “tidecount attend” waits all day and begins a practice when someone asks. You can also start one under “Today”.
page-standing-done = Done
page-standing-missing = Still missing
page-standing-optional = Optional
page-standing-again = Check again
page-start-mic = Try the microphone and loudspeaker where the practice will be. Try them again whenever you move one.
page-start-mic-works = The microphone and loudspeaker work.
page-start-mic-trouble = The last check found something to fix.
page-start-uncalibrated = Levels are relative. With a sound level meter, they become decibels you can compare.
page-start-calibrated = Calibrated on { $date }: { $device }.
page-start-calibration-void = A calibration is no longer valid. Levels are relative until you calibrate again.
page-start-no-routine = There is no routine yet. Write one, or import a clinician’s package.
page-start-routine-faults = { $n } of { $of } routines have faults and can’t be practised.
page-start-routines = { $n ->
    [one] One routine is ready.
   *[other] { $n } routines are ready.
}
page-start-nobody = Nobody has been chosen to practise yet. You only need that for “attend”.
page-start-cautions-done = Nothing is waiting for a clinician’s agreement.
page-start-cautions-open = Some exercises are waiting for a clinician’s agreement, for { $names }. Until then they are left out or asked about aloud.
page-start-no-voice = If someone is often misheard, they can teach the tool how they say the commands.
page-start-voice = Learnt: { $names }.
page-start-no-sound = No recordings are kept. Switch them on here if the client wants them.
page-start-sound = Recordings are kept, for { $names }.

# Microphone and loudspeaker

page-field-mic = Microphone
page-field-speaker = Loudspeaker
page-device-default = The computer’s default
page-device-is-default = { $name } (the computer’s default)
page-device-gone = This device is no longer connected. Reload the page and choose another.
page-device-failed = The device could not be used: { $why }. If another program is using it, close that program and try again.
page-device-busy-here = Another of these pages is using the microphone or loudspeaker. Wait until it has finished, or cancel it.
page-microphone-lead = Choose both, try the loudspeaker, then try the microphone. It takes half a minute.
page-microphone-kept = The devices are open only while you try them. No sound is kept.
page-speaker-title = Loudspeaker
page-speaker-lead = You’ll hear a tone and a sentence.
page-speaker-play = Play a tone and a sentence
page-speaker-playing = Listen: a tone, then a sentence.
page-speaker-heard = Did you hear it clearly?
page-speaker-well = Good. Now try the microphone.
page-speaker-help = Turn the loudspeaker up, check that it is switched on and plugged in, or choose another one above. Then play it again.
page-spoken-test = This is how I sound. If you can hear me well, all is in order.
page-listen-title = Microphone
page-listen-lead = Stay quiet for five seconds. Then someone speaks for five seconds, as in a practice. Then the tool says a sentence.
page-listen-start = Start the check
page-listen-room = Quiet, please. I’m listening to the room.
page-listen-speech = Now speak, as loudly as in a practice. Say the days of the week.
page-listen-own = Thank you. Now the tool speaks. Please stay quiet.
page-mic-works = It works
page-mic-head-dead = Nothing was heard
page-mic-head-no-speech = No speech was heard
page-mic-head-trouble = Something to fix
page-mic-dead = The microphone gives only silence. Is it muted, switched off, or the wrong one?
page-mic-no-speech = No voice was heard. Come closer, speak for the whole five seconds, or choose another microphone.
page-mic-clips = Too loud: the loudest parts of the sound are cut off. Turn the microphone’s level down, or sit further away.
page-mic-room-loud = The room is too loud for a soft voice. Close the window, switch off anything that hums or plays, or turn the microphone’s level down.
page-mic-too-soft = The voice is too soft: it is hardly louder than the room. Bring the microphone closer, or turn its level up.
page-mic-changes-volume = The microphone changes its own volume, so levels can’t be compared. Switch off “automatic gain” in the computer’s sound settings.
page-mic-own-voice = The microphone picks up too much of the tool’s own voice. Turn the loudspeaker down, or move it away from the microphone.
page-mic-lost = Some sound was lost. Close other programs, or unplug the microphone and plug it in again.
page-figure-room = Room, re full scale
page-figure-voice = Voice, re full scale
page-figure-own = The tool’s own voice in the microphone, re full scale
page-figure-clipped = Cut off at the peaks
page-figure-lost = Lost sound

# Calibration

page-calibration-lead = A calibrated microphone gives decibels you can compare from week to week. Practice works without it, too.
page-calibration-kept = Calibrated
page-calibration-none = No microphone is calibrated; levels are relative.
page-calibration-how = { $date }, by { $method }: { $level } at { $at } cm.
page-calibration-scale = Microphone at { $distance } cm. The loudest it can take is { $full } dB SPL at 30 cm (SPL: sound pressure level).
page-calibration-void = It is no longer valid: { $why }
page-calibration-forget = Delete
page-calibration-forgotten = The calibration is deleted.
page-calibration-new = Calibrate
page-calibration-step-place = Put the microphone where it will stay during practice. Switch off automatic gain and noise reduction.
page-calibration-step-meter = Put the sound level meter beside it, set to A and Slow.
page-calibration-step-listen = Keep quiet for { $quiet } seconds. Then hold one steady “ah” for { $sound } seconds, and read the number while you do.
page-calibration-listen = Start listening
page-calibration-listening = Calibration
page-calibration-quiet = Quiet, please.
page-calibration-voice = Now hold one steady “ah”, and read the number while you do.
page-calibration-source = Now switch the source on.
page-calibration-heard = Heard { $length } s of sound at { $level } dB({ $weighting }), { $over } dB above the room; 0 dB is the loudest the microphone can take, and { $weighting } is the weighting of the frequencies. It varied by { $spread } dB.
page-calibration-keep = Save the calibration
page-calibration-drop = Discard it
page-calibration-done = Calibrated and saved
page-field-method = What shows the level
page-method-choose-meter = A sound level meter
page-method-choose-source = A source of known level, such as an acoustic calibrator
page-method-choose-phone = A phone’s sound level app: levels stay marked “rough”
page-method-meter = a sound level meter
page-method-source = a source of known level
page-method-phone = a phone’s number (rough)
page-field-distance_cm = From the mouth to the microphone, cm
page-hint-distance = Where it will stay during practice. If left empty: 30.
page-field-reference_cm = From the mouth to the meter or phone, cm
page-hint-reference = If left empty: the same as the microphone.
page-field-weighting = Frequency weighting of the meter
page-hint-weighting = The letter after dB on the meter.
page-weighting-usual = Usual: A (Z for a source)
page-field-level_db = Level, dB, if you know it already
page-hint-level-before = If left empty: asked after listening.
page-field-level-read = What it showed, dB({ $weighting })
page-field-level-source = The level of the source, dB({ $weighting })
page-level-missing = Type the number that was shown.

# Own voice

page-enrolment-lead = The tool says each command, and you say it back, three times. It takes about ten minutes. You can cancel at any word.
page-enrolment-consent = It asks for permission aloud first. No sound is kept, only figures about each word. They stay on this computer, and you can delete them below.
page-enrolment-begin = Begin
page-enrolment-starting = One moment: the tool is getting ready to listen.
page-enrolment-learnt = Learnt just now
page-enrolment-nothing = Nothing was learnt, and nothing was kept.
page-enrolment-kept = What is kept
page-enrolment-none = Nothing is kept about anyone’s voice.
page-enrolment-word = { $takes ->
    [one] said once
   *[other] said { $takes } times
}, { $day }, { $bytes } bytes of figures
page-enrolment-sure = Delete everything kept about { $name }’s voice. This cannot be undone.
page-enrolment-forget = Delete
page-enrolment-forgotten = Deleted. Nothing is left.
page-field-whose = Whose voice
page-field-client-name = Whose voice
page-hint-client-name = A short name, the same as in the routine. It need not be a real name.

# Cautions

page-cautions-lead = Some exercises may only be done if the client’s own clinician has agreed. Read the cautions for each exercise before you tick it.
page-cautions-nobody = There is no one here yet. Write a routine with a client’s name, or choose who practises it.
page-cautions-none = No routine of { $name } needs a clinician’s agreement.
page-cautions-open = { $n ->
    [0] all agreed
    [one] one exercise waiting
   *[other] { $n } exercises waiting
}
page-cautions-routines = In: { $names }.
page-cautions-no-routine = This client has no routine with it now.
page-cautions-box = The clinician of { $name } has agreed to it for them.
page-cautions-keep = Save the agreement
page-cautions-withdraw = Withdraw
page-cautions-agreed = The agreement is saved. The tool won’t ask again, and still says the cautions.
page-cautions-withdrawn = Withdrawn. The exercise is left out until someone agrees again.
page-cautions-tick = Tick the exercises a clinician has agreed to.
page-field-agreed-by = Who agreed
page-hint-agreed-by = Name the clinician so that you will recognise them later.
page-agreed-by-missing = Say who agreed, in at most 80 characters.
page-agreed-aloud = Agreed aloud during a practice on { $when }.
page-agreed-page = Agreed by { $by }, entered on this page on { $when }.
page-agreed-package = Agreed in the clinician’s package of { $when } (key { $by }).
page-by-page = by page

# Routines

page-routines-lead = What can be practised here. Each routine is a file that you can also change in any editor.
page-routines-none = There are no routines here yet.
page-routines-about = { $steps ->
    [one] One exercise
   *[other] { $steps } exercises
}, about { $minutes ->
    [one] one minute
   *[other] { $minutes } minutes
}
page-routines-faults = { $n ->
    [one] One fault: it can’t be practised as it is.
   *[other] { $n } faults: it can’t be practised as it is.
}
page-routines-who = Practised by { $names }.
page-routines-new = New routine
page-routines-begin = Begin
page-routines-empty = Empty
page-routines-copy-of = A copy of “{ $title }”
page-routines-folder = The files of these routines are in { $folder }
page-field-file-name = What it is called
page-hint-file-name = Letters, digits, spaces and hyphens, such as “Evening routine”. Its file gets the same name.
page-field-like = Start from

page-file-none = There is no routine file { $file } here.
page-file-bad-name = Use only letters, digits, spaces and hyphens in the name, such as “Evening routine”.
page-file-exists = There is already a file { $file }. Choose another name.
page-file-changed = Someone else changed the file { $file } in the meantime, so nothing was saved. Your changes are still on this page. Look at the file as it is now in another window, then make them again.
page-file-not-text = The file { $file } is not UTF-8 text. Save it as UTF-8 in an editor.
page-file-too-large = The file { $file } is too large for a routine.
page-file-system = The file { $file } could not be used: { $why }

page-no-such-file = There is no such file here.
page-no-pdf = This copy of tidecount was built without PDF. Print the web page from your browser instead.
page-file-report-pdf = { $name }’s report for the clinician, to print (PDF)
page-file-report-html = { $name }’s report for a browser (HTML)
page-file-chart = { $name }’s text for the chart, to copy and paste
page-file-carer-pdf = A page for whoever helps { $name }, to print (PDF)
page-file-carer-html = A page for whoever helps { $name }, for a browser (HTML)
page-letter = A letter to another clinician
page-letter-parts = Tell only this
page-letter-pdf = Make the letter (PDF)
page-letter-html = Make the letter (HTML)
page-file-csv = { $name }’s trials as a table (CSV)
page-file-csv-all = All trials as a table (CSV)
page-file-json = { $name }’s practices, entry by entry (JSON Lines)
page-file-json-all = All practices, entry by entry (JSON Lines)
page-file-fhir = { $name }’s practices for a health record (HL7 FHIR)

page-routine-back = All routines
page-routine-edit = Edit
page-routine-print = Print a handout
page-routine-saved = Saved. The version before this one is kept beside it, in a file whose name ends in “before”.
page-routine-chosen = Chosen. When you next start “tidecount attend”, it will offer this routine.
page-routine-unchosen = Removed from the list.
page-routine-raw = The file
page-routine-too-large = This file is too large for a form. Change it in an editor.
page-routine-who = Who practises it
page-routine-who-does = { $name } practises it.
page-routine-who-not = { $name } does not practise it.
page-routine-choose = Choose it for { $name }
page-routine-unchoose = Stop choosing it for { $name }
page-routine-choose-new = Choose it for this person
page-field-person = Someone else
page-hint-person = A name as people say it, such as “grandpa”. It need not be a real name.
page-person-missing = Type a name.
page-person-last = Someone must have a routine. Choose another routine first.
page-household-faults = This change would make the household file faulty, so nothing was changed:

page-routine-new-title = New routine: { $title }
page-routine-edit-title = Edit “{ $title }”
page-routine-edit-lead = Nothing is saved until you press “Save”. Empty fields take the usual value.
page-routine-save = Save
page-routine-check = Check only
page-routine-as-text = Edit the file’s text instead
page-routine-as-form = Back to the form
page-routine-well = No faults. It is not saved yet.
page-routine-not-yet-saved = Changed here, but not saved yet.
page-routine-text-title = Text of “{ $title }”
page-routine-text-lead = For people who know the file format. It gets the same checks as the form.
page-field-text = The file
page-hint-text = Each setting on its own line. Comments begin with #.
page-routine-general = General
page-routine-plan = When
page-routine-plan-hint = The times it should be done. Without any, the client can do it whenever they like.
page-routine-plan-add = Add a time
page-routine-plan-number = Time { $n }
page-routine-patience = When nobody answers
page-routine-steps = Exercises
page-routine-no-steps = There are no exercises yet. Add one below.
page-routine-adding = Add an exercise
page-routine-add-step = Add
page-routine-doses = Published or usual doses
page-routine-disagree = Where sources disagree
page-routine-whys = Why there are these limits
page-dose-take = Use this dose
page-dose-taken-as = Filled in: { $dose }
page-dose-no-number = It has no number to fill in.
page-dose-beyond = This dose can’t be used: { $why }
page-step-earlier = Earlier
page-step-later = Later
page-step-remove = Remove
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
page-hint-client = A short name for the client. It need not be a real name. You can leave this empty.
page-field-cue_words = Cue words before a loud trial
page-hint-cue_words = The clinician’s own, such as “strong voice”. You can leave this empty.
page-field-agreement_months = Ask for the agreement to an exercise again after so many months
page-field-ratings = Ratings at the end
page-rating-effort = Ask at the end: how hard it was, 0 to 10
page-rating-tiredness = Ask at the end: how tired the client is, 0 to 10
page-rating-pain = Ask at the end: how much pain there is, 0 to 10
page-field-weekly_questions = Ask once a week: the voice in daily life, why planned days were missed, warning signs about swallowing
page-field-feedback_every = Say the result after every so many trials (0: only when asked)
page-field-loud_limit_s = Most time on loud holds in one practice, seconds
page-field-no_answer = When nobody answers
page-field-ask_again_after_s = Ask again after, seconds
page-field-asks = Ask again this many times
page-field-give_up_after_s = End after this much silence, seconds
page-field-plan = When
page-field-at = At
page-hint-at = Hours and minutes, such as 18:30.
page-field-days = Days
page-field-step = Exercises
page-field-exercise = Exercise
page-field-add = Exercise
page-field-clinician_word = The clinician’s word
page-field-who = A larger dose: which clinician has agreed to it
page-field-why = A larger dose: why
page-hint-word = Only where the practice is longer, louder or more frequent than it may be without a clinician’s word. It stands on the report.
page-hint-word-step = Only where the dose is larger than it may be without a clinician’s word. It stands on the report.
page-field-posture = Posture
page-posture-usual = As usual: { $posture }
page-posture-lying = lying down
page-posture-sitting = sitting
page-posture-standing = standing
page-field-cautions_acknowledged = The cautions above have been read, and the client’s clinician has agreed to it for them
page-hint-acknowledge = The routine can’t be practised until you tick this.
page-field-sets = Sets
page-field-repetitions = Repetitions
page-field-rest_s = Rest between repetitions, seconds
page-field-set_rest_s = Rest between sets, seconds
page-field-target_s = Goal, seconds
page-field-max_break_s = Longest break that does not end a hold, seconds
page-field-min_hold_s = Shortest voicing that counts as a trial, seconds
page-field-cues_at_s = Brief cues during the hold, at seconds
page-hint-cues = Numbers with commas, such as 5, 10. You can leave this empty.
page-field-phases = Phases
page-field-phase-name = What
page-field-phase-length = How long, seconds
page-field-phase_s = How long, seconds
page-field-name = Name
page-field-count_every_s = Count aloud every, seconds
page-field-count_last_s = Count every second in the last, seconds
page-field-in = Counts in
page-field-out = Counts out
page-field-beat_s = Time between counts, seconds
page-field-next_cue_after_s = Next cue comes by itself after, seconds
page-field-sip_every = Offer a sip of water after every so many
page-field-sips_enabled_by_clinician = The client’s clinician has enabled sips of water
page-field-phrases = Phrases
page-hint-phrases = One per line. They are shown large and read aloud.
page-field-rungs = Steps in order
page-hint-rungs = Such as soft, medium, strong, medium, or low, middle, high, middle.
page-field-step_db = Size of a step, decibels
page-field-step_st = Size of a step, semitones
page-field-setting = What the clinician has set
page-hint-setting = It is said before the first one, such as “two turns of the dial”.
page-field-prompts = What to talk about
page-hint-prompts = One per line, each for one talk. Left empty, the program asks about something the client enjoys.
page-field-passage = Passage
page-hint-passage = It is shown large and not read aloud. Left empty, it is a fable of about 140 words.
page-field-syllables = Syllables
page-field-length_s = How long, seconds
page-field-questions = Questions
page-field-question-clue = Question
page-field-question-answers = Answers that count
page-field-question-near = Answers that are close
page-field-question-hint = Hint
page-field-question-fact = Said after the answer
page-field-packs = Word packs
page-field-packs-other = Other word packs
page-hint-packs-other = Names of files beside the routine, with commas. You can leave this empty.
page-field-think_s = Time to think, seconds
page-field-ramp = A dose that grows
page-field-ramp-days = Days before the next stage
page-field-stages = Stages
page-field-hold_s = Held for, seconds
page-pack-categories = Name as many as you can
page-pack-definitions = What is it?
page-pack-double-meanings = One word, two meanings
page-pack-odd-one-out = Which one doesn’t belong?
page-pack-opposites = Opposites
page-pack-pairs = What goes with it?
page-pack-sayings = The end of a saying

page-remedy-acknowledge = Read the cautions. If the client’s clinician has agreed, tick the box.
page-remedy-sips = If the client’s clinician has enabled sips, tick the box. Otherwise, leave the field empty.
page-remedy-sips-client = Fill in the client above: a clinician enables sips for one client.
page-remedy-questions = Tick a word pack, or add a question.
page-remedy-phrases = Write at least one phrase.
page-remedy-packs = Tick at least one word pack.
page-remedy-title = Fill in the title.
page-remedy-steps = Add at least one exercise.
page-remedy-word = Or fill in below who, of the client’s clinicians, has said that this may be, and why.
page-remedy-word-whole = Or fill in above who, of the client’s clinicians, has said that this may be, and why.
page-remedy-word-empty = Fill in who said it and why, or leave both empty.
page-remedy-type = Type a number, or leave the field empty.

# History

page-history-none = No practices yet.
page-history-pages = More practices
page-history-newer = Newer
page-history-older = Older
page-history-range = Practices { $from } to { $to } of { $of }, newest first
page-history-when = When
page-history-routine = Routine
page-history-done = Done
page-history-length = Length
page-history-ended = How it ended
page-history-steps = { $done } of { $of } exercises
page-history-minutes = { $n } min
page-history-best = Longest holds: { $holds }
page-history-under-way = under way
page-history-exports = Save as a file
page-source-replay = from a recording
page-source-rehearsal = rehearsed
page-end-completed = completed
page-end-finished = ended by the client
page-end-interrupted = cut short
page-end-abandoned = not continued
page-end-no-answer = no answer
page-end-time-limit = as long as one practice may be
page-end-day-limit = enough practices for one day
page-practice-back = All practices
page-practice-none = There is no practice with this number.
page-practice-what = What happened
page-practice-part = Part { $n }, from { $when }
page-practice-sounds = Recordings

page-fact-place = { $name }{ $sets ->
    [one] { $of ->
        [one] { "" }
       *[other] , { $n } of { $of }
    }
   *[other] , set { $set } of { $sets }, { $n } of { $of }
}
page-fact-begun = “{ $routine }” was started, with { $n ->
    [one] one exercise
   *[other] { $n } exercises
}.
page-fact-resumed = Continued after an interruption.
page-fact-agreed = Yes: a clinician has agreed to { $names }.
page-fact-not-agreed = No agreement to { $names }.
page-fact-left-out = Left out: { $reason }.
page-fact-step = { $name } begins.
page-fact-stage = Stage { $n } of a dose that grows.
page-fact-hold = Held { $s } s.
page-fact-hold-figures = { $level }, { $hz } Hz, pitch range { $span } semitones.
page-fact-distance = Level for { $cm } cm from the mouth.
page-fact-distance-unknown = The distance to the microphone was not given.
page-fact-clipped = The loudest { $s } s are cut off: the true level is higher.
page-fact-auto-gain = The microphone changed its own volume, so this level can’t be compared with any other.
page-fact-breaks = { $n ->
    [one] One break in the voice was bridged.
   *[other] { $n } breaks in the voice were bridged.
}
page-fact-masked = The tool’s own voice covered { $s } s of it.
page-fact-cut-off = Cut off by a command, so no figure uses it.
page-fact-posture = Held { $s } of { $of } s.
page-fact-round = One round in { $s } s, { $beat } s between counts.
page-fact-repetition = Done in { $s } s, ended by { $by }.
page-fact-phrase = “{ $phrase }” in { $s } s.
page-fact-level = { $level }, { $hz } Hz.
page-fact-talk = { $s } s, with { $pauses ->
    [0] no pause
    [one] one pause
   *[other] { $pauses } pauses
  } ({ $share } % of the time).
page-fact-syllables = { $n } syllables in { $s } s: { $rate } per second, irregularity { $irregularity } %.
page-fact-question-right = “{ $clue }” Answered: { $answer }.
page-fact-question-other = “{ $clue }” Another answer: { $answer }.
page-fact-question-none = “{ $clue }” No answer.
page-fact-named = { $n } named of { $category } in { $s } s: { $words }
page-fact-rested = Rested { $s } s.
page-fact-fall-length = The holds became shorter than usual for this client: { $from } s, then { $to } s.
page-fact-fall-level = The voice became softer than usual for this client: { $from } dB, then { $to } dB.
page-fact-rest-taken = A rest was offered and taken.
page-fact-rated = { $what }, { $over }, 0 to 10: { $value }.
page-fact-rated-none = not rated
page-fact-sign = Asked about { $what }: { $answer }.
page-fact-moment = A moment when the voice worked, told in { $s } s
page-fact-moment-words = Written down by the program, which may have misheard: “{ $text }”
page-fact-moment-none = No moment told when asked when the voice worked
page-moment-gone = This recording is no longer kept.
page-fact-missed = { $n ->
    [one] 1 planned day
   *[other] { $n } planned days
} missed this week: { $why }.
page-fact-missed-unsaid = no reason given
page-fact-rest-declined = A rest was offered and declined.
page-fact-loud-limit = Loud holds reached { $s } of { $limit } s. The rest was left for another day.
page-fact-command = “{ $text }” was heard: { $command }.
page-fact-no-answer = Nobody answered, though asked { $n ->
    [one] once more
   *[other] { $n } times more
}.
page-fact-step-done = Done: { $done } of { $of }.
page-fact-step-ended = Ended early ({ $reason }): { $done } of { $of }.
page-fact-safety = The client said that something was wrong: { $reason }.
page-fact-recogniser = The recogniser was restarted. Nothing was heard for { $s } s.
page-fact-microphone = { $text }
page-fact-room-loud = The room became too loud to measure in ({ $db } dB; 0 dB is the loudest the microphone can take).
page-fact-room-quiet = The room is quiet enough again.
page-fact-in-noise = That hold was only { $db } dB louder than the room, so no figure uses it.
page-fact-sound-lost = { $s } s of sound were lost.
page-fact-ended = The end ({ $reason }): { $done } of { $of } exercises.
page-fact-other = Something else was saved: { $kind }.
page-mark-left-out = Left out
page-mark-look = Check this
page-mark-discarded = Not counted
page-mark-ended = Ended early
page-mark-safety = Safety
page-trouble-loudspeaker-too-loud = The tool’s own voice drowned out the client’s.
page-trouble-room-too-loud = The room was too loud to measure in.
page-trouble-room-talks = Other people were talking, or a television was on.
page-trouble-microphone-clips = The microphone cut off the loudest parts.
page-trouble-microphone-gain = The microphone changed its own volume.
page-trouble-microphone-silent = The microphone gave no sound at all.
page-trouble-loudspeaker-gone = The loudspeaker was gone for a while.

# Progress

page-progress-nobody = Choose whose progress to look at. It appears once there are practices.
page-progress-lengths = How far back
page-progress-weeks = { $n } weeks
page-progress-all = All
page-progress-window = From { $from } to { $to }
page-progress-files = Reports and files
page-progress-goals = Goals
page-progress-adherence = Done out of what was prescribed
page-progress-practices = { $n ->
    [0] No practices in this time.
    [one] One practice in this time.
   *[other] { $n } practices in this time.
}
page-progress-done = { $done } of { $of } repetitions were done: { $percent } %.
page-progress-nothing-prescribed = Nothing was prescribed in this time.
page-progress-extra = { $n ->
    [one] One repetition more than prescribed.
   *[other] { $n } repetitions more than prescribed.
}
page-progress-no-plan = No days were planned, so practices that were missed can’t be counted.
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
page-progress-stops = Safety stops and warning signs
page-progress-ratings = Own ratings, 0 to 10
page-progress-rated = { $what }, { $over }: median { $median } ({ $low } to { $high }), latest { $latest } on { $last }
page-progress-missed = Why planned days were missed
page-progress-missed-for = { $what }: { $n ->
    [one] 1 day
   *[other] { $n } days
}, last told on { $last }
page-progress-left-out = Left out
page-progress-programme = What changed in the programme
page-progress-foot = A practice aid. It makes no diagnosis.
page-progress-baseline = Baseline: { $median }, trials from { $low } to { $high }, over { $days } days from { $from }.
page-progress-no-baseline = No baseline yet: it needs trials on three days.
page-progress-week-median = Median of the week from { $monday }: { $median }, from { $trials ->
    [one] one trial
   *[other] { $trials } trials
}.
page-progress-slope = Trend: { $slope } a week, with 95 % between { $low } and { $high }.
page-progress-mdc = A change of more than { $mdc } is beyond this person’s own scatter.
page-progress-within-scatter = The change since the baseline, { $change }, is within that scatter.
page-progress-higher = The latest days are { $change } above the baseline, beyond that scatter.
page-progress-lower = The latest days are { $change } below the baseline, beyond that scatter.
page-progress-break = New series from { $day }: { $why }.
page-progress-discarded = { $n ->
    [one] One value is left
   *[other] { $n } values are left
} out of every figure: { $why }.
page-progress-conditions = Latest conditions: weighting { $weighting }, distance { $distance }, { $scale }, microphone { $microphone }.
page-progress-conditions-mic = Latest microphone: { $microphone }.
page-scale-none = not calibrated, relative
page-scale-void = calibration no longer valid, relative
page-scale-meter = calibrated with a sound level meter
page-scale-source = calibrated with a known source
page-scale-rough = rough, from a phone
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
page-measure-step-db = step of loudness
page-measure-step-st = step of pitch
page-measure-phrase-span-st = pitch range of phrases
page-measure-phrase-rate-hz = syllables per second of phrases
page-measure-phrase-level-db = level of phrases
page-measure-phrase-f0-hz = pitch of phrases
page-measure-talk-level-db = level of talk
page-measure-talk-f0-hz = pitch of talk
page-measure-pause-share-pct = share of pauses
page-measure-syllable-rate-hz = syllables per second
page-measure-syllable-irregularity-pct = unevenness of syllables
page-measure-named-count = words named
page-programme-begun = started, with { $n ->
    [one] one exercise
   *[other] { $n } exercises
}
page-programme-replaced = replaced by { $by }
page-programme-added = { $name } added, { $dose }
page-programme-removed = { $name } removed
page-programme-dose = { $name }: { $field } from { $from } to { $to }
page-programme-stage = { $name } at stage { $n }, { $dose }
page-programme-order = different order
page-programme-plan = when: { $from }, now { $to }
page-programme-setting = { $field } from { $from } to { $to }

# Kept sound

page-sound-lead = No recording is kept unless the client wants it. You switch it on here, and the client must also say yes aloud at the next practice. Recordings stay on this computer and are deleted automatically.
page-sound-nobody = Choose whose recordings. Only people already known here can be asked.
page-sound-never = Off. No recordings are kept.
page-sound-asked = Asked for on { $when }, to keep each for { $days } days. The client will be asked aloud at the next practice. Until then, no recording is kept.
page-sound-refused = Off: the client said no on { $when }.
page-sound-given = On: the client said yes on { $when }. Each recording is kept for { $days } days.
page-sound-withdrawn = Off since { $when }.
page-sound-on = Ask to keep recordings
page-sound-change = Change the number of days
page-sound-off = Switch it off
page-sound-stored = Stored recordings
page-sound-none = No recordings are stored.
page-sound-one = Practice { $practice }, { $when }, { $minutes } min, deleted after { $until }
page-sound-sure = Delete all stored recordings of this client. This cannot be undone.
page-sound-delete = Delete
page-sound-told-on = Saved. The client will be asked aloud at the next practice.
page-sound-told-off = Off. No more recordings are kept. Stored ones are deleted when their time is up, or now with the button below.
page-sound-told-deleted = Deleted.
page-field-sound-days = Days to keep each recording

# The caseload of a clinic
page-caseload-lead = { $n ->
    [one] One of { $of } clients needs
   *[other] { $n } of { $of } clients need
  } attention on { $day }.
page-caseload-choices = Which clients
page-caseload-needing = Needs attention
page-caseload-range = { $from } to { $to } of { $of }, most serious first
page-caseload-nobody = Nobody, as far as the results show.
page-caseload-nothing = Nothing to report, as far as we know.
page-caseload-desk = from { $desk }
page-caseload-pages = More clients
page-caseload-before = Previous
page-caseload-behind = Next
page-caseload-back = Back to the caseload
page-caseload-none = There is no clinic database here. Import results with `tidecount clinic import`, then open the pages again.
page-caseload-no-client = There is no client with this number.
page-caseload-foot = This page shows only the results that have arrived. What they mean is for the clinician to say.
page-caseload-foot-sheet = All figures compare this person only with themselves. What they mean is for the clinician to say.
page-caseload-why = Why they need attention
page-caseload-note = Note
page-caseload-note-hint = A note to yourself and the other desks. You can leave it empty. What is reported up to now is not reported again.
page-caseload-note-long = Keep it to { $n } characters.
page-caseload-news = New results arrived after this page was made. They are shown now: please look again.
page-caseload-seen = I have looked
page-caseload-told-seen = Noted that you looked.
page-caseload-events = Reported by the practices
page-caseload-event = What
page-caseload-event-state = State
page-caseload-event-seen = seen
page-caseload-event-new = new
page-caseload-measures = Measures
page-caseload-measures-hint = First days, latest days, and the smallest change beyond this person’s own scatter (95 %).
page-caseload-measure = Exercise and measure
page-caseload-baseline = First
page-caseload-latest = Latest
page-caseload-smallest = Smallest change
page-caseload-verdict = Verdict
page-caseload-conditions = Based on
page-caseload-trials = { $n ->
    [one] one trial
   *[other] { $n } trials
  }
page-caseload-days = Adherence by day
page-caseload-days-hint = Repetitions done out of those prescribed on planned days. Extra repetitions are not counted.
page-caseload-days-begun = Adherence in practices that were started
page-caseload-days-begun-hint = No days were agreed, so days without practice can’t be counted.
page-caseload-share = Share
page-caseload-reps = Repetitions
page-caseload-practices = Practices
page-caseload-discarded = left out of the figures
page-caseload-sessions = Practices, newest first
page-caseload-looks = Who looked, and when
page-verdict-unknown = too little to tell
page-verdict-unchanged = within the scatter
page-verdict-fallen = fallen
page-verdict-risen = risen
page-reason-safety = Safety
page-reason-swallow-sign = Swallowing
page-reason-no-practice = No practice
page-reason-no-results = No results
page-reason-adherence = Adherence
page-reason-decline = Decline
page-reason-left-out = Left out
page-reason-tired = Tired
page-reason-programme = Programme
page-reason-microphone = Microphone
page-reason-clock = Clock
