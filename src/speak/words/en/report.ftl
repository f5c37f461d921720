# The report of `tidecount report`: shown and printed, never spoken, so every key ends in -shown.
# The clinician's pages use the trade's words; the client's page (report-client-…) uses plain ones, judges nothing and promises nothing.

# --- dates -------------------------------------------------------------------------------------------------------------------
report-date-shown = { $day } { $month } { $year }
report-day-month-shown = { $day } { $month }
report-month-year-shown = { $month } { $year }
report-span-shown = { $from } to { $to }
report-month-1-shown = Jan
report-month-2-shown = Feb
report-month-3-shown = Mar
report-month-4-shown = Apr
report-month-5-shown = May
report-month-6-shown = Jun
report-month-7-shown = Jul
report-month-8-shown = Aug
report-month-9-shown = Sep
report-month-10-shown = Oct
report-month-11-shown = Nov
report-month-12-shown = Dec
report-weekday-1-shown = Mon
report-weekday-2-shown = Tue
report-weekday-3-shown = Wed
report-weekday-4-shown = Thu
report-weekday-5-shown = Fri
report-weekday-6-shown = Sat
report-weekday-7-shown = Sun

# --- measures and units --------------------------------------------------------------------------------------------------------
report-measure-hold-s-shown = hold time
report-measure-level-db-shown = level
report-measure-f0-median-hz-shown = median F0
report-measure-f0-span-st-shown = pitch range
report-measure-f0-sd-st-shown = SD of F0
report-measure-level-slope-db-per-s-shown = level slope
report-measure-step-db-shown = step of loudness
report-measure-step-st-shown = step of pitch
report-measure-phrase-span-st-shown = pitch range
report-measure-phrase-rate-hz-shown = speech rate
report-measure-phrase-level-db-shown = level
report-measure-phrase-f0-hz-shown = median F0
report-measure-talk-level-db-shown = level
report-measure-talk-f0-hz-shown = median F0
report-measure-pause-share-pct-shown = share of pauses
report-measure-syllable-rate-hz-shown = syllable rate
report-measure-syllable-irregularity-pct-shown = syllable irregularity
report-measure-named-count-shown = words named
report-measure-cpps-db-shown = CPPS
report-measure-hnr-db-shown = HNR
report-measure-jitter-pct-shown = jitter (local)
report-measure-shimmer-pct-shown = shimmer (local)
report-unit-spl-shown = dB SPL
report-unit-rough-shown = dB SPL, rough
report-unit-relative-shown = dB, relative
report-unit-mixed-shown = dB SPL and dB relative
report-unit-words-shown = words
report-figure-shown = { $value }
report-value-shown = { $value } { $unit }
report-interval-shown = { $low } to { $high }
report-weighted-shown = { $weighting }-weighted
report-at-cm-shown = { $cm } cm

# --- page one ------------------------------------------------------------------------------------------------------------------
report-document-shown = Practice report, { $client }, { $span }
report-title-shown = Practice report: { $client }
report-period-shown = { $span }, { $weeks ->
    [one] 1 week
   *[other] { $weeks } weeks
}
report-made-shown = Made on { $date } by { $software }
report-levels-calibrated-shown = Levels: { $unit }, { $terms }.
report-levels-relative-shown = Levels are relative (not calibrated): compare them only within an unbroken series.
report-levels-mixed-shown = Levels: partly calibrated, partly relative; see the tables.
report-glance-shown = At a glance
report-glance-nothing-shown = No practices between { $from } and { $to }.
report-glance-nothing-last-shown = No practices between { $from } and { $to }; the last one was on { $last }.
report-glance-planned-shown = { $done } of { $prescribed } prescribed repetitions done ({ $pct } %); practised on { $days } of { $planned } planned days; last practice on { $last }.
report-glance-planned-bare-shown = Practised on { $days } of { $planned } planned days; last practice on { $last }.
report-glance-unplanned-shown = { $days ->
    [one] Practised on 1 day;
   *[other] Practised on { $days } days;
} no days were planned, so missed practices cannot be counted. In the practices, { $done } of { $prescribed } repetitions were done ({ $pct } %). Last practice on { $last }.
report-glance-unplanned-bare-shown = { $days ->
    [one] Practised on 1 day;
   *[other] Practised on { $days } days;
} no days were planned, so missed practices cannot be counted. Last practice on { $last }.
report-glance-unsettled-shown = Waiting for your word: { $list }. Nobody has said that you agreed, so { $n ->
    [one] it is
   *[other] they are
} left out.
report-glance-stops-none-shown = No stop events.
report-glance-stops-shown = { $n ->
    [one] 1 stop event: { $list }.
   *[other] { $n } stop events: { $list }.
}
report-glance-signs-shown = Asked about swallowing once a week, the client said yes or wasn’t sure: { $list }.
report-counted-shown = { $what } ({ $n }×)
report-glance-beyond-shown = Changed by more than this client’s own scatter: { $list }.
report-glance-within-shown = No change beyond this client’s own scatter: { $list }.
report-glance-early-shown = Too early to tell: { $list }.
report-glance-unmeasured-shown = No voice exercise was measured in these weeks.
# A dose beyond the usual limits, and the clinician who spoke for it.
report-glance-word-shown = { $exercise } in { $routine } goes beyond the usual limits, on the word of { $who }: { $why }.
report-glance-word-whole-shown = { $routine } as a whole goes beyond the usual limits, on the word of { $who }: { $why }.
report-glance-breaks-shown = { $n ->
    [one] The series are broken in 1 place, numbered in the charts. Values on either side are not compared.
   *[other] The series are broken in { $n } places, numbered in the charts. Values on either side are not compared.
}
report-changed-shown = { $name } { $change }
report-series-shown = { $exercise }, { $measure }
report-panel-shown = { $exercise }: { $measure }, { $unit }
report-panel-bare-shown = { $exercise }: { $measure }

