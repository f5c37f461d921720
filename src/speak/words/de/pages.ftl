page-skip = Zum Inhalt springen
page-nav-label = Einrichtungsseiten
page-nav-start = Einrichtung
page-nav-microphone = Tonprobe
page-nav-calibration = Kalibrierung
page-nav-routines = Übungspläne
page-nav-cautions = Vorsicht
page-nav-enrolment = Ihre Stimme
page-nav-history = Verlauf
page-nav-progress = Fortschritt
page-nav-sound = Aufnahmen
page-nav-caseload = Fallübersicht
page-told-address = Die Einrichtungsseiten sind unter dieser Adresse offen, nur auf diesem Rechner. Strg-C schließt sie.
page-trouble-title = Das hat nicht geklappt
page-trouble-own = Diese Seite konnte wegen eines Fehlers im Programm nicht erstellt werden. Es wurde nichts geändert. Laden Sie die Seite neu.
page-practising = Gerade läuft eine Übung. Danach können Sie diese Seiten benutzen.
page-back-to-start = Zurück zur Einrichtung
page-no-such-button = Diesen Knopf gibt es hier nicht. Laden Sie die Seite neu.
page-yes = Ja
page-no = Nein
page-remove = Entfernen
page-break-off = Abbrechen
page-broken-off = Abgebrochen. Es wurde nichts aufbewahrt.
page-look-again = Stand prüfen
page-whose = Person
page-everybody = Alle
page-figures = Zahlen
page-figure-none = nicht bekannt
page-number-wrong = Geben Sie eine Zahl innerhalb dieser Grenzen ein.
page-sure-missing = Setzen Sie zuerst das Häkchen: Das lässt sich nicht rückgängig machen.
page-client-missing = Geben Sie an, für wen es ist.
page-no-model = Es gibt kein Erkennungsmodell, deshalb lässt sich der Haushalt nicht prüfen. Installieren Sie eines, oder nennen Sie seinen Ordner mit --model.
page-can-say = Sie können sagen: { $words }
page-level-label = Lautstärke jetzt
page-level-hint = Der Balken zeigt die Lautstärke jetzt. Der Strich darin ist der Grundpegel des Raums.
page-summary-title = { $n ->
    [one] Eines ist zu berichtigen
   *[other] { $n } Dinge sind zu berichtigen
}
page-title-faults = Zu berichtigen: { $title }
page-hint-limits = Von { $from } bis { $to }.
page-hint-default = Wenn leer: { $value }.
page-hint-optional = Das kann leer bleiben.
page-hint-a-line-each = Eines je Zeile.
page-not-for = Nicht für diese Menschen, wenn ihre eigene Therapie nichts anderes sagt:
page-cautions = Achten Sie darauf:
page-start-title = Einrichtung
page-start-lead = Was fertig ist und was noch fehlt, der Reihe nach.
page-start-then = Danach
page-start-then-one = Um den ganzen Tag auf eine Übung zu warten, starten Sie „tidecount attend“. Es beginnt, wenn jemand darum bittet.
page-start-then-two = Um jetzt eine zu beginnen, starten Sie „tidecount practise“ mit der Datei des Übungsplans.
page-standing-done = Fertig
page-standing-missing = Fehlt noch
page-standing-optional = Freigestellt
page-standing-again = Erneut prüfen
page-start-mic = Probieren Sie Mikrofon und Lautsprecher dort aus, wo geübt wird. Tun Sie es wieder, wenn Sie eines davon umstellen.
page-start-mic-works = Mikrofon und Lautsprecher funktionieren.
page-start-mic-trouble = Bei der letzten Probe war etwas zu berichtigen.
page-start-uncalibrated = Die Pegel sind relativ. Mit einem Schallpegelmesser werden sie zu Dezibel, die sich vergleichen lassen.
page-start-calibrated = Kalibriert am { $date }: { $device }.
page-start-calibration-void = Eine Kalibrierung gilt nicht mehr. Bis Sie neu kalibrieren, sind die Pegel relativ.
page-start-no-routine = Es gibt noch keinen Übungsplan. Schreiben Sie einen, oder übernehmen Sie das Paket Ihrer Therapie.
page-start-routine-faults = { $n } von { $of } Übungsplänen haben Fehler und können nicht geübt werden.
page-start-routines = { $n ->
    [one] Ein Übungsplan ist bereit.
   *[other] { $n } Übungspläne sind bereit.
} { $persons ->
    [0] Noch wurde niemand dafür ausgewählt. Das brauchen Sie nur für „attend“.
    [one] Eine Person übt.
   *[other] { $persons } Personen üben.
}
page-start-cautions-done = Nichts wartet auf die Zustimmung der Therapie.
page-start-cautions-open = Einige Übungen warten auf die Zustimmung der Therapie, für { $names }. Bis dahin werden sie ausgelassen, oder es wird laut danach gefragt.
page-start-no-voice = Wer oft falsch verstanden wird, kann dem Programm beibringen, wie er oder sie die Befehle sagt.
page-start-voice = Gelernt: { $names }.
page-start-no-practice = Noch keine Übung.
page-start-practices = { $n ->
    [one] Bisher eine Übung.
   *[other] Bisher { $n } Übungen.
}
page-field-mic = Mikrofon
page-field-speaker = Lautsprecher
page-device-default = Voreinstellung des Rechners
page-device-is-default = { $name } (Voreinstellung des Rechners)
page-device-gone = Dieses Gerät ist nicht mehr angeschlossen. Laden Sie die Seite neu, und wählen Sie ein anderes.
page-device-failed = Das Gerät ließ sich nicht benutzen: { $why }. Wenn ein anderes Programm es benutzt, schließen Sie dieses, und versuchen Sie es noch einmal.
page-device-busy-here = Eine andere dieser Seiten benutzt gerade Mikrofon oder Lautsprecher. Warten Sie, bis sie fertig ist, oder brechen Sie sie ab.
page-microphone-lead = Wählen Sie beide, probieren Sie den Lautsprecher, dann das Mikrofon. Es dauert eine halbe Minute.
page-microphone-kept = Die Geräte sind nur offen, solange Sie sie ausprobieren. Es wird kein Ton aufbewahrt.
page-speaker-title = Lautsprecher
page-speaker-lead = Sie hören einen Ton und einen Satz.
page-speaker-play = Ton und Satz abspielen
page-speaker-playing = Hören Sie: ein Ton, dann ein Satz.
page-speaker-heard = Haben Sie es deutlich gehört?
page-speaker-well = Gut. Probieren Sie jetzt das Mikrofon.
page-speaker-help = Stellen Sie den Lautsprecher lauter, prüfen Sie, ob er eingeschaltet und eingesteckt ist, oder wählen Sie oben einen anderen. Spielen Sie dann noch einmal ab.
page-spoken-test = So klinge ich. Wenn Sie mich gut hören, ist alles in Ordnung.
page-listen-title = Mikrofon
page-listen-lead = Bleiben Sie fünf Sekunden still. Dann spricht jemand fünf Sekunden lang wie beim Üben. Dann sagt das Programm einen Satz.
page-listen-start = Probe beginnen
page-listen-room = Bitte Ruhe. Ich höre den Raum an.
page-listen-speech = Sprechen Sie jetzt, so laut wie beim Üben. Sagen Sie die Wochentage.
page-listen-own = Danke. Jetzt spricht das Programm. Bitte bleiben Sie still.
page-mic-works = Es funktioniert
page-mic-head-dead = Es war nichts zu hören
page-mic-head-no-speech = Es war keine Stimme zu hören
page-mic-head-trouble = Etwas ist zu berichtigen
page-mic-dead = Vom Mikrofon kommt nur Stille. Ist es stummgeschaltet, ausgeschaltet oder das falsche?
page-mic-no-speech = Es war keine Stimme zu hören. Kommen Sie näher, sprechen Sie die ganzen fünf Sekunden, oder wählen Sie ein anderes Mikrofon.
page-mic-clips = Zu laut: Die lautesten Stellen sind abgeschnitten. Stellen Sie den Pegel des Mikrofons niedriger, oder setzen Sie sich weiter weg.
page-mic-room-loud = Der Raum ist zu laut für eine leise Stimme. Schließen Sie das Fenster, schalten Sie aus, was brummt oder spielt, oder stellen Sie den Pegel des Mikrofons niedriger.
page-mic-too-soft = Die Stimme ist zu leise: kaum lauter als der Raum. Rücken Sie das Mikrofon näher, oder stellen Sie seinen Pegel höher.
page-mic-changes-volume = Das Mikrofon ändert seine eigene Lautstärke, deshalb lassen sich Pegel nicht vergleichen. Schalten Sie in den Toneinstellungen des Rechners die automatische Verstärkung aus.
page-mic-own-voice = Das Mikrofon nimmt die Stimme des Programms zu stark auf. Stellen Sie den Lautsprecher leiser, oder rücken Sie ihn vom Mikrofon weg.
page-mic-lost = Es ging Ton verloren. Schließen Sie andere Programme, oder ziehen Sie das Mikrofon heraus, und stecken Sie es wieder ein.
page-figure-room = Raum, bezogen auf Vollaussteuerung
page-figure-voice = Stimme, bezogen auf Vollaussteuerung
page-figure-own = Stimme des Programms im Mikrofon, bezogen auf Vollaussteuerung
page-figure-clipped = An den Spitzen abgeschnitten
page-figure-lost = Verlorener Ton
page-calibration-lead = Ein kalibriertes Mikrofon liefert Dezibel, die sich von Woche zu Woche vergleichen lassen. Üben geht auch ohne.
page-calibration-kept = Kalibriert
page-calibration-none = Kein Mikrofon ist kalibriert; die Pegel sind relativ.
page-calibration-how = { $date }, mit: { $method }; { $level } bei { $at } cm.
page-calibration-scale = Mikrofon in { $distance } cm. Das Lauteste, was es verträgt, sind { $full } dB SPL in 30 cm (SPL: Schalldruckpegel).
page-calibration-void = Sie gilt nicht mehr: { $why }
page-calibration-forget = Löschen
page-calibration-forgotten = Die Kalibrierung ist gelöscht.
page-calibration-new = Kalibrieren
page-calibration-step-place = Stellen Sie das Mikrofon dorthin, wo es beim Üben bleibt. Schalten Sie automatische Verstärkung und Rauschunterdrückung aus.
page-calibration-step-meter = Stellen Sie den Schallpegelmesser daneben, auf A und Slow.
page-calibration-step-listen = Bleiben Sie { $quiet } Sekunden still. Halten Sie dann { $sound } Sekunden lang ein gleichmäßiges „Ah“, und lesen Sie dabei die Zahl ab.
page-calibration-listen = Zuhören beginnen
page-calibration-listening = Kalibrierung
page-calibration-quiet = Bitte Ruhe.
page-calibration-voice = Halten Sie jetzt ein gleichmäßiges „Ah“, und lesen Sie dabei die Zahl ab.
page-calibration-source = Schalten Sie jetzt die Quelle ein.
page-calibration-heard = { $length } s Ton gehört, { $level } dB({ $weighting }), { $over } dB über dem Raum; 0 dB ist das Lauteste, was das Mikrofon verträgt, und { $weighting } ist die Frequenzbewertung. Die Schwankung betrug { $spread } dB.
page-calibration-keep = Kalibrierung speichern
page-calibration-drop = Verwerfen
page-calibration-done = Kalibriert und gespeichert
page-field-method = Was den Pegel anzeigt
page-method-choose-meter = Ein Schallpegelmesser
page-method-choose-source = Eine Quelle mit bekanntem Pegel, etwa ein akustischer Kalibrator
page-method-choose-phone = Eine Pegel-App auf dem Telefon: Die Pegel bleiben als „grob“ gekennzeichnet
page-method-meter = ein Schallpegelmesser
page-method-source = eine Quelle mit bekanntem Pegel
page-method-phone = die Zahl eines Telefons (grob)
page-field-distance_cm = Vom Mund zum Mikrofon, cm
page-hint-distance = Wo es beim Üben bleibt. Wenn leer: 30.
page-field-reference_cm = Vom Mund zum Messgerät oder Telefon, cm
page-hint-reference = Wenn leer: wie beim Mikrofon.
page-field-weighting = Frequenzbewertung des Messgeräts
page-hint-weighting = Der Buchstabe hinter dB auf dem Messgerät.
page-weighting-usual = Üblich: A (Z bei einer Quelle)
page-field-level_db = Pegel, dB, wenn Sie ihn schon kennen
page-hint-level-before = Wenn leer: wird nach dem Zuhören gefragt.
page-field-level-read = Was es anzeigte, dB({ $weighting })
page-field-level-source = Der Pegel der Quelle, dB({ $weighting })
page-level-missing = Geben Sie die angezeigte Zahl ein.
page-enrolment-lead = Das Programm sagt jeden Befehl, und Sie sprechen ihn nach, dreimal. Es dauert etwa zehn Minuten. Sie können bei jedem Wort abbrechen.
page-enrolment-consent = Zuerst wird laut um Erlaubnis gefragt. Es wird kein Ton aufbewahrt, nur Zahlen zu jedem Wort. Sie bleiben auf diesem Rechner, und Sie können sie unten löschen.
page-enrolment-begin = Beginnen
page-enrolment-starting = Einen Augenblick: Das Programm bereitet sich auf das Zuhören vor.
page-enrolment-learnt = Eben gelernt
page-enrolment-nothing = Es wurde nichts gelernt und nichts aufbewahrt.
page-enrolment-kept = Was aufbewahrt ist
page-enrolment-none = Über niemandes Stimme ist etwas aufbewahrt.
page-enrolment-word = { $takes ->
    [one] einmal gesagt
   *[other] { $takes }-mal gesagt
}, { $day }, { $bytes } Byte Zahlen
page-enrolment-sure = Alles löschen, was über die Stimme von { $name } aufbewahrt ist. Das lässt sich nicht rückgängig machen.
page-enrolment-forget = Löschen
page-enrolment-forgotten = Gelöscht. Es ist nichts übrig.
page-field-whose = Wessen Stimme
page-field-client-name = Wessen Stimme
page-hint-client-name = Ein kurzer Name, derselbe wie im Übungsplan. Es muss kein echter Name sein.
page-cautions-lead = Einige Übungen dürfen nur gemacht werden, wenn die eigene Therapie zugestimmt hat. Lesen Sie die Hinweise zu jeder Übung, bevor Sie sie ankreuzen.
page-cautions-nobody = Hier ist noch niemand. Schreiben Sie einen Übungsplan mit einem Namen, oder wählen Sie aus, wer ihn übt.
page-cautions-none = Kein Übungsplan von { $name } braucht die Zustimmung der Therapie.
page-cautions-open = { $n ->
    [0] nichts wartet
    [one] eine Übung wartet
   *[other] { $n } Übungen warten
}
page-cautions-routines = In: { $names }.
page-cautions-no-routine = Diese Person hat zurzeit keinen Übungsplan damit.
page-cautions-box = Die Therapie hat dem für { $name } zugestimmt.
page-cautions-keep = Zustimmung speichern
page-cautions-withdraw = Zurückziehen
page-cautions-agreed = Die Zustimmung ist gespeichert. Das Programm fragt nicht mehr danach und sagt die Hinweise weiterhin.
page-cautions-withdrawn = Zurückgezogen. Die Übung wird ausgelassen, bis wieder jemand zustimmt.
page-cautions-tick = Kreuzen Sie die Übungen an, denen die Therapie zugestimmt hat.
page-field-agreed-by = Wer zugestimmt hat
page-hint-agreed-by = Nennen Sie die Therapeutin oder den Therapeuten so, dass Sie später wissen, wer es war.
page-agreed-by-missing = Geben Sie an, wer zugestimmt hat, in höchstens 80 Zeichen.
page-agreed-aloud = Laut zugestimmt während einer Übung am { $when }.
page-agreed-page = Zugestimmt von { $by }, auf dieser Seite eingetragen am { $when }.
page-agreed-package = Zugestimmt im Paket der Therapie vom { $when } (Schlüssel { $by }).
page-by-page = über die Seite
page-routines-lead = Jeder Übungsplan ist eine Datei. Sie können sie auch in jedem Texteditor ändern.
page-routines-none = Hier gibt es noch keine Übungspläne.
page-routines-about = { $steps ->
    [one] Eine Übung
   *[other] { $steps } Übungen
}, etwa { $minutes ->
    [one] eine Minute
   *[other] { $minutes } Minuten
}
page-routines-faults = { $n ->
    [one] Ein Fehler: So kann er nicht geübt werden.
   *[other] { $n } Fehler: So kann er nicht geübt werden.
}
page-routines-who = Geübt von { $names }
page-routines-new = Neuer Übungsplan
page-routines-begin = Beginnen
page-routines-empty = Leer
page-routines-copy-of = Eine Kopie von { $file }
page-routines-folder = Die Übungspläne liegen in { $folder }
page-field-file-name = Dateiname
page-hint-file-name = Buchstaben, Ziffern, Leerzeichen und Bindestriche, etwa „abend“.
page-field-like = Ausgehen von
page-file-none = Hier gibt es keine Übungsplandatei { $file }.
page-file-bad-name = Nehmen Sie im Dateinamen nur Buchstaben, Ziffern, Leerzeichen und Bindestriche, etwa „abend“.
page-file-exists = Eine Datei { $file } gibt es schon. Wählen Sie einen anderen Namen.
page-file-changed = Jemand anderes hat die Datei { $file } inzwischen geändert, deshalb wurde nichts gespeichert. Ihre Änderungen stehen noch auf dieser Seite. Sehen Sie sich die Datei in einem anderen Fenster an, und ändern Sie dann noch einmal.
page-file-not-text = Die Datei { $file } ist kein UTF-8-Text. Speichern Sie sie in einem Editor als UTF-8.
page-file-too-large = Die Datei { $file } ist zu groß für einen Übungsplan.
page-file-system = Die Datei { $file } ließ sich nicht benutzen: { $why }
page-no-such-file = Diese Datei gibt es hier nicht.
page-no-pdf = Diese Fassung von tidecount wurde ohne PDF gebaut. Drucken Sie stattdessen die Webseite aus Ihrem Browser.
page-file-report-pdf = Bericht über { $name } für die Therapie, zum Drucken (PDF)
page-file-report-html = Bericht über { $name } für einen Browser (HTML)
page-file-chart = Text über { $name } für die Akte, zum Kopieren und Einfügen
page-file-carer-pdf = Eine Seite für alle, die { $name } helfen, zum Drucken (PDF)
page-file-carer-html = Eine Seite für alle, die { $name } helfen, für einen Browser (HTML)
page-letter = Ein Brief an eine andere Fachperson
page-letter-parts = Nur dies mitteilen
page-letter-pdf = Brief erstellen (PDF)
page-letter-html = Brief erstellen (HTML)
page-file-csv = Versuche von { $name } als Tabelle (CSV)
page-file-csv-all = Alle Versuche als Tabelle (CSV)
page-file-json = Übungen von { $name }, Eintrag für Eintrag (JSON Lines)
page-file-json-all = Alle Übungen, Eintrag für Eintrag (JSON Lines)
page-file-fhir = Übungen von { $name } für eine Gesundheitsakte (HL7 FHIR)
page-routine-back = Alle Übungspläne
page-routine-edit = Bearbeiten
page-routine-print = Handzettel drucken
page-routine-saved = Gespeichert: { $file }. Die vorige Fassung liegt daneben; ihr Name endet auf „before“.
page-routine-chosen = Ausgewählt. Wenn Sie das nächste Mal „tidecount attend“ starten, wird dieser Übungsplan angeboten.
page-routine-unchosen = Von der Liste genommen.
page-routine-raw = Die Datei
page-routine-too-large = Diese Datei ist zu groß für ein Formular. Ändern Sie sie in einem Editor.
page-routine-who = Wer ihn übt
page-routine-who-does = { $name } übt ihn.
page-routine-who-not = { $name } übt ihn nicht.
page-routine-choose = Für { $name } auswählen
page-routine-unchoose = Für { $name } nicht mehr auswählen
page-routine-choose-new = Für diese Person auswählen
page-field-person = Jemand anderes
page-hint-person = Ein Name, wie man ihn sagt, etwa „Opa“. Es muss kein echter Name sein.
page-person-missing = Geben Sie einen Namen ein.
page-person-last = Jemand muss einen Übungsplan haben. Wählen Sie zuerst einen anderen aus.
page-household-faults = Durch diese Änderung wäre die Haushaltsdatei fehlerhaft, deshalb wurde nichts geändert:
page-routine-new-title = Neuer Übungsplan: { $file }
page-routine-edit-title = { $file } bearbeiten
page-routine-edit-lead = Gespeichert wird erst, wenn Sie „Speichern“ drücken. Leere Felder nehmen den üblichen Wert.
page-routine-save = Speichern
page-routine-check = Nur prüfen
page-routine-as-text = Stattdessen den Text der Datei bearbeiten
page-routine-as-form = Zurück zum Formular
page-routine-well = Keine Fehler. Noch nicht gespeichert.
page-routine-not-yet-saved = Hier geändert, aber noch nicht gespeichert.
page-routine-text-title = Text von { $file }
page-routine-text-lead = Für Menschen, die das Dateiformat kennen. Geprüft wird wie beim Formular.
page-field-text = Die Datei
page-hint-text = Jede Einstellung in einer eigenen Zeile. Anmerkungen beginnen mit #.
page-routine-general = Allgemeines
page-routine-plan = Wann
page-routine-plan-hint = Die Zeiten, zu denen geübt werden soll. Ohne sie kann jederzeit geübt werden.
page-routine-plan-add = Zeit hinzufügen
page-routine-plan-number = Zeit { $n }
page-routine-patience = Wenn niemand antwortet
page-routine-steps = Übungen
page-routine-no-steps = Es gibt noch keine Übungen. Fügen Sie unten eine hinzu.
page-routine-adding = Übung hinzufügen
page-routine-add-step = Hinzufügen
page-routine-doses = Veröffentlichte oder übliche Dosierungen
page-routine-disagree = Wo Quellen sich widersprechen
page-routine-whys = Warum es diese Grenzen gibt
page-dose-take = Diese Dosierung nehmen
page-dose-taken-as = Eingetragen: { $dose }
page-dose-no-number = Sie hat keine Zahl zum Eintragen.
page-dose-beyond = Diese Dosierung geht nicht: { $why }
page-step-earlier = Früher
page-step-later = Später
page-step-remove = Entfernen
page-add-phase = Phase hinzufügen
page-add-question = Frage hinzufügen
page-add-stage = Stufe hinzufügen
page-grow = Die Dosis über die Wochen wachsen lassen
page-phase-number = Phase { $n }
page-question-number = Frage { $n }
page-stage-number = Stufe { $n }
page-ramp-when = Wann sie wächst
page-ramp-remove = Nicht wachsen lassen
page-packs-choose = Wortsammlungen auswählen
page-field-title = Titel
page-hint-title = Wie er ausgesprochen heißt, etwa „Abendprogramm“.
page-field-language = Sprache
page-field-client = Person
page-hint-client = Ein kurzer Name. Es muss kein echter sein. Das kann leer bleiben.
page-field-cue_words = Merkworte vor einem lauten Versuch
page-hint-cue_words = Die eigenen der Therapie, etwa „kräftige Stimme“. Das kann leer bleiben.
page-field-agreement_months = Nach so vielen Monaten wieder nach der Zustimmung zu einer Übung fragen
page-field-ratings = Einschätzungen am Ende
page-rating-effort = Am Ende fragen: wie anstrengend es war, 0 bis 10
page-rating-tiredness = Am Ende fragen: wie müde die Person ist, 0 bis 10
page-rating-pain = Am Ende fragen: wie stark die Schmerzen sind, 0 bis 10
page-field-weekly_questions = Einmal in der Woche fragen: die Stimme im Alltag, warum geplante Tage ausfielen, Warnzeichen beim Schlucken
page-field-feedback_every = Das Ergebnis nach je so vielen Versuchen sagen (0: nur auf Nachfrage)
page-field-loud_limit_s = Längste Zeit mit lautem Halten in einer Übung, Sekunden
page-field-no_answer = Wenn niemand antwortet
page-field-ask_again_after_s = Wieder fragen nach, Sekunden
page-field-asks = So oft wieder fragen
page-field-give_up_after_s = Enden nach so viel Stille, Sekunden
page-field-plan = Wann
page-field-at = Um
page-hint-at = Stunden und Minuten, etwa 18:30.
page-field-days = Tage
page-field-step = Übungen
page-field-exercise = Übung
page-field-add = Übung
page-field-cautions_acknowledged = Die Hinweise oben wurden gelesen, und die Therapie stimmt zu
page-hint-acknowledge = Ohne dieses Häkchen kann der Plan nicht geübt werden.
page-field-sets = Durchgänge
page-field-repetitions = Wiederholungen
page-field-rest_s = Ruhe zwischen Wiederholungen, Sekunden
page-field-set_rest_s = Ruhe zwischen Durchgängen, Sekunden
page-field-target_s = Ziel, Sekunden
page-field-max_break_s = Längste Lücke, die ein Halten nicht beendet, Sekunden
page-field-min_hold_s = Kürzestes Tönen, das als Versuch zählt, Sekunden
page-field-cues_at_s = Kurze Zurufe während des Haltens, bei Sekunde
page-hint-cues = Zahlen mit Kommas, etwa 5, 10. Das kann leer bleiben.
page-field-phases = Phasen
page-field-phase-name = Was
page-field-phase-length = Wie lange, Sekunden
page-field-phase_s = Wie lange, Sekunden
page-field-name = Name
page-field-count_every_s = Laut zählen alle, Sekunden
page-field-count_last_s = Jede Sekunde zählen in den letzten, Sekunden
page-field-in = Schläge ein
page-field-out = Schläge aus
page-field-beat_s = Zeit zwischen den Schlägen, Sekunden
page-field-next_cue_after_s = Nächster Zuruf kommt von selbst nach, Sekunden
page-field-sip_every = Einen Schluck Wasser anbieten nach je
page-field-sips_enabled_by_clinician = Die Therapie hat Schlucke Wasser freigegeben
page-field-phrases = Sätze
page-hint-phrases = Einer je Zeile. Sie werden groß gezeigt und vorgesprochen.
page-field-rungs = Stufen der Reihe nach
page-hint-rungs = Etwa soft, medium, strong, medium oder low, middle, high, middle.
page-field-step_db = Größe einer Stufe, Dezibel
page-field-step_st = Größe einer Stufe, Halbtöne
page-field-setting = Was die Therapie eingestellt hat
page-hint-setting = Es wird vor dem ersten Mal gesagt, etwa „zwei Umdrehungen am Rad“.
page-field-prompts = Worüber erzählt wird
page-hint-prompts = Eines je Zeile, jedes für ein Erzählen. Bleibt es leer, fragt das Programm nach etwas, das Freude macht.
page-field-passage = Lesetext
page-hint-passage = Er wird groß gezeigt und nicht vorgelesen. Bleibt es leer, ist es eine Fabel von etwa 140 Wörtern.
page-field-syllables = Silben
page-field-length_s = Wie lange, Sekunden
page-field-questions = Fragen
page-field-question-clue = Frage
page-field-question-answers = Antworten, die zählen
page-field-question-near = Antworten, die nah dran sind
page-field-question-hint = Hinweis
page-field-question-fact = Wird nach der Antwort gesagt
page-field-packs = Wortsammlungen
page-field-packs-other = Andere Wortsammlungen
page-hint-packs-other = Namen von Dateien neben dem Übungsplan, mit Kommas. Das kann leer bleiben.
page-field-think_s = Zeit zum Nachdenken, Sekunden
page-field-ramp = Eine wachsende Dosis
page-field-ramp-days = Tage bis zur nächsten Stufe
page-field-stages = Stufen
page-field-hold_s = Gehalten, Sekunden
page-pack-categories = So viele, wie Ihnen einfallen
page-pack-definitions = Was ist das?
page-pack-double-meanings = Ein Wort, zwei Bedeutungen
page-pack-odd-one-out = Was gehört nicht dazu?
page-pack-opposites = Gegenteile
page-pack-pairs = Was gehört dazu?
page-pack-sayings = Das Ende einer Redensart
page-remedy-acknowledge = Lesen Sie die Hinweise. Wenn die Therapie zustimmt, setzen Sie das Häkchen.
page-remedy-sips = Wenn die Therapie Schlucke freigegeben hat, setzen Sie das Häkchen. Sonst lassen Sie das Feld leer.
page-remedy-sips-client = Tragen Sie oben die Person ein: Schlucke werden für eine Person freigegeben.
page-remedy-questions = Kreuzen Sie eine Wortsammlung an, oder fügen Sie eine Frage hinzu.
page-remedy-phrases = Schreiben Sie mindestens einen Satz.
page-remedy-packs = Kreuzen Sie mindestens eine Wortsammlung an.
page-remedy-title = Tragen Sie den Titel ein.
page-remedy-steps = Fügen Sie mindestens eine Übung hinzu.
page-remedy-type = Geben Sie eine Zahl ein, oder lassen Sie das Feld leer.
page-history-none = Noch keine Übungen.
page-history-table = Übungen, die neueste zuerst
page-history-pages = Weitere Übungen
page-history-newer = Neuere
page-history-older = Ältere
page-history-range = Übungen { $from } bis { $to } von { $of }, die neueste zuerst
page-history-when = Wann
page-history-who = Wer
page-history-routine = Übungsplan
page-history-done = Gemacht
page-history-length = Dauer
page-history-best = Längstes Halten
page-history-ended = Wie sie endete
page-history-steps = { $done } von { $of } Übungen
page-history-minutes = { $n } min
page-history-under-way = läuft noch
page-history-exports = Als Datei speichern
page-source-replay = aus einer Aufnahme
page-source-rehearsal = geprobt
page-end-completed = vollständig
page-end-finished = auf eigenen Wunsch beendet
page-end-interrupted = abgebrochen
page-end-abandoned = nicht fortgesetzt
page-end-no-answer = keine Antwort
page-end-time-limit = so lange, wie eine Übung dauern darf
page-end-day-limit = genug Übungen für einen Tag
page-practice-back = Alle Übungen
page-practice-none = Eine Übung mit dieser Nummer gibt es nicht.
page-practice-what = Was geschah
page-practice-part = Teil { $n }, ab { $when }
page-practice-sounds = Aufnahmen
page-fact-place = { $name }{ $sets ->
    [one] { $of ->
        [one] { "" }
       *[other] , { $n } von { $of }
    }
   *[other] , Durchgang { $set } von { $sets }, { $n } von { $of }
}
page-fact-begun = „{ $routine }“ wurde begonnen, mit { $n ->
    [one] einer Übung
   *[other] { $n } Übungen
}.
page-fact-resumed = Nach einer Unterbrechung fortgesetzt.
page-fact-agreed = Ja: Die Therapie hat zugestimmt: { $names }.
page-fact-not-agreed = Keine Zustimmung: { $names }.
page-fact-left-out = Ausgelassen: { $reason }.
page-fact-step = { $name } beginnt.
page-fact-stage = Stufe { $n } einer wachsenden Dosis.
page-fact-hold = { $s } s gehalten.
page-fact-hold-figures = { $level }, { $hz } Hz, Tonhöhenumfang { $span } Halbtöne.
page-fact-distance = Pegel für { $cm } cm vom Mund.
page-fact-distance-unknown = Der Abstand zum Mikrofon war nicht angegeben.
page-fact-clipped = Die lautesten { $s } s sind abgeschnitten: Der wahre Pegel ist höher.
page-fact-auto-gain = Das Mikrofon änderte seine eigene Lautstärke, deshalb lässt sich dieser Pegel mit keinem anderen vergleichen.
page-fact-breaks = { $n ->
    [one] Eine Lücke in der Stimme wurde überbrückt.
   *[other] { $n } Lücken in der Stimme wurden überbrückt.
}
page-fact-masked = Die Stimme des Programms verdeckte { $s } s davon.
page-fact-cut-off = Durch einen Befehl abgeschnitten, deshalb nutzt es keine Zahl.
page-fact-posture = { $s } von { $of } s gehalten.
page-fact-round = Eine Runde in { $s } s, { $beat } s zwischen den Schlägen.
page-fact-repetition = In { $s } s gemacht, beendet durch { $by }.
page-fact-phrase = „{ $phrase }“ in { $s } s.
page-fact-level = { $level }, { $hz } Hz.
page-fact-talk = { $s } s, mit { $pauses ->
    [0] keiner Sprechpause
    [one] einer Sprechpause
   *[other] { $pauses } Sprechpausen
  } ({ $share } % der Zeit).
