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