# --- goals ---------------------------------------------------------------------------------------------------------------------
report-goals-shown = Goals
report-goals-rule-measured-shown = Met: the typical value (median of the latest 3 to 5 days of practice) has reached the goal, and its change from the baseline is beyond this client’s own scatter. Too early: fewer days than that takes, or the day has not come. Otherwise: not met.
report-goals-rule-by-hand-shown = Activities are marked by people, never by the program.
report-goal-shown = “{ $words }” { $target } by { $due }: { $state }.
report-goal-now-shown = “{ $words }” { $target } by { $due }: { $state }. Typical value now: { $now }.
report-goal-by-hand-shown = “{ $words }” By { $due }: { $state }.
report-goal-at-least-shown = { $exercise }, { $measure } at least { $value }
report-goal-at-most-shown = { $exercise }, { $measure } at most { $value }
report-goal-activity-shown = an activity, without a measure
report-goal-set-shown = { $date }, { $by }
report-goal-met-shown = met
report-goal-met-marked-shown = met, as marked by { $by } on { $date }
report-goal-not-met-shown = not met
report-goal-not-met-marked-shown = not met, as marked by { $by } on { $date }
report-goal-short-shown = not met, the typical value has not reached it
report-goal-within-scatter-shown = not met, the typical value has reached it but its change is within this client’s own scatter
report-goal-no-trials-shown = too early to say, no trials in the last four weeks
report-goal-few-days-shown = too early to say, too few days with trials
report-goal-not-calibrated-shown = too early to say, the levels are not calibrated
report-goal-before-due-shown = too early to say, not met yet and the day has not come
report-goal-not-marked-shown = too early to say, nobody has marked it
report-head-goal-goal-shown = Goal, in the client’s own words
report-head-goal-target-shown = Measure and target
report-head-goal-set-shown = Set
report-head-goal-due-shown = By
report-head-goal-now-shown = Typical now
report-head-goal-state-shown = State

report-calendar-title-shown = Adherence: repetitions done out of those prescribed
report-calendar-stops-shown = stops
report-calendar-percent-shown = %
report-calendar-described-planned-shown = Calendar of { $span }: a box for each day, filled by the share of repetitions done. Practised on { $days } of { $planned } planned days; { $done } of { $prescribed } repetitions done. The figures are in the table of weeks.
report-calendar-described-unplanned-shown = Calendar of { $span }: a box for each day with practice, filled by the share of repetitions done. Practised on { $days } days; { $done } of { $prescribed } repetitions done. The figures are in the table of weeks.
report-calendar-key-shown = Box: planned or practised day, filled from below by the share done. Dash: nothing planned.
report-calendar-key-stops-shown = Box: planned or practised day, filled from below by the share done. Dash: nothing planned. Cross: stop event.
report-figure-done-shown = Done
report-figure-done-value-shown = { $done } of { $prescribed } ({ $pct } %)
report-figure-days-shown = Days
report-figure-days-planned-shown = { $days } of { $planned } planned
report-figure-days-value-shown = { $days }
report-figure-practices-shown = Practices
report-figure-minutes-shown = Usual length
report-figure-minutes-value-shown = { $minutes } min
report-figure-longest-gap-shown = Longest gap
report-figure-longest-gap-value-shown = { $days ->
    [one] 1 day
   *[other] { $days } days
}