page-fact-syllables = { $n } Silben in { $s } s: { $rate } je Sekunde, Unregelmäßigkeit { $irregularity } %.
page-fact-question-right = „{ $clue }“ Beantwortet: { $answer }.
page-fact-question-other = „{ $clue }“ Andere Antwort: { $answer }.
page-fact-question-none = „{ $clue }“ Keine Antwort.
page-fact-named = { $n } genannt, { $category }, in { $s } s: { $words }
page-fact-rested = { $s } s geruht.
page-fact-fall-length = Das Halten wurde kürzer, als für diese Person üblich: { $from } s, dann { $to } s.
page-fact-fall-level = Die Stimme wurde leiser, als für diese Person üblich: { $from } dB, dann { $to } dB.
page-fact-rest-taken = Eine Erholung wurde angeboten und angenommen.
page-fact-rated = { $what }, { $over }, 0 bis 10: { $value }.
page-fact-rated-none = nicht eingeschätzt
page-fact-sign = Gefragt nach { $what }: { $answer }.
page-fact-missed = { $n ->
    [one] 1 geplanter Tag
   *[other] { $n } geplante Tage
} diese Woche versäumt: { $why }.
page-fact-missed-unsaid = ohne Angabe eines Grundes
page-fact-rest-declined = Eine Erholung wurde angeboten und abgelehnt.
page-fact-loud-limit = Lautes Halten erreichte { $s } von { $limit } s. Der Rest blieb für einen anderen Tag.
page-fact-command = „{ $text }“ wurde gehört: { $command }.
page-fact-no-answer = Niemand antwortete, obwohl { $n ->
    [one] noch einmal
   *[other] noch { $n }-mal
} gefragt wurde.
page-fact-step-done = Gemacht: { $done } von { $of }.
page-fact-step-ended = Vorzeitig beendet ({ $reason }): { $done } von { $of }.
page-fact-safety = Die Person sagte, dass etwas nicht stimmt: { $reason }.
page-fact-recogniser = Die Erkennung wurde neu gestartet. { $s } s lang wurde nichts gehört.
page-fact-microphone = { $text }
page-fact-room-loud = Der Raum wurde zu laut zum Messen ({ $db } dB; 0 dB ist das Lauteste, was das Mikrofon verträgt).
page-fact-room-quiet = Der Raum ist wieder leise genug.
page-fact-in-noise = Dieses Halten war nur { $db } dB lauter als der Raum, deshalb nutzt es keine Zahl.
page-fact-sound-lost = { $s } s Ton gingen verloren.
page-fact-ended = Das Ende ({ $reason }): { $done } von { $of } Übungen.
page-fact-other = Etwas anderes wurde gespeichert: { $kind }.
page-mark-left-out = Ausgelassen
page-mark-look = Bitte prüfen
page-mark-discarded = Nicht gezählt
page-mark-ended = Vorzeitig beendet
page-mark-safety = Sicherheit
page-trouble-loudspeaker-too-loud = Die Stimme des Programms übertönte die der Person.
page-trouble-room-too-loud = Der Raum war zu laut zum Messen.
page-trouble-room-talks = Andere Menschen redeten, oder ein Fernseher lief.
page-trouble-microphone-clips = Das Mikrofon schnitt die lautesten Stellen ab.
page-trouble-microphone-gain = Das Mikrofon änderte seine eigene Lautstärke.
page-trouble-microphone-silent = Vom Mikrofon kam gar kein Ton.
page-progress-nobody = Wählen Sie, wessen Fortschritt Sie sehen möchten. Er erscheint, sobald es Übungen gibt.
page-progress-lengths = Wie weit zurück
page-progress-weeks = { $n } Wochen
page-progress-all = Alles
page-progress-window = Von { $from } bis { $to }
page-progress-files = Berichte und Dateien
page-progress-goals = Ziele
page-progress-adherence = Gemacht von dem, was verordnet war
page-progress-practices = { $n ->
    [0] In dieser Zeit keine Übungen.
    [one] In dieser Zeit eine Übung.
   *[other] In dieser Zeit { $n } Übungen.
}
page-progress-done = { $done } von { $of } Wiederholungen wurden gemacht: { $percent } %.
page-progress-nothing-prescribed = In dieser Zeit war nichts verordnet.
page-progress-extra = { $n ->
    [one] Eine Wiederholung mehr als verordnet.
   *[other] { $n } Wiederholungen mehr als verordnet.
}
page-progress-no-plan = Es waren keine Tage geplant, deshalb lassen sich versäumte Übungen nicht zählen.
page-progress-calendar = Kalender, die neueste Woche zuerst
page-progress-earlier = Frühere Wochen
page-progress-week = Woche ab
page-progress-share = Gemacht
page-progress-day = { $done } von { $of } Wiederholungen
page-short-monday = Mo
page-short-tuesday = Di
page-short-wednesday = Mi
page-short-thursday = Do
page-short-friday = Fr
page-short-saturday = Sa
page-short-sunday = So
page-day-outside = noch nicht
page-day-free = nichts geplant
page-day-all = alles gemacht
page-day-part = teilweise gemacht
page-day-nothing = nicht gemacht
page-day-extra = ohne Plan gemacht
page-progress-none = In dieser Zeit wurde nichts gemessen.
page-progress-table = Die Zahlen als Tabelle
page-progress-table-of = Tabelle: { $title }
page-progress-stops = Abbrüche und Warnzeichen
page-progress-ratings = Eigene Einschätzungen, 0 bis 10
page-progress-rated = { $what }, { $over }: Median { $median } ({ $low } bis { $high }), zuletzt { $latest } am { $last }
page-progress-missed = Warum geplante Tage ausfielen
page-progress-missed-for = { $what }: { $n ->
    [one] 1 Tag
   *[other] { $n } Tage
}, zuletzt gesagt am { $last }
page-progress-left-out = Ausgelassen
page-progress-programme = Was sich am Übungsplan geändert hat
page-progress-foot = Eine Übungshilfe. Sie stellt keine Diagnose.
page-progress-baseline = Ausgangswert: { $median }, Versuche von { $low } bis { $high }, über { $days } Tage ab { $from }.
page-progress-no-baseline = Noch kein Ausgangswert: Dafür braucht es Versuche an drei Tagen.
page-progress-week-median = Median der Woche ab { $monday }: { $median }, aus { $trials ->
    [one] einem Versuch
   *[other] { $trials } Versuchen
}.
page-progress-slope = Trend: { $slope } je Woche, zu 95 % zwischen { $low } und { $high }.
page-progress-mdc = Eine Veränderung von mehr als { $mdc } liegt über der eigenen Streuung dieser Person.
page-progress-within-scatter = Die Veränderung seit dem Ausgangswert, { $change }, liegt innerhalb dieser Streuung.
page-progress-higher = Die letzten Tage liegen { $change } über dem Ausgangswert, mehr als diese Streuung.
page-progress-lower = Die letzten Tage liegen { $change } unter dem Ausgangswert, mehr als diese Streuung.
page-progress-break = Neue Reihe ab { $day }: { $why }.
page-progress-discarded = { $n ->
    [one] Ein Wert fehlt
   *[other] { $n } Werte fehlen
} in allen Zahlen: { $why }.
page-progress-conditions = Letzte Bedingungen: Bewertung { $weighting }, Abstand { $distance }, { $scale }, Mikrofon { $microphone }.
page-progress-conditions-mic = Letztes Mikrofon: { $microphone }.
page-scale-none = nicht kalibriert, relativ
page-scale-void = Kalibrierung nicht mehr gültig, relativ
page-scale-meter = mit einem Schallpegelmesser kalibriert
page-scale-source = mit einer bekannten Quelle kalibriert
page-scale-rough = grob, mit einem Telefon
page-column-day = Tag
page-column-trials = Versuche
page-column-median = Median
page-column-low = Niedrigster
page-column-high = Höchster
page-measure-hold-s = Haltedauer
page-measure-level-db = Pegel beim Halten
page-measure-f0-median-hz = Tonhöhe beim Halten
page-measure-f0-span-st = Tonhöhenumfang
page-measure-f0-sd-st = Schwanken der Tonhöhe beim Halten
page-measure-level-slope-db-per-s = Nachlassen beim Halten
page-measure-step-db = Lautstärkestufe
page-measure-step-st = Tonhöhenstufe
page-measure-phrase-span-st = Tonhöhenumfang der Sätze
page-measure-phrase-rate-hz = Silben je Sekunde in den Sätzen
page-measure-phrase-level-db = Pegel der Sätze
page-measure-phrase-f0-hz = Tonhöhe der Sätze
page-measure-talk-level-db = Pegel beim Erzählen
page-measure-talk-f0-hz = Tonhöhe beim Erzählen
page-measure-pause-share-pct = Anteil der Sprechpausen
page-measure-syllable-rate-hz = Silben je Sekunde
page-measure-syllable-irregularity-pct = Unregelmäßigkeit der Silben
page-measure-named-count = genannte Wörter
page-programme-begun = begonnen, mit { $n ->
    [one] einer Übung
   *[other] { $n } Übungen
}
page-programme-replaced = ersetzt durch { $by }
page-programme-added = { $name } hinzugefügt, { $dose }
page-programme-removed = { $name } entfernt
page-programme-dose = { $name }: { $field } von { $from } auf { $to }
page-programme-stage = { $name } auf Stufe { $n }, { $dose }
page-programme-order = andere Reihenfolge
page-programme-plan = wann: { $from }, jetzt { $to }
page-programme-setting = { $field } von { $from } auf { $to }
page-sound-lead = Aufgenommen wird nur, wenn die Person es möchte. Sie schalten es hier ein, und die Person muss bei der nächsten Übung auch laut Ja sagen. Aufnahmen bleiben auf diesem Rechner und werden von selbst gelöscht.
page-sound-nobody = Wählen Sie, wessen Aufnahmen. Gefragt werden kann nur, wer hier schon bekannt ist.
page-sound-never = Aus. Es wird nichts aufgenommen.
page-sound-asked = Erbeten am { $when }, jede { $days } Tage aufzubewahren. Die Person wird bei der nächsten Übung laut gefragt. Bis dahin wird nichts aufbewahrt.
page-sound-refused = Aus: Die Person hat am { $when } Nein gesagt.
page-sound-given = Ein: Die Person hat am { $when } Ja gesagt. Jede Aufnahme wird { $days } Tage aufbewahrt.
page-sound-withdrawn = Aus seit { $when }.
page-sound-on = Um Aufnahmen bitten
page-sound-change = Zahl der Tage ändern
page-sound-off = Ausschalten
page-sound-stored = Gespeicherte Aufnahmen
page-sound-none = Es sind keine Aufnahmen gespeichert.
page-sound-one = Übung { $practice }, { $when }, { $minutes } min, gelöscht nach dem { $until }
page-sound-sure = Alle gespeicherten Aufnahmen dieser Person löschen. Das lässt sich nicht rückgängig machen.
page-sound-delete = Löschen
page-sound-told-on = Gespeichert. Die Person wird bei der nächsten Übung laut gefragt.
page-sound-told-off = Aus. Es wird nichts mehr aufgenommen. Gespeichertes wird gelöscht, wenn seine Zeit um ist, oder jetzt mit dem Knopf unten.
page-sound-told-deleted = Gelöscht.
page-field-sound-days = Tage, die jede Aufnahme bleibt
page-caseload-lead = { $n ->
    [one] Eine von { $of } Personen braucht
   *[other] { $n } von { $of } Personen brauchen
  } am { $day } Aufmerksamkeit.
