page-title-shown = Übung
page-always-shown = Immer
page-exercise-shown = Übung
page-captions-shown = Was gesagt wird
page-log-shown = Was gesagt wurde
page-can-say-shown = Sie können sagen
page-more-shown = mehr
page-less-shown = weniger
page-everything-shown = Sie können auch sagen
page-settings-shown = Einstellungen
page-keys-shown = Tasten und Blattwender
page-keys-help-shown = Leertaste oder Bild ab: fertig. Bild auf: noch einmal. Punkt: Pause. S: überspringen. Y, N: ja, nein. Escape hält jederzeit an, auch wenn dies ausgeschaltet ist.
page-aloud-shown = Einen Bildschirmleser vorlesen lassen, was gesagt wird
page-messages-shown = Meldungen
page-done-shown = Was gemacht wurde
page-others-shown = Weitere Seiten
page-no-script-shown = Diese Seite braucht JavaScript. Die Übung läuft auch ohne sie weiter, von der Stimme angeleitet.
page-connecting-shown = Die Übung läuft weiter. Diese Seite verbindet sich neu.
page-ended-shown = Das Übungsprogramm ist beendet. Sie können diese Seite schließen.
page-anew-shown = tidecount wurde neu gestartet. Öffnen Sie die Adresse, die es ausgegeben hat.
page-refused-shown = Das ist nicht angekommen. Sagen Sie es, oder drücken Sie noch einmal.
page-speaking-shown = Spricht
page-listening-shown = Hört zu
page-holding-shown = Ich höre Sie
page-still-shown = Still
page-read-shown = Lesen
page-go-shown = Jetzt
page-rest-shown = Ruhen
page-turn-shown = Sie sind dran
page-paused-shown = Angehalten
page-heard-shown = Sie: „{ $words }“
page-held-shown = { $seconds } Sekunden gehalten.
page-seconds-held-shown = Sekunden gehalten
page-seconds-rest-shown = Sekunden Ruhe übrig
page-seconds-shown = Sekunden
page-count-shown = Zähler
page-syllables-shown = Silben
page-of-seconds-shown = von { $n } { $n ->
    [one] Sekunde
   *[other] Sekunden
}
page-of-shown = von { $n }
page-starting-shown = Die Übung beginnt gleich
page-broken-off-shown = Die Übung wurde abgebrochen. Das Gemessene ist gespeichert.
page-exercises-shown = { $done } von { $all } Übungen gemacht
page-done-of-shown = { $done } von { $all }
page-begun-shown = begonnen
page-left-out-shown = ausgelassen
page-loudness-shown = Lautstärke
page-usual-level-shown = so laut wie sonst
page-as-usual-shown = so laut wie sonst
page-louder-shown = { $n } dB lauter als sonst
page-softer-shown = { $n } dB leiser als sonst
page-level-shown = { $n } dB
page-voice-heard-shown = Ich höre Sie
page-pitch-shown = Tonhöhe
page-usual-voice-shown = Ihre übliche Stimme
page-first-note-shown = wo Sie begonnen haben
page-usual-note-shown = Ihr üblicher hoher Ton
page-semitones-higher-shown = { $n } { $n ->
    [one] Halbton
   *[other] Halbtöne
} höher
page-semitones-lower-shown = { $n } { $n ->
    [one] Halbton
   *[other] Halbtöne
} tiefer
page-same-pitch-shown = auf gleicher Tonhöhe
page-address-shown = Die Seite: { $address }

# The terminal's log of results

log-here-shown = { $name }: da
log-not-here-shown = { $name }: nicht da
log-not-asked-shown = { $name }: nicht gefragt
log-hold-shown = { $s } s gehalten, { $pitch }, { $level }
log-hold-cut-off-shown = { $s } s gehalten, { $pitch }, { $level }, abgebrochen
log-hz-shown = { $hz } Hz
log-no-hz-shown = keine Hz
log-posture-shown = Haltung: { $s } von { $of } s
log-phrase-shown = Satz: { $s } s, { $level }
log-talk-shown = Gespräch: { $s } s, { $pauses } Pausen, { $level }
log-syllables-shown = { $n } Silben, { $rate } pro Sekunde
log-left-out-shown = { $name } ausgelassen: { $why }
log-recogniser-shown = Die Erkennung wurde neu gestartet; { $s } s wurden nicht gehört.
log-room-loud-shown = Im Raum ist es zum Messen zu laut ({ $db } dB unter Vollaussteuerung).
log-room-quiet-shown = Im Raum ist es wieder leise genug.
log-in-noise-shown = Dieser Ton lag nur { $db } dB über dem Raum; seine Werte sind unsicher.
log-sound-lost-shown = { $s } s Ton sind verloren gegangen.

# A level in words, in the log and on pages: "72 dB(A) SPL at 30 cm", "-29 dB(A) relative"

level-relative-shown = { $db } dB({ $weighting }) relativ
level-spl-shown = { $db } dB({ $weighting }) SPL in 30 cm
level-rough-shown = { $db } dB({ $weighting }) SPL in 30 cm, GROB
level-none-shown = keine
level-auto-gain-shown = { $level }, nicht vergleichbar (automatische Verstärkung)
level-clipped-shown = { $level }, übersteuert

# The terminal's table at the end. Heads of columns: at most 5 letters for table-done and table-f0, 6 for the other figures.

table-exercise-shown = Übung
table-done-shown = getan
table-best-shown = max. s
table-mean-shown = Ø s
table-f0-shown = F0 Hz
table-level-shown = dB(A)
table-notes-shown = Bemerkungen
table-left-out-shown = ausgelassen: { $why }
table-stopped-shown = abgebrochen: { $why }
table-rate-shown = { $rate } Silben/s
table-right-shown = { $right } von { $all } richtig
table-clipped-shown = { $n } übersteuert
table-not-comparable-shown = Pegel nicht vergleichbar
table-masked-shown = { $n } unter unserer Stimme
table-none-shown = * relativ zur Vollaussteuerung: Das Mikrofon ist nicht kalibriert.
table-void-shown = * relativ zur Vollaussteuerung: Die Kalibrierung des Mikrofons gilt nicht mehr.
table-rough-shown = ~ grob: dB SPL in 30 cm nach der Anzeige eines Telefons
table-meter-shown = dB(A): dB SPL in 30 cm, energetisches Mittel, mit Schallpegelmesser kalibriert
table-source-shown = dB(A): dB SPL in 30 cm, energetisches Mittel, mit bekannter Quelle kalibriert
table-auto-gain-shown = Das Mikrofon hat seine Lautstärke selbst verstellt: Die Pegel sind nicht vergleichbar.
table-ended-shown = { $done } von { $all } Übungen gemacht; Ende: { $why }
table-ratings-shown = Eigene Einschätzung, 0 bis 10: { $list }
table-rating-shown = { $what } { $value }
table-moment-shown = Es wurde von einem Moment erzählt, in dem die Stimme gut ging; im Bericht steht, wo er ist.
table-signs-shown = Bitte in der Therapie erwähnen: { $list }
table-sign-shown = { $what } ({ $answer })