report-figure-since-shown = Since
report-figure-first-shown = Baseline
report-figure-now-shown = Latest
report-figure-change-shown = Change
report-figure-counts-shown = Counts from
report-figure-counts-value-shown = ±{ $value } (MDC95)
report-figure-slope-shown = Per week
report-figure-trials-shown = Trials
report-figure-trials-value-shown = { $n }
report-figure-trials-left-shown = { $n }, left out { $left }
report-figure-few-shown = too few days
report-verdict-beyond-shown = { $change }, beyond scatter
report-verdict-within-shown = { $change }, within scatter
report-chart-described-shown = Chart of { $name } over time, { $span }. { $first } { $now } { $verdict } { $parted } The figures are in the table of weeks.
report-described-first-shown = Baseline { $value }.
report-described-now-shown = Latest { $value }.
report-described-verdict-shown = Change { $change }; a change counts from { $mdc }.
report-described-parted-shown = { $n ->
    [one] The series is broken once.
   *[other] The series is broken { $n } times.
}
report-gap-shown = { $days }-day gap
report-key-shown = Key
report-key-trial-shown = each trial
report-key-median-shown = weekly median with 95 % interval
report-key-loose-shown = † few days: the interval covers less than 95 %
report-key-baseline-shown = baseline, median with interval
report-key-mdc-shown = a change counts from here (MDC95)
report-key-gap-shown = gap
report-key-break-shown = other break
report-breaks-shown = Breaks
report-break-shown = { $number }: { $when }, { $why }
report-break-gap-shown = { $days } days without a trial
report-break-microphone-shown = another microphone: “{ $to }”, previously “{ $from }”
report-break-gain-shown = microphone gain { $to }, previously { $from }
report-break-calibration-shown = level now { $to }, previously { $from }
report-scale-relative-shown = relative
report-scale-sound-level-meter-shown = calibrated with a sound level meter
report-scale-known-source-shown = calibrated with a known source
report-scale-a-phone-s-number-rough-shown = calibrated with a phone’s number, rough
report-break-calibration-other-shown = another calibration
report-break-weighting-shown = weighting { $to }, previously { $from }
report-break-distance-shown = distance { $to }, previously { $from }

report-left-out-title-shown = Left out, and why
report-left-out-none-shown = Nothing was left out.
report-left-out-shown = { $n ->
    [one] { $exercise }: { $why }; on { $last }.
   *[other] { $exercise }: { $why }; { $n } times, last on { $last }.
}
report-events-title-shown = Stop events and notes
report-events-none-shown = No stop events and no notes.
report-stop-shown = { $n ->
    [one] Stop, { $why }, in { $where }; on { $last }.
   *[other] Stop, { $why }, in { $where }; { $n } times, last on { $last }.
}
report-stop-after-shown = { $n ->
    [one] Stop, { $why }, after { $where }; on { $last }.
   *[other] Stop, { $why }, after { $where }; { $n } times, last on { $last }.
}
report-stop-outside-shown = { $n ->
    [one] Stop, { $why }, between exercises; on { $last }.
   *[other] Stop, { $why }, between exercises; { $n } times, last on { $last }.
}
report-note-shown = { $n ->
    [one] { $what }; on { $last }.
   *[other] { $what }; { $n } times, last on { $last }.
}
report-note-in-shown = { $what } ({ $exercise })
report-note-trouble-shown = { $why }
report-note-calibration-void-shown = { $text }
report-note-loud-limit-shown = Loud time reached the routine’s limit
report-note-fall-shown = { $text } fell beyond usual scatter within a practice
report-note-sound-lost-shown = Sound lost between microphone and program
report-note-ended-early-shown = Practice ended early: { $why }
report-note-clock-shown = { $n ->
    [one] 1 practice is dated earlier than the practice before it: the clock was set back. Its date may be wrong.
   *[other] { $n } practices are dated earlier than the practice before them: the clock was set back. Their dates may be wrong.
}
report-more-shown = { $n ->
    [one] One more in the tables.
   *[other] { $n } more in the tables.
}
# What the client said when asked about the week.
report-sign-shown = Swallowing, { $what }: yes { $yes }×, not sure { $unsure }×; last on { $last }.
report-sign-unsure-shown = { $what } (not sure)
report-missed-shown = Planned days missed, as the client said: { $list }.
report-programme-title-shown = Changes to the programme
report-programme-none-shown = Nothing changed.
report-programme-shown = { $date }, { $routine }: { $list }.
report-change-routine-begun-shown = started with { $n ->
    [one] 1 exercise
   *[other] { $n } exercises
}
report-change-routine-replaced-shown = replaced by { $by }
report-change-added-shown = { $exercise } added ({ $dose })
report-change-removed-shown = { $exercise } removed
report-change-dose-shown = { $exercise }, { $field } { $from } → { $to }
report-change-stage-shown = { $exercise }, stage { $from } → { $to } ({ $dose })
report-change-order-shown = different order
report-change-plan-shown = days { $from } → { $to }
report-change-setting-shown = { $field } { $from } → { $to }
report-foot-shown = A practice aid that measures and keeps a record. It makes no diagnosis.