page-caseload-choices = Welche Personen
page-caseload-needing = Braucht Aufmerksamkeit
page-caseload-range = { $from } bis { $to } von { $of }, das Ernsteste zuerst
page-caseload-nobody = Niemand, soweit die Ergebnisse es zeigen.
page-caseload-nothing = Nichts zu melden, soweit bekannt.
page-caseload-desk = von { $desk }
page-caseload-pages = Weitere Personen
page-caseload-before = Zurück
page-caseload-behind = Weiter
page-caseload-back = Zurück zur Fallübersicht
page-caseload-none = Hier gibt es keine Praxisdatenbank. Übernehmen Sie Ergebnisse mit `tidecount clinic import`, und öffnen Sie die Seiten neu.
page-caseload-no-client = Eine Person mit dieser Nummer gibt es nicht.
page-caseload-foot = Diese Seite zeigt nur die Ergebnisse, die angekommen sind. Was sie bedeuten, sagt die Therapeutin oder der Therapeut.
page-caseload-foot-sheet = Alle Zahlen vergleichen diese Person nur mit sich selbst. Was sie bedeuten, sagt die Therapeutin oder der Therapeut.
page-caseload-why = Warum Aufmerksamkeit nötig ist
page-caseload-note = Notiz
page-caseload-note-hint = Eine Notiz für Sie und die anderen Arbeitsplätze. Sie kann leer bleiben. Was bis jetzt gemeldet ist, wird nicht noch einmal gemeldet.
page-caseload-note-long = Höchstens { $n } Zeichen.
page-caseload-news = Nach dem Erstellen dieser Seite kamen neue Ergebnisse an. Sie stehen jetzt hier: Bitte sehen Sie noch einmal hin.
page-caseload-seen = Ich habe es angesehen
page-caseload-told-seen = Vermerkt, dass Sie es angesehen haben.
page-caseload-events = Von den Übungen gemeldet
page-caseload-event = Was
page-caseload-event-state = Stand
page-caseload-event-seen = gesehen
page-caseload-event-new = neu
page-caseload-measures = Messwerte
page-caseload-measures-hint = Erste Tage, letzte Tage und die kleinste Veränderung über der eigenen Streuung dieser Person (95 %).
page-caseload-measure = Übung und Messwert
page-caseload-baseline = Anfangs
page-caseload-latest = Zuletzt
page-caseload-smallest = Kleinste Veränderung
page-caseload-verdict = Urteil
page-caseload-conditions = Beruht auf
page-caseload-trials = { $n ->
    [one] einem Versuch
   *[other] { $n } Versuchen
  }
