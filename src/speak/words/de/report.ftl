report-date-shown = { $day }. { $month } { $year }
report-day-month-shown = { $day }. { $month }
report-month-year-shown = { $month } { $year }
report-span-shown = { $from } bis { $to }
report-month-1-shown = Jan.
report-month-2-shown = Feb.
report-month-3-shown = März
report-month-4-shown = Apr.
report-month-5-shown = Mai
report-month-6-shown = Juni
report-month-7-shown = Juli
report-month-8-shown = Aug.
report-month-9-shown = Sept.
report-month-10-shown = Okt.
report-month-11-shown = Nov.
report-month-12-shown = Dez.
report-weekday-1-shown = Mo
report-weekday-2-shown = Di
report-weekday-3-shown = Mi
report-weekday-4-shown = Do
report-weekday-5-shown = Fr
report-weekday-6-shown = Sa
report-weekday-7-shown = So
report-measure-hold-s-shown = Haltedauer
report-measure-level-db-shown = Pegel
report-measure-f0-median-hz-shown = Median der F0
report-measure-f0-span-st-shown = Tonhöhenumfang
report-measure-f0-sd-st-shown = SD der F0
report-measure-level-slope-db-per-s-shown = Pegelverlauf
report-measure-step-db-shown = Lautstärkestufe
report-measure-step-st-shown = Tonhöhenstufe
report-measure-phrase-span-st-shown = Tonhöhenumfang
report-measure-phrase-rate-hz-shown = Sprechtempo
report-measure-phrase-level-db-shown = Pegel
report-measure-phrase-f0-hz-shown = Median der F0
report-measure-talk-level-db-shown = Pegel
report-measure-talk-f0-hz-shown = Median der F0
report-measure-pause-share-pct-shown = Anteil der Sprechpausen
report-measure-syllable-rate-hz-shown = Silbenrate
report-measure-syllable-irregularity-pct-shown = Unregelmäßigkeit der Silben
report-measure-named-count-shown = genannte Wörter
report-measure-cpps-db-shown = CPPS
report-measure-hnr-db-shown = HNR
report-measure-jitter-pct-shown = Jitter (lokal)
report-measure-shimmer-pct-shown = Shimmer (lokal)
report-unit-spl-shown = dB SPL
report-unit-rough-shown = dB SPL, grob
report-unit-relative-shown = dB, relativ
report-unit-mixed-shown = dB SPL und dB relativ
report-unit-words-shown = Wörter
report-figure-shown = { $value }
report-value-shown = { $value } { $unit }
report-interval-shown = { $low } bis { $high }
report-weighted-shown = { $weighting }-bewertet
report-at-cm-shown = { $cm } cm
report-document-shown = Übungsbericht, { $client }, { $span }
report-title-shown = Übungsbericht: { $client }
report-period-shown = { $span }, { $weeks ->
    [one] 1 Woche
   *[other] { $weeks } Wochen
}
report-made-shown = Erstellt am { $date } mit { $software }
report-levels-calibrated-shown = Pegel: { $unit }, { $terms }.
report-levels-relative-shown = Die Pegel sind relativ (nicht kalibriert): Vergleichen Sie sie nur innerhalb einer ununterbrochenen Reihe.
report-levels-mixed-shown = Pegel: teils kalibriert, teils relativ; siehe Tabellen.
report-glance-shown = Auf einen Blick
report-glance-nothing-shown = Keine Übungen zwischen { $from } und { $to }.
report-glance-nothing-last-shown = Keine Übungen zwischen { $from } und { $to }; die letzte war am { $last }.
report-glance-planned-shown = { $done } von { $prescribed } verordneten Wiederholungen gemacht ({ $pct } %); geübt an { $days } von { $planned } geplanten Tagen; letzte Übung am { $last }.
report-glance-planned-bare-shown = Geübt an { $days } von { $planned } geplanten Tagen; letzte Übung am { $last }.
report-glance-unplanned-shown = { $days ->
    [one] Geübt an 1 Tag;
   *[other] Geübt an { $days } Tagen;
} es waren keine Tage geplant, deshalb lassen sich versäumte Übungen nicht zählen. In den Übungen wurden { $done } von { $prescribed } Wiederholungen gemacht ({ $pct } %). Letzte Übung am { $last }.
report-glance-unplanned-bare-shown = { $days ->
    [one] Geübt an 1 Tag;
   *[other] Geübt an { $days } Tagen;
} es waren keine Tage geplant, deshalb lassen sich versäumte Übungen nicht zählen. Letzte Übung am { $last }.
report-glance-unsettled-shown = Warten auf Ihr Wort: { $list }. Niemand hat gesagt, dass Sie zugestimmt haben, deshalb { $n ->
    [one] wird die Übung
   *[other] werden die Übungen
} ausgelassen.
report-glance-stops-none-shown = Kein Abbruch wegen Beschwerden.
report-glance-stops-shown = { $n ->
    [one] 1 Abbruch wegen Beschwerden: { $list }.
   *[other] { $n } Abbrüche wegen Beschwerden: { $list }.
}
report-glance-signs-shown = Einmal wöchentlich nach dem Schlucken gefragt, bejaht oder nicht sicher: { $list }.
report-counted-shown = { $what } ({ $n }×)
report-glance-beyond-shown = Stärker verändert, als die eigene Streuung erklärt: { $list }.
report-glance-within-shown = Keine Veränderung über die eigene Streuung hinaus: { $list }.
report-glance-early-shown = Noch nicht zu beurteilen: { $list }.
report-glance-unmeasured-shown = In diesen Wochen wurde keine Stimmübung gemessen.
report-glance-word-shown = { $exercise } in { $routine } geht über die üblichen Grenzen hinaus, verantwortet von { $who }: { $why }.
report-glance-word-whole-shown = { $routine } als Ganzes geht über die üblichen Grenzen hinaus, verantwortet von { $who }: { $why }.
report-glance-breaks-shown = { $n ->
    [one] Die Reihen sind an 1 Stelle unterbrochen, in den Diagrammen nummeriert. Werte beiderseits werden nicht verglichen.
   *[other] Die Reihen sind an { $n } Stellen unterbrochen, in den Diagrammen nummeriert. Werte beiderseits werden nicht verglichen.
}
report-changed-shown = { $name } { $change }
report-series-shown = { $exercise }, { $measure }
report-panel-shown = { $exercise }: { $measure }, { $unit }
report-panel-bare-shown = { $exercise }: { $measure }
report-goals-shown = Ziele
report-goals-rule-measured-shown = Erreicht: Der typische Wert (Median der letzten 3 bis 5 Übungstage) hat das Ziel erreicht, und seine Veränderung gegenüber dem Ausgangswert liegt über der eigenen Streuung. Zu früh: weniger Tage, als dafür nötig sind, oder der Tag ist noch nicht da. Sonst: nicht erreicht.
report-goals-rule-by-hand-shown = Aktivitäten werden von Menschen abgehakt, nie vom Programm.
report-goal-shown = „{ $words }“ { $target } bis { $due }: { $state }.
report-goal-now-shown = „{ $words }“ { $target } bis { $due }: { $state }. Typischer Wert jetzt: { $now }.
report-goal-by-hand-shown = „{ $words }“ Bis { $due }: { $state }.
report-goal-at-least-shown = { $exercise }, { $measure } mindestens { $value }
report-goal-at-most-shown = { $exercise }, { $measure } höchstens { $value }
report-goal-activity-shown = eine Aktivität, ohne Messwert
report-goal-set-shown = { $date }, { $by }
report-goal-met-shown = erreicht
report-goal-met-marked-shown = erreicht, vermerkt von { $by } am { $date }
report-goal-not-met-shown = nicht erreicht
report-goal-not-met-marked-shown = nicht erreicht, vermerkt von { $by } am { $date }
report-goal-short-shown = nicht erreicht, der typische Wert liegt noch nicht dort
report-goal-within-scatter-shown = nicht erreicht, der typische Wert liegt dort, aber seine Veränderung innerhalb der eigenen Streuung
report-goal-no-trials-shown = zu früh, in den letzten vier Wochen keine Versuche
report-goal-few-days-shown = zu früh, zu wenige Tage mit Versuchen
report-goal-not-calibrated-shown = zu früh, die Pegel sind nicht kalibriert
report-goal-before-due-shown = zu früh, noch nicht erreicht, und der Tag ist noch nicht da
report-goal-not-marked-shown = zu früh, niemand hat es vermerkt
report-head-goal-goal-shown = Ziel, in eigenen Worten
report-head-goal-target-shown = Messwert und Zielwert
report-head-goal-set-shown = Gesetzt
report-head-goal-due-shown = Bis
report-head-goal-now-shown = Typisch jetzt
report-head-goal-state-shown = Stand
report-calendar-title-shown = Therapietreue: gemachte von den verordneten Wiederholungen
report-calendar-stops-shown = Abbrüche
report-calendar-percent-shown = %
report-calendar-described-planned-shown = Kalender { $span }: ein Kästchen für jeden Tag, gefüllt nach dem Anteil der gemachten Wiederholungen. Geübt an { $days } von { $planned } geplanten Tagen; { $done } von { $prescribed } Wiederholungen gemacht. Die Zahlen stehen in der Wochentabelle.
report-calendar-described-unplanned-shown = Kalender { $span }: ein Kästchen für jeden Tag mit Übung, gefüllt nach dem Anteil der gemachten Wiederholungen. Geübt an { $days } Tagen; { $done } von { $prescribed } Wiederholungen gemacht. Die Zahlen stehen in der Wochentabelle.
report-calendar-key-shown = Kästchen: geplanter oder geübter Tag, von unten gefüllt nach dem gemachten Anteil. Strich: nichts geplant.
report-calendar-key-stops-shown = Kästchen: geplanter oder geübter Tag, von unten gefüllt nach dem gemachten Anteil. Strich: nichts geplant. Kreuz: Abbruch wegen Beschwerden.
report-figure-done-shown = Gemacht
report-figure-done-value-shown = { $done } von { $prescribed } ({ $pct } %)
report-figure-days-shown = Tage
report-figure-days-planned-shown = { $days } von { $planned } geplanten
report-figure-days-value-shown = { $days }
report-figure-practices-shown = Übungszeiten
report-figure-minutes-shown = Übliche Dauer
report-figure-minutes-value-shown = { $minutes } min
report-figure-longest-gap-shown = Längste Lücke
report-figure-longest-gap-value-shown = { $days ->
    [one] 1 Tag
   *[other] { $days } Tage
}
report-figure-since-shown = Seit
report-figure-first-shown = Ausgangswert
report-figure-now-shown = Zuletzt
report-figure-change-shown = Veränderung
report-figure-counts-shown = Zählt ab
report-figure-counts-value-shown = ±{ $value } (MDC95)
report-figure-slope-shown = Je Woche
report-figure-trials-shown = Versuche
report-figure-trials-value-shown = { $n }
report-figure-trials-left-shown = { $n }, ausgelassen { $left }
report-figure-few-shown = zu wenige Tage
report-verdict-beyond-shown = { $change }, über der Streuung
report-verdict-within-shown = { $change }, innerhalb der Streuung
report-chart-described-shown = Diagramm von { $name } im Verlauf, { $span }. { $first } { $now } { $verdict } { $parted } Die Zahlen stehen in der Wochentabelle.
report-described-first-shown = Ausgangswert { $value }.
report-described-now-shown = Zuletzt { $value }.
report-described-verdict-shown = Veränderung { $change }; eine Veränderung zählt ab { $mdc }.
report-described-parted-shown = { $n ->
    [one] Die Reihe ist einmal unterbrochen.
   *[other] Die Reihe ist { $n }-mal unterbrochen.
}
report-gap-shown = Lücke von { $days } Tagen
report-key-shown = Zeichen
report-key-trial-shown = jeder Versuch
report-key-median-shown = Wochenmedian mit 95-%-Intervall
report-key-loose-shown = † wenige Tage: Das Intervall deckt weniger als 95 % ab
report-key-baseline-shown = Ausgangswert, Median mit Intervall
report-key-mdc-shown = ab hier zählt eine Veränderung (MDC95)
report-key-gap-shown = Lücke
report-key-break-shown = andere Unterbrechung
report-breaks-shown = Unterbrechungen
report-break-shown = { $number }: { $when }, { $why }
report-break-gap-shown = { $days } Tage ohne Versuch
report-break-microphone-shown = anderes Mikrofon: „{ $to }“, vorher „{ $from }“
report-break-gain-shown = Mikrofonverstärkung { $to }, vorher { $from }
report-break-calibration-shown = Pegel jetzt { $to }, vorher { $from }
report-scale-relative-shown = relativ
report-scale-sound-level-meter-shown = mit einem Schallpegelmesser kalibriert
report-scale-known-source-shown = mit einer bekannten Quelle kalibriert
report-scale-a-phone-s-number-rough-shown = mit der Zahl eines Telefons kalibriert, grob
report-break-calibration-other-shown = andere Kalibrierung
report-break-weighting-shown = Bewertung { $to }, vorher { $from }
report-break-distance-shown = Abstand { $to }, vorher { $from }
report-left-out-title-shown = Ausgelassen, und warum
report-left-out-none-shown = Es wurde nichts ausgelassen.
report-left-out-shown = { $n ->
    [one] { $exercise }: { $why }; am { $last }.
   *[other] { $exercise }: { $why }; { $n }-mal, zuletzt am { $last }.
}
report-events-title-shown = Abbrüche und Anmerkungen
report-events-none-shown = Keine Abbrüche und keine Anmerkungen.
report-stop-shown = { $n ->
    [one] Abbruch, { $why }, bei { $where }; am { $last }.
   *[other] Abbruch, { $why }, bei { $where }; { $n }-mal, zuletzt am { $last }.
}
report-stop-after-shown = { $n ->
    [one] Abbruch, { $why }, nach { $where }; am { $last }.
   *[other] Abbruch, { $why }, nach { $where }; { $n }-mal, zuletzt am { $last }.
}
report-stop-outside-shown = { $n ->
    [one] Abbruch, { $why }, zwischen den Übungen; am { $last }.
   *[other] Abbruch, { $why }, zwischen den Übungen; { $n }-mal, zuletzt am { $last }.
}
report-note-shown = { $n ->
    [one] { $what }; am { $last }.
   *[other] { $what }; { $n }-mal, zuletzt am { $last }.
}
report-note-in-shown = { $what } ({ $exercise })
report-note-trouble-shown = { $why }
report-note-calibration-void-shown = { $text }
report-note-loud-limit-shown = Die laute Zeit erreichte die Grenze des Übungsplans
report-note-fall-shown = { $text }: innerhalb einer Übung stärker gesunken als die übliche Streuung
report-note-sound-lost-shown = Ton ging zwischen Mikrofon und Programm verloren
report-note-ended-early-shown = Übung vorzeitig beendet: { $why }
report-note-clock-shown = { $n ->
    [one] 1 Übung trägt ein früheres Datum als die Übung davor: Die Uhr wurde zurückgestellt. Das Datum kann falsch sein.
   *[other] { $n } Übungen tragen ein früheres Datum als die Übung davor: Die Uhr wurde zurückgestellt. Die Daten können falsch sein.
}
report-more-shown = { $n ->
    [one] Eine weitere in den Tabellen.
   *[other] { $n } weitere in den Tabellen.
}
report-sign-shown = Schlucken, { $what }: ja { $yes }×, nicht sicher { $unsure }×; zuletzt am { $last }.
report-sign-unsure-shown = { $what } (nicht sicher)
report-missed-shown = Versäumte geplante Tage, nach eigenen Angaben: { $list }.
report-programme-title-shown = Änderungen am Übungsplan
report-programme-none-shown = Nichts geändert.
report-programme-shown = { $date }, { $routine }: { $list }.
report-change-routine-begun-shown = begonnen mit { $n ->
    [one] 1 Übung
   *[other] { $n } Übungen
}
report-change-routine-replaced-shown = ersetzt durch { $by }
report-change-added-shown = { $exercise } hinzugefügt ({ $dose })
report-change-removed-shown = { $exercise } entfernt
report-change-dose-shown = { $exercise }, { $field } { $from } → { $to }
report-change-stage-shown = { $exercise }, Stufe { $from } → { $to } ({ $dose })
report-change-order-shown = andere Reihenfolge
report-change-plan-shown = Tage { $from } → { $to }
report-change-setting-shown = { $field } { $from } → { $to }
report-foot-shown = Eine Übungshilfe, die misst und aufzeichnet. Sie stellt keine Diagnose.
report-why-dizzy-shown = Schwindel
report-why-pain-shown = Schmerzen
report-why-help-shown = Bitte um Hilfe
report-why-hurts-shown = Schmerzen
report-why-chest-pain-shown = Schmerzen in der Brust
report-why-can-t-breathe-shown = Atemnot
report-why-choking-shown = Verschlucken
report-why-feels-sick-shown = Übelkeit
report-why-cough-at-meals-shown = Husten oder Verschlucken beim Essen
report-why-wet-voice-shown = feuchte Stimme nach dem Essen
report-why-weight-loss-shown = Gewichtsverlust
report-why-chest-infection-shown = Infektion von Lunge oder Bronchien
report-why-not-well-shown = nicht wohl
report-why-too-tired-shown = zu müde
report-why-no-time-shown = keine Zeit
report-why-forgot-shown = vergessen
report-why-something-else-shown = ein anderer Grund
report-why-unwell-shown = es ging nicht gut
report-why-no-spoken-agreement-shown = keine gesprochene Zustimmung
report-why-loud-time-limit-shown = laute Zeit aufgebraucht
report-why-practice-limit-shown = so viel, wie eine Übungszeit fassen darf
report-why-day-limit-shown = so viel, wie ein Tag fassen darf
report-why-time-limit-shown = die Übung dauerte so lange, wie sie darf
report-why-skipped-shown = durch Zuruf übersprungen
report-why-went-back-shown = zurückgegangen
report-why-no-answer-shown = keine Antwort
report-why-finished-early-shown = vor dem Ende durch Zuruf beendet
report-why-finished-shown = durch Zuruf beendet
report-why-interrupted-shown = unterbrochen
report-why-no-agreement-shown = keine gesprochene Zustimmung
report-why-duration-shown = Haltedauer
report-why-level-shown = Pegel
report-why-not-reached-shown = nicht erreicht: Übung { $why }
report-why-abandoned-shown = abgebrochen
report-why-completed-shown = vollständig
report-why-loudspeaker-too-loud-shown = Lautsprecher zu laut für das Mikrofon
report-why-room-too-loud-shown = Raum zu laut zum Messen
report-why-room-talks-shown = Andere Menschen redeten im Raum
report-why-microphone-clips-shown = Mikrofon übersteuert
report-why-microphone-gain-shown = Mikrofon änderte seine eigene Lautstärke
report-why-microphone-silent-shown = Vom Mikrofon kam gar kein Ton
report-why-cut-off-shown = durch einen Zuruf abgeschnitten
report-why-in-noise-shown = der Raum war zu laut
report-why-masked-shown = das Programm sprach darüber
report-why-auto-gain-shown = das Mikrofon änderte seine eigene Lautstärke
report-why-clipped-shown = übersteuert
report-why-misdated-shown = das Datum kann nicht stimmen
report-why-done-shown = „fertig“
report-why-next-cue-shown = das nächste Zeichen
report-why-yes-shown = ja
report-why-no-shown = nein
report-why-not-sure-shown = nicht sicher
report-field-repetitions-shown = Wiederholungen
report-field-sets-shown = Durchgänge
report-field-rest-s-shown = Ruhe, s
report-field-target-s-shown = Ziel, s
report-field-hold-s-shown = Halten, s
report-field-length-s-shown = Dauer, s
report-field-target-db-shown = Ziel, dB
report-field-feedback-every-shown = Ergebnis gesagt nach je so vielen Versuchen
report-field-phases-shown = Phasen
report-field-posture-shown = Haltung
report-field-ratings-shown = Einschätzungen nach der Übung
report-field-weekly-questions-shown = Fragen zur Woche
report-field-agreement-months-shown = Monate, für die eine Zustimmung gilt
report-abbreviation-mdc-shown = MDC95: die kleinste Veränderung, die größer ist als die eigene Streuung (minimal detectable change, 95 %)
report-abbreviation-spl-shown = dB SPL: Schalldruckpegel in Dezibel, wie ihn ein Schallpegelmesser zeigt
report-abbreviation-relative-shown = dB, relativ: Dezibel auf der eigenen Skala dieses Mikrofons
report-abbreviation-weighted-shown = A-bewertet: Tiefe Töne zählen weniger, etwa so, wie das Ohr sie hört
report-abbreviation-st-shown = st: Halbtöne, zwölf auf eine Oktave
report-abbreviation-f0-shown = F0: Grundfrequenz, die Höhe der Stimme
report-abbreviation-hz-shown = Hz: Schwingungen je Sekunde
report-abbreviation-sd-shown = SD: Standardabweichung, wie weit Werte auseinanderliegen
report-abbreviation-cpps-shown = CPPS: geglättete cepstrale Spitzenprominenz, wie weit die Stimme aus ihrem eigenen Rauschen ragt
report-abbreviation-hnr-shown = HNR: Verhältnis von Klang zu Rauschen
report-abbreviation-jitter-shown = Jitter: wie ungleich lang die Schwingungen sind
report-abbreviation-shimmer-shown = Shimmer: wie ungleich stark die Schwingungen sind
report-table-by-group-shown = Minuten und Wiederholungen nach Übungsgruppe
report-table-by-group-note-shown = Minuten vom Beginn einer Übung bis zu ihrem Ende, mit den Erholungen darin.
report-table-by-day-shown = Minuten und Wiederholungen nach Tag
report-table-by-day-note-shown = Minuten/Wiederholungen. Minuten ganzer Übungszeiten, mit dem, was zwischen den Übungen gesagt wird.
report-head-group-shown = Übungsgruppe
report-head-minutes-shown = Minuten
report-head-repetitions-shown = Wiederholungen
report-head-sum-shown = Woche
report-group-other-shown = Andere Übungen
report-condition-cueing-shown = Hilfestellung
report-cueing-questions-shown = Wortfragen: { $n }; ohne Hinweis beantwortet { $alone }, nach einem Hinweis { $hinted }, nicht beantwortet { $rest }.
report-cueing-again-shown = { $n ->
    [0] Es wurde nie gebeten, etwas zu wiederholen.
    [one] Einmal wurde gebeten, etwas zu wiederholen.
   *[other] { $n }-mal wurde gebeten, etwas zu wiederholen.
}
report-cueing-no-answer-shown = { $n ->
    [0] Keine Wiederholung entfiel, weil niemand antwortete.
    [one] 1 Wiederholung entfiel, weil niemand antwortete.
   *[other] { $n } Wiederholungen entfielen, weil niemand antwortete.
}
report-cueing-led-shown = Das Programm leitete jede Wiederholung laut an; wie viel davon nötig war, ist nicht aufgezeichnet.
report-cueing-carer-shown = Hilfe durch Angehörige oder Pflegende: nicht aufgezeichnet.
report-moments-shown = Wann es mit der Stimme klappte, von der Person selbst erzählt
report-moments-note-shown = Einmal wöchentlich am Ende einer Übung laut erzählt. Mitgeschrieben hat ein Programm: Es kann sich verhört haben. Eine Aufnahme lässt sich auf der Seite der Übung abspielen.
report-head-moment-day-shown = Tag
report-head-moment-told-shown = Erzählt
report-moment-text-shown = „{ $text }“
report-moment-sound-shown = Aufgenommen, { $s } s: Übung { $n }, bis { $until }.
report-moment-gone-shown = Erzählt; die Aufnahme wird nicht mehr aufbewahrt.
report-moment-line-shown = { $date }: { $told }
report-baseline-shown = Ausgangs- und Nachmessung, getrennt vom Üben
report-head-baseline-what-shown = Messwert
report-head-baseline-first-shown = Ausgangsmessung
report-head-baseline-latest-shown = Letzte Nachmessung
report-head-baseline-change-shown = Unterschied
report-head-baseline-practice-shown = Beim Üben
report-head-baseline-published-shown = Veröffentlichte Werte
report-baseline-best-shown = { $value }, der beste von { $trials }
report-baseline-middle-shown = { $value }, der mittlere von { $trials }
report-baseline-left-shown = { $told } ({ $n } weitere zählten nicht)
report-baseline-other-shown = nicht vergleichbar: anderes Mikrofon, anderer Platz oder andere Skala, oder es ist nicht angegeben
report-baseline-unknown-shown = { $change }; eigene Streuung noch nicht bekannt
report-baseline-within-shown = { $change }, innerhalb der eigenen Streuung ({ $mdc })
report-baseline-beyond-shown = { $change }, über der eigenen Streuung ({ $mdc })
report-baseline-practice-shown = { $value }
report-baseline-norm-shown = { $who }: { $text }
report-baseline-no-norm-shown = kein Normwert bekannt
report-baseline-norm-below-shown = siehe unten
report-baseline-of-source-shown = { $list } ({ $source })
report-baseline-published-shown = Veröffentlicht, { $name }: { $list }.
report-baseline-line-shown = { $name }: { $value } am { $date }
report-baseline-retest-shown = { $first }; { $value } am { $date } ({ $change })
report-baseline-led-shown = { $date }
report-baseline-led-part-shown = { $date } (nicht bis zum Ende)
report-baseline-days-shown = Durchgeführt am { $list }.
report-baseline-microphone-unknown-shown = Mikrofon nicht bekannt
report-baseline-conditions-shown = { $date }: { $microphone }; Pegel { $level }.
report-baseline-source-seen-shown = { $source }
report-baseline-source-second-hand-shown = { $source } (aus zweiter Hand)
report-baseline-source-memory-shown = { $source } (aus dem Gedächtnis)
report-baseline-source-common-practice-shown = { $source } (gängige Praxis)
report-baseline-note-shown = Die Aufgaben sind jedes Mal dieselben. Neben einem Unterschied steht die kleinste Veränderung, die über die eigene Streuung der Person hinausgeht; diese Streuung stammt aus dem Üben. Veröffentlichte Werte sind Mittelwerte von Gruppen, unter anderen Bedingungen gemessen: Über einen einzelnen Menschen sagen sie nichts, und keine Zahl hier ist eine Diagnose.
report-ratings-shown = Eigene Einschätzungen, 0 bis 10
report-ratings-note-shown = Nach eigenen Angaben. Anstrengung, Müdigkeit und Schmerzen: 0 ist keine, 10 das Äußerste. Stimme: 0 ist am schlechtesten, 10 am besten.
report-rating-effort-shown = Anstrengung
report-rating-tiredness-shown = Müdigkeit
report-rating-pain-shown = Schmerzen
report-rating-voice-shown = Stimme im Alltag
report-rating-of-practice-shown = nach der Übung
report-rating-of-week-shown = über die Woche
report-head-rating-what-shown = Einschätzung
report-head-rating-median-shown = Median
report-head-rating-range-shown = Niedrigste bis höchste
report-head-rating-latest-shown = Letzte
report-head-rating-times-shown = Einschätzungen (übergangen)
report-rating-name-shown = { $what }, { $over }
report-rating-latest-shown = { $value } am { $date }
report-rating-line-shown = { $name }: Median { $median } ({ $range }), zuletzt { $latest }; { $n ->
    [one] 1 Einschätzung
   *[other] { $n } Einschätzungen
}
report-soap-ratings-shown = Eigene Einschätzungen, 0 bis 10:
report-soap-ratings-none-shown = Eigene Einschätzungen: keine aufgezeichnet.
report-soap-title-shown = Text für die Akte
report-soap-hint-shown = Ein Klick wählt alles aus, zum Kopieren und Einfügen. Die Beurteilung schreiben Sie.
report-soap-of-shown = Häusliches Üben von { $client }, { $span }
report-soap-subjective-shown = Subjektiv
report-soap-objective-shown = Objektiv
report-soap-assessment-shown = Beurteilung
report-soap-plan-shown = Plan
report-soap-own-words-shown = Ziele in eigenen Worten:
report-soap-quoted-shown = „{ $words }“
report-soap-stops-shown = Während der Übung gesagt:
report-soap-signs-shown = Auf die wöchentliche Frage nach dem Schlucken gesagt:
report-soap-by-group-shown = Nach Übungsgruppe (Minuten vom Beginn einer Übung bis zu ihrem Ende):
report-soap-group-shown = { $group }: { $minutes } min, { $repetitions } Wiederholungen, an { $days ->
    [one] 1 Tag
   *[other] { $days } Tagen
}
report-soap-by-day-shown = Nach Tag, Minuten/Wiederholungen ganzer Übungszeiten, eine Zeile je Woche ab Montag:
report-soap-cueing-shown = Hilfestellung:
report-soap-measured-shown = Messwerte, verglichen mit der eigenen Streuung:
report-soap-measure-early-shown = { $name }: noch nicht zu sagen, ob es sich verändert.
report-soap-measure-within-shown = { $name }: anfangs { $first }, jetzt { $now }. Veränderung { $change }, innerhalb der Streuung (MDC95 { $mdc }).
report-soap-measure-beyond-shown = { $name }: anfangs { $first }, jetzt { $now }. Veränderung { $change }, über der Streuung (MDC95 { $mdc }).
report-soap-goals-shown = Ziele:
report-soap-left-out-shown = Ausgelassen, und warum:
report-soap-programme-shown = Was sich am Übungsplan geändert hat:
report-soap-programme-none-shown = Am Übungsplan hat sich nichts geändert.
report-soap-levels-mixed-shown = Die Pegel waren teils kalibriert, teils relativ; die Zahlen hier sind die der letzten Reihe.
report-soap-yours-shown = (von Ihnen zu schreiben)
report-soap-decide-shown = (von Ihnen zu entscheiden; das Programm unternimmt von sich aus nichts)
report-soap-proposed-shown = Zu bedenken:
report-propose-goal-met-shown = Ein Ziel ist erreicht: { $words } Ein neues Ziel oder ein nächster Schritt?
report-propose-goal-not-met-shown = Ein Ziel ist bis zu seinem Tag nicht erreicht: { $words } Ein anderer Tag, ein anderes Ziel oder eine andere Dosis?
report-propose-longer-shown = { $exercise }: { $reached } der letzten { $of } erreichten das Ziel von { $target } s. Ein längeres Ziel?
report-propose-shorter-shown = { $exercise }: { $reached } der letzten { $of } erreichten das Ziel von { $target } s. Ein kürzeres Ziel?
report-propose-stops-shown = Es gab Abbrüche wegen Beschwerden: Sehen Sie sie an, bevor eine Dosis erhöht wird.
report-propose-signs-shown = Es gab Warnzeichen beim Schlucken: Sehen Sie vor allem anderen auf die Schluckübungen.
report-propose-agreement-shown = Mangels Zustimmung ausgelassen: { $list }. Zustimmen oder herausnehmen?
report-tables-title-shown = Tabellen und Bedingungen
report-table-measures-shown = Messwerte
report-table-measures-note-shown = Eine Zeile für jede ununterbrochene Reihe; Messwerte ohne Diagramm zeigen nur die letzte. Ausgangswert: Median der ersten Tage mit seinem Intervall. MDC95: die kleinste Veränderung, die größer ist als die eigene Streuung (minimal detectable change, 95 %). Trend: Steigung nach Theil–Sen (die mittlere der Steigungen zwischen allen Paaren von Tagen) mit ihrem 95-%-Intervall. † deckt weniger als 95 % ab: Es waren wenige Tage.
report-table-quality-note-shown = CPPS, HNR, Jitter, Shimmer: Schon eine lautere Stimme lässt sie besser aussehen, und Mikrofon und Raum verändern sie.
report-table-weeks-shown = Wochen
report-table-weeks-note-shown = Wochenmediane der Tagesmediane mit 95-%-Intervallen. † Deckt weniger als 95 % ab: Es waren wenige Tage. Zwei Zeilen für eine Woche bedeuten, dass eine Reihe in ihr unterbrochen ist.
report-head-measure-shown = Übung und Messwert
report-head-stretch-shown = Tage
report-head-first-shown = Ausgangswert
report-head-latest-shown = Zuletzt
report-head-change-shown = Veränderung
report-head-mdc-shown = MDC95
report-head-slope-shown = Trend je Woche
report-head-trials-shown = Versuche (ausgelassen)
report-head-week-shown = Woche ab
report-head-days-shown = Tage
report-head-done-shown = Gemacht
report-cell-of-shown = { $a } von { $b }
report-cell-percent-shown = { $done } von { $prescribed }, { $pct } %
report-cell-median-shown = { $value } ({ $interval })
report-cell-loose-shown = { $interval }†
report-cell-trials-shown = { $n } ({ $left })
report-cell-none-shown = –
report-cell-slope-shown = { $slope } ({ $interval })
report-cell-beyond-shown = { $change } *
report-table-star-shown = * über der eigenen Streuung.
report-conditions-title-shown = Bedingungen
report-condition-microphone-shown = Mikrofon
report-condition-microphone-value-shown = „{ $name }“ ({ $system }, { $rate } Hz, Verstärkung { $gain }); { $span }, { $n ->
    [one] 1 Versuch
   *[other] { $n } Versuche
}
report-condition-microphone-unknown-shown = Nicht aufgezeichnet; { $span }, { $n ->
    [one] 1 Versuch
   *[other] { $n } Versuche
}
report-condition-level-shown = Pegel
report-condition-level-value-shown = { $unit }, { $terms }; { $span }, { $n ->
    [one] 1 Versuch
   *[other] { $n } Versuche
}
report-condition-calibration-shown = Kalibrierung
report-condition-discarded-shown = Ausgelassen
report-condition-discarded-none-shown = Nichts.
report-condition-discarded-value-shown = { $exercise }: { $list }.
report-condition-trials-shown = Versuche
report-condition-trials-value-shown = { $n ->
    [one] 1 Versuch in diesen Wochen
   *[other] { $n } Versuche in diesen Wochen
}.
report-condition-best-shown = Bester von dreien
report-condition-best-value-shown = { $exercise }: zuletzt { $best } von { $trials }, am { $date }.
report-condition-software-shown = Programm
report-condition-routines-shown = Übungspläne
report-condition-routine-value-shown = { $routine }: { $n ->
    [one] 1 Übungszeit
   *[other] { $n } Übungszeiten
}, { $span }.
report-condition-method-shown = Verfahren
report-condition-method-value-shown = Ausgangswert: die ersten fünf Tage mit Versuchen. Streuung: die größere von Versuch zu Versuch (innerhalb der Tage) und von Tag zu Tag. MDC95 = 1,96·√2·Streuung. Eine Reihe wird durch eine Lücke unterbrochen und durch alles, was Werte unvergleichbar macht; über eine Unterbrechung hinweg wird nichts berechnet.
report-calibration-none-shown = nicht kalibriert
report-calibration-void-shown = Kalibrierung nicht mehr gültig
report-calibration-meter-shown = mit einem Schallpegelmesser kalibriert
report-calibration-source-shown = mit einer bekannten Quelle kalibriert
report-calibration-rough-shown = mit der Zahl eines Telefons kalibriert, grob
report-distance-unknown-shown = Abstand nicht bekannt
report-time-energy-mean-shown = Energiemittel über den stimmhaften Teil
report-all-left-out-shown = Alles Ausgelassene
report-all-events-shown = Alle Abbrüche und Anmerkungen
report-all-programme-shown = Alle Änderungen am Übungsplan
report-all-breaks-shown = Alle Unterbrechungen
report-client-title-shown = Ihr Üben, { $client }
report-client-span-shown = { $span }
report-client-nothing-shown = In diesen Wochen haben Sie nicht geübt. Sie können jederzeit wieder anfangen.
report-client-days-shown = { $days ->
    [one] Sie haben an 1 Tag geübt.
   *[other] Sie haben an { $days } Tagen geübt.
}
report-client-days-planned-shown = Sie haben an { $days ->
    [one] 1 Tag
   *[other] { $days } Tagen
} geübt; { $planned ->
    [one] 1 war geplant.
   *[other] { $planned } waren geplant.
}
report-client-weeks-shown = Ihre { $weeks ->
    [one] letzte Woche
   *[other] letzten { $weeks } Wochen
}
report-client-weeks-key-shown = Voller Kreis: Sie haben geübt. Leerer Kreis: Sie haben nicht geübt.
report-client-weeks-described-shown = { $list }.
report-client-week-described-shown = Woche ab { $day }: { $days ->
    [one] 1 Tag
   *[other] { $days } Tage
}
report-client-goals-shown = Ihre Ziele
report-client-goal-met-shown = „{ $words }“ Erreicht.
report-client-goal-not-met-shown = „{ $words }“ Nicht erreicht. In der Therapie können Sie gemeinsam darauf schauen.
report-client-goal-time-left-shown = „{ $words }“ Noch nicht. Es ist noch Zeit bis { $due }.
report-client-goal-too-early-shown = „{ $words }“ Das lässt sich noch nicht sagen.
report-client-moments-shown = Wann es mit Ihrer Stimme klappte
report-client-moment-text-shown = { $date }: „{ $text }“
report-client-moment-sound-shown = { $date }: Sie haben davon erzählt. Ihre Aufnahme wird bis { $until } aufbewahrt.
report-client-voice-shown = Ihre Stimme
report-client-hold-first-shown = { $exercise }: bisher etwa { $now } Sekunden. Was für Sie üblich ist, lässt sich noch nicht sagen.
report-client-hold-early-shown = { $exercise }: Sie halten es meist etwa { $now } Sekunden. Ob sich das ändert, lässt sich noch nicht sagen.
report-client-hold-same-shown = { $exercise }: jetzt etwa { $now } Sekunden, anfangs etwa { $first }. Das liegt in Ihrem üblichen Auf und Ab.
report-client-hold-more-shown = { $exercise }: jetzt etwa { $now } Sekunden, anfangs etwa { $first }. Das ist länger, um mehr als Ihr übliches Auf und Ab.
report-client-hold-less-shown = { $exercise }: jetzt etwa { $now } Sekunden, anfangs etwa { $first }. Das ist kürzer, um mehr als Ihr übliches Auf und Ab. In der Therapie können Sie gemeinsam darauf schauen.
report-client-vowel-early-shown = Lautstärke bei { $exercise }: Ob sie sich ändert, lässt sich noch nicht sagen.
report-client-vowel-same-shown = Lautstärke bei { $exercise }: etwa wie am Anfang.
report-client-vowel-more-shown = Lautstärke bei { $exercise }: Bei diesem einen Laut ist sie gestiegen. Wie laut Sie im Alltag sprechen, sagt das nicht.
report-client-vowel-less-shown = Lautstärke bei { $exercise }: Bei diesem einen Laut ist sie gesunken. In der Therapie können Sie gemeinsam darauf schauen.
report-client-level-early-shown = Lautstärke bei { $exercise }: Ob sie sich ändert, lässt sich noch nicht sagen.
report-client-level-same-shown = Lautstärke bei { $exercise }: etwa wie am Anfang.
report-client-level-more-shown = Lautstärke bei { $exercise }: lauter als am Anfang, um mehr als Ihr übliches Auf und Ab.
report-client-level-less-shown = Lautstärke bei { $exercise }: leiser als am Anfang, um mehr als Ihr übliches Auf und Ab. In der Therapie können Sie gemeinsam darauf schauen.
report-client-range-early-shown = Umfang von tief bis hoch bei { $exercise }: Ob er sich ändert, lässt sich noch nicht sagen.
report-client-range-same-shown = Umfang von tief bis hoch bei { $exercise }: etwa wie am Anfang.
report-client-range-more-shown = Umfang von tief bis hoch bei { $exercise }: weiter als am Anfang, um mehr als Ihr übliches Auf und Ab.
report-client-range-less-shown = Umfang von tief bis hoch bei { $exercise }: enger als am Anfang, um mehr als Ihr übliches Auf und Ab. In der Therapie können Sie gemeinsam darauf schauen.
report-client-microphone-shown = Das Mikrofon oder sein Platz wurde am { $date } geändert; „anfangs“ meint seitdem.
report-client-programme-shown = Was sich an Ihrem Übungsplan geändert hat
report-client-change-added-shown = Neu: { $exercise }.
report-client-change-removed-shown = Nicht mehr: { $exercise }.
report-client-change-dose-shown = Geändert: { $exercise }.
report-client-change-repetitions-shown = { $exercise }: jetzt { $to }-mal.
report-client-change-target-s-shown = { $exercise }: Das Ziel sind jetzt { $to } Sekunden.
report-client-change-hold-s-shown = { $exercise }: jetzt { $to } Sekunden gehalten.
report-client-change-plan-shown = Ihre Tage oder Zeiten haben sich geändert.
report-client-care-shown = Wenn Ihnen schwindlig wird oder etwas wehtut, sagen Sie „stopp“, und sagen Sie es in der Therapie.
report-client-foot-shown = Diese Seiten sind für Sie und Ihre Therapie. Sie stellen keine Diagnose.
report-written-shown = Gespeichert in { $file }
report-letter-document-shown = Brief über { $client }, { $span }
report-letter-title-shown = Häusliches Üben von { $client }
report-letter-intro-shown = Dieser Brief gibt wieder, was beim häuslichen Üben aufgezeichnet wurde, { $span }.
report-letter-safety-shown = Abbrüche und Warnzeichen
report-letter-practice-shown = Üben
report-letter-dose-shown = Minuten und Wiederholungen
report-letter-measures-shown = Messwerte
report-letter-goals-shown = Ziele
report-letter-ratings-shown = Eigene Einschätzungen, 0 bis 10
report-letter-left-out-shown = Ausgelassen, und warum
report-letter-programme-shown = Änderungen am Übungsplan
report-letter-nothing-shown = Nichts aufgezeichnet.
report-letter-yours-shown = Beurteilung und Unterschrift
report-letter-blank-shown = (von Ihnen zu schreiben)
report-carer-document-shown = Für die helfende Person von { $client }, { $span }
report-carer-title-shown = Für alle, die { $client } helfen
report-carer-wrong-shown = Abbrüche und Warnzeichen
report-carer-well-shown = Niemand hat wegen Unwohlseins abgebrochen.
report-carer-tell-shown = Sagen Sie das vor der nächsten Übung in der Therapie.
report-carer-waits-shown = Wartet auf die Therapie
report-carer-waits-line-shown = Bis zur Zustimmung der Therapie ausgelassen: { $list }.
report-carer-how-shown = Wie das Üben läuft
report-carer-goals-shown = Ziele
report-carer-help-shown = Wie Sie helfen können
report-carer-help-1-shown = Sorgen Sie für Ruhe im Raum, und schalten Sie den Fernseher aus.
report-carer-help-2-shown = Prüfen Sie, ob das Mikrofon eingesteckt ist und immer am selben Platz steht.
report-carer-help-3-shown = Wenn eine Stimme zu leise ist, dürfen Sie die Befehle sagen: „bereit“, „fertig“, „stopp“.
report-carer-help-4-shown = Lassen Sie die Person die Übungen allein machen. Zählen Sie nicht mit, und drängen Sie nicht.
report-carer-stop-shown = Wann eine Übung zu beenden ist
report-carer-stop-1-shown = Sagen Sie sofort „stopp“, wenn jemandem schwindlig oder übel wird, etwas schmerzt oder der Atem fehlt. Es hält gleich an.
report-carer-stop-2-shown = Wenn jemand zu ersticken droht, Schmerzen in der Brust hat oder keine Luft bekommt, rufen Sie sofort den Notruf.
report-carer-stop-3-shown = Geben Sie während einer Übung kein Essen, kein Getränk und keine Tabletten, außer wenn die Therapie kleine Schlucke erlaubt hat.
report-carer-stop-4-shown = Wenn die Stimme feucht klingt oder eine Mahlzeit mit Husten endet, sagen Sie es in der Therapie.