# Reasons, as the record has them. What is not here is shown as it stands.
report-why-dizzy-shown = dizzy
report-why-pain-shown = pain
report-why-help-shown = asked for help
report-why-hurts-shown = pain
report-why-chest-pain-shown = chest pain
report-why-can-t-breathe-shown = couldn’t breathe
report-why-choking-shown = something went down the wrong way
report-why-feels-sick-shown = felt sick
report-why-cough-at-meals-shown = coughing or choking at meals
report-why-wet-voice-shown = wet voice after meals
report-why-weight-loss-shown = losing weight
report-why-chest-infection-shown = chest infection
report-why-not-well-shown = not well
report-why-too-tired-shown = too tired
report-why-no-time-shown = no time
report-why-forgot-shown = forgot
report-why-something-else-shown = another reason
report-why-unwell-shown = the client wasn’t well
report-why-no-spoken-agreement-shown = no spoken agreement
report-why-loud-time-limit-shown = loud time used up
report-why-practice-limit-shown = as much as one practice may hold
report-why-day-limit-shown = as much as one day may hold
report-why-time-limit-shown = the practice had lasted as long as one may
report-why-skipped-shown = skipped by voice
report-why-went-back-shown = went back
report-why-no-answer-shown = no answer
report-why-finished-early-shown = ended by voice before its end
report-why-finished-shown = ended by voice
report-why-interrupted-shown = interrupted
report-why-no-agreement-shown = no spoken agreement
report-why-duration-shown = Holds
report-why-level-shown = Level
report-why-not-reached-shown = not reached: practice { $why }
report-why-abandoned-shown = cut short
report-why-completed-shown = completed
report-why-loudspeaker-too-loud-shown = Loudspeaker too loud for the microphone
report-why-room-too-loud-shown = Room too loud to measure in
report-why-room-talks-shown = Other people were talking in the room
report-why-microphone-clips-shown = Microphone clipped
report-why-microphone-gain-shown = Microphone changed its own volume
report-why-microphone-silent-shown = Microphone gave no sound at all
report-why-cut-off-shown = cut off by a command
report-why-in-noise-shown = the room was too loud
report-why-masked-shown = the tool spoke over it
report-why-auto-gain-shown = the microphone changed its own volume
report-why-clipped-shown = clipped
report-why-misdated-shown = its date cannot be right
report-why-done-shown = “done”
report-why-next-cue-shown = the next cue
report-why-yes-shown = yes
report-why-no-shown = no
report-why-not-sure-shown = not sure

# Fields of a routine file; what is not here is shown with blanks for underscores.
report-field-repetitions-shown = repetitions
report-field-sets-shown = sets
report-field-rest-s-shown = rest, s
report-field-target-s-shown = goal, s
report-field-hold-s-shown = hold, s
report-field-length-s-shown = length, s
report-field-target-db-shown = goal, dB
report-field-feedback-every-shown = result said after every so many trials
report-field-phases-shown = phases
report-field-posture-shown = posture
report-field-ratings-shown = rated after practice
report-field-weekly-questions-shown = questions about the week
report-field-agreement-months-shown = months for which an agreement holds

# --- abbreviations: each in one plain line where it stands ----------------------------------------------------------------------
# No sentences: the first letter stays as it is.
report-abbreviation-mdc-shown = MDC95: the smallest change that is more than this client’s own scatter (minimal detectable change, 95 %)
report-abbreviation-spl-shown = dB SPL: sound pressure level in decibels, as a sound level meter shows it
report-abbreviation-relative-shown = dB, relative: decibels on this microphone’s own scale
report-abbreviation-weighted-shown = A-weighted: low-pitched sound counts less, much as the ear hears it
report-abbreviation-st-shown = st: semitones, twelve to an octave
report-abbreviation-f0-shown = F0: fundamental frequency, the pitch of the voice
report-abbreviation-hz-shown = Hz: vibrations a second
report-abbreviation-sd-shown = SD: standard deviation, how far values lie apart
report-abbreviation-cpps-shown = CPPS: smoothed cepstral peak prominence, how far the voice stands out of its own noise
report-abbreviation-hnr-shown = HNR: harmonics-to-noise ratio
report-abbreviation-jitter-shown = Jitter: how unevenly long the vibrations are
report-abbreviation-shimmer-shown = Shimmer: how unevenly strong the vibrations are