page-caseload-days = Therapietreue nach Tag
page-caseload-days-hint = Gemachte von den verordneten Wiederholungen an geplanten Tagen. Zusätzliche zählen nicht.
page-caseload-days-begun = Therapietreue in begonnenen Übungen
page-caseload-days-begun-hint = Es waren keine Tage vereinbart, deshalb lassen sich Tage ohne Übung nicht zählen.
page-caseload-share = Anteil
page-caseload-reps = Wiederholungen
page-caseload-practices = Übungen
page-caseload-discarded = in den Zahlen ausgelassen
page-caseload-sessions = Übungen, die neueste zuerst
page-caseload-looks = Wer hingesehen hat, und wann
page-verdict-unknown = zu wenig für ein Urteil
page-verdict-unchanged = innerhalb der Streuung
page-verdict-fallen = gesunken
page-verdict-risen = gestiegen
page-reason-safety = Sicherheit
page-reason-swallow-sign = Schlucken
page-reason-no-practice = Keine Übung
page-reason-no-results = Keine Ergebnisse
page-reason-adherence = Therapietreue
page-reason-decline = Rückgang
page-reason-left-out = Ausgelassen
page-reason-tired = Müde
page-reason-programme = Übungsplan
page-reason-microphone = Mikrofon
page-reason-clock = Uhr