# --- minutes, repetitions, help ------------------------------------------------------------------------------------------------
report-table-by-group-shown = Minutes and repetitions by exercise group
report-table-by-group-note-shown = Minutes from the beginning of an exercise to its end, rests within it counted.
report-table-by-day-shown = Minutes and repetitions by day
report-table-by-day-note-shown = Minutes/repetitions. Minutes of whole practices, with what is said between the exercises.
report-head-group-shown = Exercise group
report-head-minutes-shown = Minutes
report-head-repetitions-shown = Repetitions
report-head-sum-shown = Week
report-group-other-shown = Other exercises
report-condition-cueing-shown = Cueing given
report-cueing-questions-shown = Word questions: { $n }; answered without a hint { $alone }, after a hint { $hinted }, not answered { $rest }.
report-cueing-again-shown = { $n ->
    [0] The client never asked to hear something again.
    [one] The client asked once to hear something again.
   *[other] The client asked { $n } times to hear something again.
}
report-cueing-no-answer-shown = { $n ->
    [0] No repetition was left out because nobody answered.
    [one] 1 repetition was left out because nobody answered.
   *[other] { $n } repetitions were left out because nobody answered.
}
report-cueing-led-shown = The program led every repetition aloud; how much of that the client needed is not recorded.
report-cueing-carer-shown = Help from a carer: not recorded.

# --- moments when the voice did what was wanted, in the client's words ------------------------------------------------------------
report-moments-shown = When the voice worked, as the client told it
report-moments-note-shown = Told aloud at the end of a practice, once a week. What was written down was written by a program: it may have misheard. A recording can be played on the practice’s page.
report-head-moment-day-shown = Day
report-head-moment-told-shown = Told
report-moment-text-shown = “{ $text }”
report-moment-sound-shown = Recorded, { $s } s: practice { $n }, until { $until }.
report-moment-gone-shown = Told; its recording is no longer kept.
report-moment-line-shown = { $date }: { $told }

# --- baseline and re-test, apart from practice ------------------------------------------------------------------------------------
report-baseline-shown = Baseline and re-test, apart from practice
report-head-baseline-what-shown = Figure
report-head-baseline-first-shown = Baseline
report-head-baseline-latest-shown = Latest re-test
report-head-baseline-change-shown = Difference
report-head-baseline-practice-shown = In practice
report-head-baseline-published-shown = Published values
report-baseline-best-shown = { $value }, the best of { $trials }
report-baseline-middle-shown = { $value }, the middle one of { $trials }
report-baseline-left-shown = { $told } ({ $n } more didn’t count)
report-baseline-other-shown = can’t be compared: other microphone, place or scale, or nobody said
report-baseline-unknown-shown = { $change }; own scatter not known yet
report-baseline-within-shown = { $change }, within own scatter ({ $mdc })
report-baseline-beyond-shown = { $change }, beyond own scatter ({ $mdc })
report-baseline-practice-shown = { $value }
report-baseline-norm-shown = { $who }: { $text }
report-baseline-no-norm-shown = no norm known
report-baseline-norm-below-shown = below
report-baseline-of-source-shown = { $list } ({ $source })
report-baseline-published-shown = Published, { $name }: { $list }.
report-baseline-line-shown = { $name }: { $value } on { $date }
report-baseline-retest-shown = { $first }; { $value } on { $date } ({ $change })
report-baseline-led-shown = { $date }
report-baseline-led-part-shown = { $date } (not led to its end)
report-baseline-days-shown = Led on { $list }.
report-baseline-microphone-unknown-shown = microphone not known
report-baseline-conditions-shown = { $date }: { $microphone }; level { $level }.
report-baseline-source-seen-shown = { $source }
report-baseline-source-second-hand-shown = { $source } (at second hand)
report-baseline-source-memory-shown = { $source } (from memory)
report-baseline-source-common-practice-shown = { $source } (common practice)
report-baseline-note-shown = The tasks are the same each time. A difference is set beside the smallest change that exceeds this client’s own scatter, which comes from practice. Published values are means of groups, measured under other conditions: they say nothing about one person, and no figure here is a diagnosis.

# --- the client's own ratings, 0 to 10 ------------------------------------------------------------------------------------------
report-ratings-shown = Own ratings, 0 to 10
report-ratings-note-shown = As the client said them. Effort, tiredness and pain: 0 is none, 10 the most there could be. Voice: 0 is the worst, 10 the best.
report-rating-effort-shown = Effort
report-rating-tiredness-shown = Tiredness
report-rating-pain-shown = Pain
report-rating-voice-shown = Voice in daily life
report-rating-of-practice-shown = after practice
report-rating-of-week-shown = over the week
report-head-rating-what-shown = Rating
report-head-rating-median-shown = Median
report-head-rating-range-shown = Lowest to highest
report-head-rating-latest-shown = Latest
report-head-rating-times-shown = Ratings (passed over)
report-rating-name-shown = { $what }, { $over }
report-rating-latest-shown = { $value } on { $date }
report-rating-line-shown = { $name }: median { $median } ({ $range }), latest { $latest }; { $n ->
    [one] 1 rating
   *[other] { $n } ratings
}
report-soap-ratings-shown = Own ratings, 0 to 10:
report-soap-ratings-none-shown = Own ratings: none recorded.

# --- the text to paste into a chart: plain, and in the order of a chart -----------------------------------------------------------
report-soap-title-shown = Text for the chart
report-soap-hint-shown = One click chooses all of it, to copy and paste. The assessment is yours to write.
report-soap-of-shown = Home practice of { $client }, { $span }
report-soap-subjective-shown = Subjective
report-soap-objective-shown = Objective
report-soap-assessment-shown = Assessment
report-soap-plan-shown = Plan
report-soap-own-words-shown = Goals in the client’s own words:
report-soap-quoted-shown = “{ $words }”
report-soap-stops-shown = Said during practice:
report-soap-signs-shown = Said when asked about swallowing, once a week:
report-soap-by-group-shown = By exercise group (minutes from the beginning of an exercise to its end):
report-soap-group-shown = { $group }: { $minutes } min, { $repetitions } repetitions, on { $days ->
    [one] 1 day
   *[other] { $days } days
}
report-soap-by-day-shown = By day, minutes/repetitions of whole practices, a line for each week from Monday:
report-soap-cueing-shown = Cueing given:
report-soap-measured-shown = Measures, against this client’s own scatter:
report-soap-measure-early-shown = { $name }: too early to tell whether it changes.
report-soap-measure-within-shown = { $name }: { $first } at baseline, { $now } now. Change { $change }, within scatter (MDC95 { $mdc }).
report-soap-measure-beyond-shown = { $name }: { $first } at baseline, { $now } now. Change { $change }, beyond scatter (MDC95 { $mdc }).
report-soap-goals-shown = Goals:
report-soap-left-out-shown = Left out, and why:
report-soap-programme-shown = What changed in the programme:
report-soap-programme-none-shown = Nothing changed in the programme.
report-soap-levels-mixed-shown = Levels were partly calibrated and partly relative; the figures here are of the latest series.
report-soap-yours-shown = (for you to write)
report-soap-decide-shown = (for you to decide; the program takes no step by itself)
report-soap-proposed-shown = To consider:
report-propose-goal-met-shown = A goal is met: { $words } Set a next goal, or a next step?
report-propose-goal-not-met-shown = A goal is not met by its day: { $words } Another day, another goal, or another dose?
report-propose-longer-shown = { $exercise }: { $reached } of the last { $of } reached the goal of { $target } s. A longer goal?
report-propose-shorter-shown = { $exercise }: { $reached } of the last { $of } reached the goal of { $target } s. A shorter goal?
report-propose-stops-shown = There were stop events: look at them before any dose is raised.
report-propose-signs-shown = There were warning signs about swallowing: look at the swallow work before anything else.
report-propose-agreement-shown = Left out for want of agreement: { $list }. Agree to it, or take it out?

# --- tables --------------------------------------------------------------------------------------------------------------------
report-tables-title-shown = Tables and conditions
report-table-measures-shown = Measures
report-table-measures-note-shown = One line for each unbroken series; measures without a chart show only the last one. Baseline: median of the first days with its interval. MDC95: the smallest change that is more than this client’s own scatter (minimal detectable change, 95 %). Trend: Theil–Sen slope (the middle of the slopes between all pairs of days) with its 95 % interval. † covers less than 95 %: there were few days.
report-table-quality-note-shown = CPPS, HNR, jitter, shimmer: a louder voice alone makes them look better, and microphone and room change them.
report-table-weeks-shown = Weeks
report-table-weeks-note-shown = Weekly medians of the daily medians with 95 % intervals. † Covers less than 95 %: there were few days. Two lines for a week mean that a series is broken during it.
report-head-measure-shown = Exercise and measure
report-head-stretch-shown = Days
report-head-first-shown = Baseline
report-head-latest-shown = Latest
report-head-change-shown = Change
report-head-mdc-shown = MDC95
report-head-slope-shown = Trend per week
report-head-trials-shown = Trials (left out)
report-head-week-shown = Week from
report-head-days-shown = Days
report-head-done-shown = Done
report-cell-of-shown = { $a } of { $b }
report-cell-percent-shown = { $done } of { $prescribed }, { $pct } %
report-cell-median-shown = { $value } ({ $interval })
report-cell-loose-shown = { $interval }†
report-cell-trials-shown = { $n } ({ $left })
report-cell-none-shown = –
report-cell-slope-shown = { $slope } ({ $interval })
report-cell-beyond-shown = { $change } *
report-table-star-shown = * beyond this client’s own scatter.
report-conditions-title-shown = Conditions
report-condition-microphone-shown = Microphone
report-condition-microphone-value-shown = “{ $name }” ({ $system }, { $rate } Hz, gain { $gain }); { $span }, { $n ->
    [one] 1 trial
   *[other] { $n } trials
}
report-condition-microphone-unknown-shown = Not recorded; { $span }, { $n ->
    [one] 1 trial
   *[other] { $n } trials
}
report-condition-level-shown = Level
report-condition-level-value-shown = { $unit }, { $terms }; { $span }, { $n ->
    [one] 1 trial
   *[other] { $n } trials
}
report-condition-calibration-shown = Calibration
report-condition-discarded-shown = Left out
report-condition-discarded-none-shown = None.
report-condition-discarded-value-shown = { $exercise }: { $list }.
report-condition-trials-shown = Trials
report-condition-trials-value-shown = { $n ->
    [one] 1 trial in these weeks
   *[other] { $n } trials in these weeks
}.
report-condition-best-shown = Best of three
report-condition-best-value-shown = { $exercise }: latest { $best } of { $trials }, on { $date }.
report-condition-software-shown = Program
report-condition-routines-shown = Routines
report-condition-routine-value-shown = { $routine }: { $n ->
    [one] 1 practice
   *[other] { $n } practices
}, { $span }.
report-condition-method-shown = Method
report-condition-method-value-shown = Baseline: the first five days with trials. Scatter: the larger of trial-to-trial (within days) and day-to-day. MDC95 = 1.96·√2·scatter. A series is broken by a gap and by anything that makes values not comparable; nothing is computed across a break.
report-calibration-none-shown = not calibrated
report-calibration-void-shown = calibration no longer valid
report-calibration-meter-shown = calibrated with a sound level meter
report-calibration-source-shown = calibrated with a known source
report-calibration-rough-shown = calibrated with a phone’s number, rough
report-distance-unknown-shown = distance not known
report-time-energy-mean-shown = energy mean over the voiced part
report-all-left-out-shown = Everything left out
report-all-events-shown = All stop events and notes
report-all-programme-shown = All changes in the programme
report-all-breaks-shown = All breaks

# --- the client's page ---------------------------------------------------------------------------------------------------------
report-client-title-shown = Your practice, { $client }
report-client-span-shown = { $span }
report-client-nothing-shown = You did not practise in these weeks. You can start again whenever it suits you.
report-client-days-shown = { $days ->
    [one] You practised on 1 day.
   *[other] You practised on { $days } days.
}
report-client-days-planned-shown = You practised on { $days ->
    [one] 1 day
   *[other] { $days } days
}; { $planned ->
    [one] 1 was planned.
   *[other] { $planned } were planned.
}
report-client-weeks-shown = Your last { $weeks ->
    [one] week
   *[other] { $weeks } weeks
}
report-client-weeks-key-shown = Full circle: you practised. Empty circle: you did not.
report-client-weeks-described-shown = { $list }.
report-client-week-described-shown = week from { $day }: { $days ->
    [one] 1 day
   *[other] { $days } days
}
report-client-goals-shown = Your goals
report-client-goal-met-shown = “{ $words }” Met.
report-client-goal-not-met-shown = “{ $words }” Not met. Your clinician can look at it with you.
report-client-goal-time-left-shown = “{ $words }” Not yet. There is time until { $due }.
report-client-goal-too-early-shown = “{ $words }” It is too early to say.
report-client-moments-shown = When your voice worked
report-client-moment-text-shown = { $date }: “{ $text }”
report-client-moment-sound-shown = { $date }: you told of one. Your recording is kept until { $until }.
report-client-voice-shown = Your voice
report-client-hold-first-shown = { $exercise }: about { $now } seconds so far. It is too early to tell what is usual for you.
report-client-hold-early-shown = { $exercise }: you usually hold it for about { $now } seconds. It is too early to tell whether that is changing.
report-client-hold-same-shown = { $exercise }: about { $now } seconds now, about { $first } at first. That is within your usual ups and downs.
report-client-hold-more-shown = { $exercise }: about { $now } seconds now, about { $first } at first. That is longer, by more than your usual ups and downs.
report-client-hold-less-shown = { $exercise }: about { $now } seconds now, about { $first } at first. That is shorter, by more than your usual ups and downs. Your clinician can look at it with you.
# "Louder" is said of daily speech alone. One vowel can be louder while speech stays as soft as it was.
report-client-vowel-early-shown = Loudness in { $exercise }: it is too early to tell whether it is changing.
report-client-vowel-same-shown = Loudness in { $exercise }: about the same as at first.
report-client-vowel-more-shown = Loudness in { $exercise }: it has gone up in this one sound. That does not tell how loud your everyday speech is.
report-client-vowel-less-shown = Loudness in { $exercise }: it has gone down in this one sound. Your clinician can look at it with you.
report-client-level-early-shown = Loudness in { $exercise }: it is too early to tell whether it is changing.
report-client-level-same-shown = Loudness in { $exercise }: about the same as at first.
report-client-level-more-shown = Loudness in { $exercise }: louder than at first, by more than your usual ups and downs.
report-client-level-less-shown = Loudness in { $exercise }: softer than at first, by more than your usual ups and downs. Your clinician can look at it with you.
report-client-range-early-shown = Range from low to high in { $exercise }: it is too early to tell whether it is changing.
report-client-range-same-shown = Range from low to high in { $exercise }: about the same as at first.
report-client-range-more-shown = Range from low to high in { $exercise }: wider than at first, by more than your usual ups and downs.
report-client-range-less-shown = Range from low to high in { $exercise }: narrower than at first, by more than your usual ups and downs. Your clinician can look at it with you.
report-client-microphone-shown = The microphone or its place changed on { $date }; “at first” means from then on.
report-client-programme-shown = What changed in your programme
report-client-change-added-shown = New: { $exercise }.
report-client-change-removed-shown = No longer: { $exercise }.
report-client-change-dose-shown = Changed: { $exercise }.
report-client-change-repetitions-shown = { $exercise }: now { $to } times.
report-client-change-target-s-shown = { $exercise }: the goal is now { $to } seconds.
report-client-change-hold-s-shown = { $exercise }: now held for { $to } seconds.
report-client-change-plan-shown = Your days or times changed.
report-client-care-shown = If you feel dizzy or something hurts, say “stop” and tell your clinician.
report-client-foot-shown = These pages are for you and your clinician. They make no diagnosis.

# --- the command ---------------------------------------------------------------------------------------------------------------
report-written-shown = Saved to { $file }

# --- a letter to another clinician -----------------------------------------------------------------------------------------------
report-letter-document-shown = Letter about { $client }, { $span }
report-letter-title-shown = Home practice of { $client }
report-letter-intro-shown = This letter tells what was recorded during home practice, { $span }.
report-letter-safety-shown = Stops and warning signs
report-letter-practice-shown = Practice
report-letter-dose-shown = Minutes and repetitions
report-letter-measures-shown = Measures
report-letter-goals-shown = Goals
report-letter-ratings-shown = Own ratings, 0 to 10
report-letter-left-out-shown = Left out, and why
report-letter-programme-shown = Changes in the programme
report-letter-nothing-shown = Nothing recorded.
report-letter-yours-shown = Assessment and signature
report-letter-blank-shown = (for you to write)

# --- a page for whoever helps at home --------------------------------------------------------------------------------------------
report-carer-document-shown = For the helper of { $client }, { $span }
report-carer-title-shown = For whoever helps { $client }
report-carer-wrong-shown = Stops and warning signs
report-carer-well-shown = Nobody stopped because of feeling unwell.
report-carer-tell-shown = Tell the clinician about this before the next practice.
report-carer-waits-shown = Waiting for the clinician
report-carer-waits-line-shown = These are left out until the clinician agrees: { $list }.
report-carer-how-shown = How practice goes
report-carer-goals-shown = Goals
report-carer-help-shown = How you can help
report-carer-help-1-shown = Make the room quiet, and turn the television off.
report-carer-help-2-shown = Check that the microphone is plugged in, and always stands in the same place.
report-carer-help-3-shown = If a voice is too soft to be heard, you may say the commands: “ready”, “done”, “stop”.
report-carer-help-4-shown = Let the person do the exercises alone. Don’t count along, and don’t hurry them.
report-carer-stop-shown = When to end a practice
report-carer-stop-1-shown = Say “stop” at once if somebody is dizzy, in pain, sick or out of breath. It stops straight away.
report-carer-stop-2-shown = If somebody chokes, has chest pain or can’t breathe, call the emergency number at once.
report-carer-stop-3-shown = Give no food, drink or pills during an exercise, unless the clinician has allowed small sips.
report-carer-stop-4-shown = If the voice sounds wet, or a meal ends in coughing, tell the clinician.
