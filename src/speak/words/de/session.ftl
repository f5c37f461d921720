# Was gesagt und gezeigt wird. Ton: ein Gedanke auf einmal, kurze Sätze, dann Stille; erwachsen, freundlich, schlicht.

greeting = { $title }. { $steps ->
    [one] Eine Übung
   *[other] { SPOKEN($steps) } Übungen
}, etwa { $minutes ->
    [one] eine Minute
   *[other] { SPOKEN($minutes) } Minuten
}.
greeting-shown = { $steps ->
    [one] Eine Übung
   *[other] { SPOKEN($steps) } Übungen
}
aid-notice = Ich bin eine Übungshilfe und stelle keine Diagnose. Was Ihre Therapeutin oder Ihr Therapeut sagt und was bei Ihnen vor Ort gilt, geht allem vor, was ich sage.
ear-none-shown = Ohne Erkennungsmodell höre ich in dieser Sprache keine Befehle. Benutzen Sie die Tasten oder die Seite; mit einem eigenen Vosk-Modell: --model.
ear-commands-shown = Ich höre in dieser Sprache Befehle, Ja, Nein und Zahlen, aber keine anderen Wörter: Antworten in Wortspielen werden nicht bewertet.
you-can-stop = Sie können jederzeit „stopp“ sagen.
stop-by-hand = Gesprochene Befehle höre ich hier nicht. Drücken Sie jederzeit Escape, dann bin ich still. Auf der Seite ist es der rote Knopf.
heading-session = { $title }
heading-step = { $name } · { $repetition } von { $repetitions }
heading-set = { $name } · Durchgang { $set } von { $sets } · { $repetition } von { $repetitions }

ask-resume = Letztes Mal sind wir nicht bis zum Ende gekommen. Sollen wir dort weitermachen? Ja oder nein?
ask-resume-shown = Dort weitermachen, wo wir waren?
resumed = Wir machen weiter mit: { $name }.

cautions-first = Bevor wir anfangen, ein paar Worte zur Sicherheit.
cautions-shown = { $name }: zuerst die Sicherheit
ask-agreement = { $asked ->
    [0] Hat Ihre Therapeutin oder Ihr Therapeut dieser Übung für Sie zugestimmt? Ja, nein oder nicht sicher?
   *[other] Hat Ihre Therapeutin oder Ihr Therapeut zugestimmt?
}
ask-agreement-shown = { $name }: Hat Ihre Therapie der Übung für Sie zugestimmt?
ask-agreement-again = Hat Ihre Therapeutin oder Ihr Therapeut dieser Übung für Sie zugestimmt? Ja, nein oder nicht sicher?
agreement-yes = Gut.
agreement-no = Dann lassen wir sie weg.
agreement-not-sure = Dann lassen wir sie weg, bis Sie in der Therapie nachgefragt haben.
agreement-missing-all = Damit bleibt heute nichts zu üben. Bitte fragen Sie in der Therapie nach diesen Übungen.
ask-yes-no-again = Lassen Sie sich Zeit. Ja oder nein?

ask-ready-first = Setzen Sie sich aufrecht hin, beide Füße auf dem Boden. Sagen Sie „bereit“, wenn Sie anfangen möchten.
ask-ready-first-shown = Aufrecht sitzen, beide Füße auf dem Boden
ask-ready = Setzen Sie sich aufrecht hin, beide Füße auf dem Boden, und sagen Sie dann „bereit“.
ask-ready-shown = Aufrecht sitzen, beide Füße auf dem Boden
ask-position = Sagen Sie „bereit“, wenn Sie in der richtigen Haltung sind.
ask-position-shown = Nehmen Sie die Haltung ein
ask-rest-over = Ruhen Sie sich aus, solange Sie möchten. Sagen Sie „bereit“, wenn es weitergehen soll.
ask-rest-over-shown = Ruhen
ask-ready-again = Lassen Sie sich Zeit. Sagen Sie „bereit“, wenn Sie so weit sind.
ask-ready-once-more = Es eilt nicht. Sagen Sie „bereit“, wenn es weitergehen soll.
ready-not-understood = Ich habe jemanden gehört, aber das Wort nicht verstanden. Sagen Sie noch einmal „bereit“, oder kommen Sie etwas näher.
wait-for-ready = Ich bin hier. Sagen Sie „bereit“, wann immer Sie möchten.
gave-up = Ich habe eine Weile nichts von Ihnen gehört, deshalb beende ich die Übung hier. Alles ist gespeichert.

step-first = Zuerst: { $name }.
step-next = Als Nächstes: { $name }.
dose-times = { $sets ->
    [one] { $repetitions ->
        [one] Einmal.
       *[other] { SPOKEN($repetitions) }mal.
    }
   *[other] { SPOKEN($sets) } Durchgänge zu je { SPOKEN($repetitions) }.
}
dose-rounds = { $repetitions ->
    [one] Eine Runde. Ich zähle.
   *[other] { SPOKEN($repetitions) } Runden. Ich zähle.
}
dose-talks = { $repetitions ->
    [one] Nur einmal.
   *[other] { SPOKEN($repetitions) }mal.
}
dose-phrases = { $repetitions ->
    [one] Ein Satz.
   *[other] { SPOKEN($repetitions) } Sätze.
}
dose-categories = { $repetitions ->
    [one] Ein Oberbegriff, eine Minute lang. Nennen Sie ein Wort nach dem anderen.
   *[other] { SPOKEN($repetitions) } Oberbegriffe, je eine Minute. Nennen Sie ein Wort nach dem anderen.
}
dose-questions = { $repetitions ->
    [one] Eine Frage.
   *[other] { SPOKEN($repetitions) } Fragen.
}
setting = Ihre Einstellung: { $setting }.
knock-will-do = Wenn Sie geschluckt haben, sagen Sie „fertig“, oder klopfen Sie zweimal auf den Tisch.
goal = Ihr Ziel: { SECONDS($seconds) }.
cue-words = Denken Sie an: { $words }.
cue-words-again = { $words }.
cue-words-shown = { $words }
repetition-number = Nummer { SPOKEN($n) }.
repetition-last = Das letzte Mal.
skipped = Wir lassen aus: { $name }. Sagen Sie „zurück“, wenn Sie es doch machen möchten.
went-back = Zurück zu: { $name }.
went-back-done = { $name } ist für heute erledigt.
enough-now = { $name }: Mehr davon tut Ihnen in einer Übungszeit nicht gut, deshalb lassen wir es dabei.
enough-today = { $name }: Mehr davon tut Ihnen an einem Tag nicht gut. Wir heben es uns für einen anderen Tag auf.
long-enough = Das war nun fast eine Stunde. Länger würde Sie nur ermüden.
practices-enough = Sie haben heute schon { $practices ->
    [one] einmal
   *[other] { SPOKEN($practices) }mal
} geübt, und Ihr Körper braucht den Rest des Tages, um sich zu erholen. Morgen bin ich wieder da.
rest-first = Zuerst { SPOKEN($seconds) } Sekunden zum Erholen. Atmen Sie einfach.
rest-longer = Noch etwas länger, { SPOKEN($seconds) } Sekunden, damit Sie sich erholen können.

rise-side = Jetzt stehen wir langsam auf. Drehen Sie sich auf die Seite, und bleiben Sie dort einen Augenblick liegen.
rise-sit = Stützen Sie sich hoch, bis Sie sitzen, beide Füße auf dem Boden. Bleiben Sie sitzen, und atmen Sie.
rise-stand = Halten Sie sich jetzt an etwas Festem, und stehen Sie langsam auf. Wenn sich alles dreht, setzen Sie sich wieder.
rise-longer = Bleiben Sie noch etwas so, { SPOKEN($seconds) } Sekunden, damit Ihnen nicht schwindlig wird.
rise-at-end = Lassen Sie sich beim Aufstehen Zeit: Drehen Sie sich auf die Seite, setzen Sie sich auf, und bleiben Sie zwei Minuten sitzen.
posture-standing = Hierfür stehen Sie. Stellen Sie sich hinter einen festen Stuhl, und halten Sie sich daran fest.

wind-down = Lassen Sie Ihre Stimme jetzt zur Ruhe kommen. Summen Sie ein- oder zweimal sanft, so tief und mühelos Sie mögen, und atmen Sie.
loud-enough = Das ist genug kräftige Stimme für heute. Schonen Sie Ihre Stimme.
offer-rest = Sie haben viel geleistet. Möchten Sie sich etwas ausruhen? Ja oder nein? Sie können auch für heute beenden.
offer-rest-shown = Möchten Sie sich ausruhen?
sip-rules-now = Zu den Schlucken Wasser: Sitzen Sie ganz aufrecht, das Kinn gerade, und nehmen Sie immer nur einen kleinen Schluck. Wenn Sie husten, wenn Ihre Stimme feucht oder gurgelnd klingt oder wenn Sie außer Atem sind, stellen Sie das Getränk für heute weg, und sagen Sie es in der Therapie.

voice-again = Wann immer Sie so weit sind.
voice-once-more = Holen Sie Luft, und beginnen Sie in Ruhe.
hold-cue = Dranbleiben.
trial-over = Und lösen.
    .v1 = Loslassen.
    .v2 = Und entspannen.
reading-again = Sagen Sie es in aller Ruhe.
reading-once-more = Es eilt nicht. Lesen Sie es vor, wenn Sie möchten.
read-phrase = { $phrase }
read-phrase-shown = { $phrase }
read-rising-shown = { $phrase } ↗
read-falling-shown = { $phrase } ↘

talk-prompt = { $prompt }
talk-prompt-shown = { $prompt }
read-passage-shown = { $passage }
talk-again = Lassen Sie sich Zeit. Ich höre zu.
talk-once-more = Es eilt nicht. Beginnen Sie mit dem, was Ihnen gerade einfällt.
talk-go-on = Es ist noch Zeit. Was fällt Ihnen noch ein?
talk-read-on = Lassen Sie sich Zeit, und lesen Sie weiter.
talk-over = Danke.
    .v1 = Das war es. Danke.

posture-over = Und lösen.
paced-last-round = Letzte Runde.
paced-over = Und atmen Sie, wie Sie mögen.
seconds-to-go = { $seconds ->
    [one] Noch eine Sekunde.
   *[other] Noch { SPOKEN($seconds) }.
}
rounds-to-go = { $rounds ->
    [0] Das ist die letzte Runde.
    [one] Noch eine Runde.
   *[other] Noch { SPOKEN($rounds) } Runden.
}
pace-changed = Ich zähle im neuen Tempo.
speech-rate-changed = So spreche ich jetzt.
pace-slowest = Noch langsamer zähle ich nicht: Ein längerer Atemzug könnte Sie anstrengen.
pace-fastest = Noch schneller zähle ich nicht: Schnelleres Atmen könnte Sie schwindlig machen.
pace-stays = Das sind echte Sekunden, deshalb bleibt das Zählen, wie es ist.
volume-changed = Ist es so besser?

done-again = Lassen Sie sich Zeit. Sagen Sie „fertig“, wenn Sie es gemacht haben.
done-once-more = Es eilt nicht. Sagen Sie „fertig“, wenn Sie so weit sind.
done-not-understood = Ich habe jemanden gehört, aber das Wort nicht verstanden. Wenn Sie es gemacht haben, sagen Sie „alles fertig“, oder drücken Sie eine Taste.
wait-for-done = Ich bin hier. Sagen Sie „fertig“, wann immer Sie möchten.
ask-sip = Nehmen Sie einen kleinen Schluck, wenn es Ihnen in der Therapie erlaubt wurde. Schlucken Sie alles herunter, und sagen Sie dann „fertig“.
ask-sip-shown = Ein kleiner Schluck, alles herunterschlucken
ask-sip-again = Sagen Sie „fertig“, wenn alles unten ist.

question-clue = { $clue }
question-kind-double-meaning = Ein Wort mit zwei Bedeutungen.
question-kind-opposite = Jetzt ein Gegenteil.
question-kind-saying = Ergänzen Sie die Redensart.
question-kind-odd-one-out = Was gehört nicht dazu?
question-kind-definition = Was ist das?
question-kind-pair = Zwei Dinge, die zusammengehören.
question-kind-category = Nennen Sie so viele, wie Ihnen einfallen.
question-clue-shown = { $clue }
question-hint = Ich helfe Ihnen ein wenig. { $hint }
question-hint-asked = Hier ist ein Hinweis. { $hint }
question-near = Das ist nah dran. { $hint }
    .v1 = Gut überlegt, Sie sind nah dran. { $hint }
question-found = Ja. { $answer }.
    .v1 = Genau. { $answer }.
    .v2 = { $answer }. Sie haben es.
question-told = Ich dachte an: { $answer }.
question-fact = { $fact }

naming-count = { $number ->
    [one] Ich habe eines gehört: { $category }.
   *[other] Ich habe { SPOKEN($number) } gehört: { $category }.
}
naming-over = Die Minute ist um.

held = { SECONDS($seconds) }.
held-longest-this-month = { SECONDS($seconds) }. Ihr längstes Mal in diesem Monat.
held-more-than-last = { SECONDS($seconds) }. { $more ->
    [one] Eine mehr
   *[other] { SPOKEN($more) } mehr
} als beim letzten Mal.
held-more-than-weekday = { SECONDS($seconds) }. { $more ->
    [one] Eine mehr
   *[other] { SPOKEN($more) } mehr
} als am { $weekday }.
ladder-result = { $reached ->
    [0] Die Stufen waren schwer zu unterscheiden. Das kann mit der Zeit kommen.
    [one] Eine von { SPOKEN($all) } Stufen war deutlich.
   *[other] { SPOKEN($reached) } von { SPOKEN($all) } Stufen waren deutlich.
}
melody-result = { $reached ->
    [0] Ihre Stimme blieb am Ende gleich hoch. Das kann mit der Zeit kommen.
    [one] Einer von { SPOKEN($all) } Sätzen ging, wie er sollte.
   *[other] { SPOKEN($reached) } von { SPOKEN($all) } Sätzen gingen, wie sie sollten.
}
ladder-louder-shown = { $by } dB lauter
ladder-softer-shown = { $by } dB leiser
ladder-higher-shown = { $by ->
    [one] 1 Halbton höher
   *[other] { $by } Halbtöne höher
}
ladder-lower-shown = { $by ->
    [one] 1 Halbton tiefer
   *[other] { $by } Halbtöne tiefer
}
best = Das war diese Übung. Ihr bestes Mal: { SECONDS($seconds) }.
    .v1 = Geschafft. Ihr bestes Mal: { SECONDS($seconds) }.
best-longest-this-month = Das war diese Übung. Ihr bestes Mal: { SECONDS($seconds) }, Ihr längstes in diesem Monat.
best-more-than-last = Das war diese Übung. Ihr bestes Mal: { SECONDS($seconds) }, { $more ->
    [one] eine mehr
   *[other] { SPOKEN($more) } mehr
} als beim letzten Mal.
best-more-than-weekday = Das war diese Übung. Ihr bestes Mal: { SECONDS($seconds) }, { $more ->
    [one] eine mehr
   *[other] { SPOKEN($more) } mehr
} als am { $weekday }.
best-so-far = Ihr bestes Mal bisher: { SECONDS($seconds) }.
done-so-far = { SPOKEN($done) } von { SPOKEN($all) } bisher gemacht.
why-practice = Jede Übung hat ihren eigenen Zweck. Fragen Sie mich noch einmal, wenn sie begonnen hat.
step-done = Das war diese Übung.
    .v1 = Geschafft.
    .v2 = Diese Übung ist gemacht.
rest-done = Machen wir weiter.
minutes-left = { $minutes ->
    [one] Noch etwa eine Minute.
   *[other] Noch etwa { SPOKEN($minutes) } Minuten.
}

stopped = Ich bin still. Sagen Sie „weiter“, „überspringen“ oder „beenden“.
stopped-shown = Angehalten
paused = Lassen Sie sich Zeit. Sagen Sie „weiter“, wenn Sie möchten.
paused-shown = Angehalten
resting = Ruhen Sie sich aus. Sagen Sie „bereit“, wenn es weitergehen soll.
resting-shown = Ruhen
dry-sip = Nehmen Sie einen kleinen Schluck, wenn Sie möchten, und schlucken Sie alles herunter. Sagen Sie „bereit“, wenn es weitergehen soll.
dry-lips = Befeuchten Sie die Lippen, und lassen Sie sich Zeit. Sagen Sie „bereit“, wenn es weitergehen soll.
halted-reminder = Ich bin noch da. Sagen Sie „weiter“ oder „beenden“.
going-on = Machen wir weiter.
finishing = Ich beende die Übung. Sagen Sie „weiter“, wenn Sie doch weiterüben möchten.
finishing-shown = Wird beendet. „Weiter“ setzt die Übung fort.
ask-confirm = War das „{ $command }“?
ask-confirm-shown = War das „{ $command }“?

help = Wenn etwas nicht stimmt, rufen Sie jemanden oder im Notfall den Notruf.
help-more = Sonst leite ich an, und Sie machen mit, in Ihrem Tempo.
help-go-on = Sagen Sie „weiter“, wenn Sie möchten, „überspringen“ für die nächste Übung oder „beenden“.
help-shown = Hilfe
unwell-leave = Für heute lassen wir weg: { $name }.
unwell-leave-all = Für heute lassen wir weg: { $name }, und alles, was ihr gleicht.
unwell-leave-others = Was es heute wieder auslösen könnte, lasse ich weg.
unwell-earlier = Ihnen ging es heute schon einmal nicht gut. Was es wieder auslösen könnte, lasse ich weg.
unwell-earlier-all = Ihnen ging es heute schon einmal nicht gut. Wir verschieben diese Übung auf einen anderen Tag.
unwell-earlier-no-practice = Heute hatten Sie schon Schmerzen in der Brust oder Atemnot. Heute üben wir nicht. Bitte sprechen Sie mit Ihrer Ärztin oder Ihrem Arzt, bevor Sie wieder üben.
unwell-dizzy = Atmen Sie, wie Sie mögen, und bleiben Sie sitzen, oder legen Sie sich hin.
unwell-dizzy-more = Wenn es nicht vergeht, rufen Sie jemanden. Bei Schmerzen in der Brust, plötzlicher Schwäche oder Mühe beim Sprechen rufen Sie den Notruf. Ich habe es für die Therapie vermerkt.
unwell-pain = Lassen Sie los, und lassen Sie alles locker werden.
unwell-pain-more = Wenn es nicht nachlässt, rufen Sie jemanden. Bei Schmerzen in der Brust rufen Sie den Notruf. Ich habe es für die Therapie vermerkt.
unwell-choking = Beugen Sie sich vor, und husten Sie. Husten Sie immer weiter. Wenn Sie nicht atmen oder sprechen können, brauchen Sie sofort Hilfe.
unwell-sick = Setzen Sie sich auf, und atmen Sie, wie Sie mögen.
unwell-sick-more = Wenn es nicht vergeht oder wenn Sie Schmerzen in der Brust haben, rufen Sie jemanden. Ich habe es für die Therapie vermerkt.
all-right = Gut. Sagen Sie „weiter“, wenn Sie möchten, oder „beenden“.

emergency-chest-pain = Bleiben Sie, wo Sie sind, und bewegen Sie sich nicht. Bei Schmerzen in der Brust brauchen Sie jetzt Hilfe.
emergency-cant-breathe = Setzen Sie sich auf, und beugen Sie sich etwas vor. Sie brauchen jetzt Hilfe.
emergency-call = Rufen Sie { DIGITS($number) } Ich sage es noch einmal: { DIGITS($number) }
emergency-call-unknown = Rufen Sie den Notruf. Ich sage es noch einmal: Rufen Sie den Notruf.
emergency-anybody = Wenn mich jemand hört: Hier braucht jemand Hilfe. Bitte kommen Sie sofort.
emergency-or-fine = Wenn es vorbei ist, sagen Sie „mir geht es gut“.
emergency-shown = Rufen Sie { $number }
emergency-shown-unknown = Rufen Sie den Notruf
emergency-passed = Gut. Für heute hören wir hier auf. Bitte sagen Sie es noch heute Ihrer Ärztin oder Ihrem Arzt, auch wenn es vorbei ist. Alles ist gespeichert.
emergency-passed-shown = Noch heute ärztlich melden
emergency-ends = Ich beende jetzt die Übung. Alles ist gespeichert. Wenn Sie Hilfe brauchen, rufen Sie danach.
unwell-go-on = Sagen Sie „weiter“ für die nächste Übung oder „beenden“.
unwell-shown = Für heute weggelassen

summary-all = Das war alles für heute. Sie haben { $done ->
    [one] die ganze Übung
    [2] beide Übungen
   *[other] alle { SPOKEN($done) } Übungen
} gemacht. Gut gearbeitet.
summary-part = Das war alles für heute. { $done ->
    [0] Wir lassen es dabei.
   *[other] { SPOKEN($done) } von { SPOKEN($all) } gemacht{ $left ->
        [0] .
        [one] , eine bleibt für einen anderen Tag.
       *[other] , { SPOKEN($left) } bleiben für einen anderen Tag.
    }
}
summary-all-but = Das war alles für heute. { SPOKEN($done) } von { SPOKEN($all) } gemacht; für einen anderen Tag bleibt: { $name }.
summary-shown = { $done } von { $all } Übungen gemacht

questions-first = { $n ->
    [one] Noch eine kurze Frage zum Schluss.
   *[other] Noch { SPOKEN($n) } kurze Fragen zum Schluss.
} Sagen Sie „überspringen“ bei jeder, die Sie nicht beantworten möchten, oder „beenden“.
ask-effort = Wie anstrengend war das? Nennen Sie eine Zahl: Null ist gar nicht anstrengend, zehn ist das Äußerste, was Sie schaffen könnten.
ask-effort-shown = Wie anstrengend war das? 0 gar nicht · 10 das Äußerste
ask-tiredness = Wie müde sind Sie jetzt? Null ist gar nicht müde, zehn ist so müde wie noch nie.
ask-tiredness-shown = Wie müde sind Sie jetzt? 0 gar nicht · 10 so müde wie noch nie
ask-pain = Wie stark sind Ihre Schmerzen jetzt? Null ist kein Schmerz, zehn der schlimmste, den Sie sich vorstellen können.
ask-pain-shown = Wie stark sind Ihre Schmerzen jetzt? 0 keine · 10 die schlimmsten
ask-voice = Wie gut kamen Sie diese Woche im Alltag mit Ihrer Stimme zurecht? Null ist gar nicht, zehn so gut, wie Sie es sich wünschen.
ask-voice-shown = Wie gut diente Ihnen Ihre Stimme diese Woche? 0 gar nicht · 10 wie gewünscht
ask-rating-again = Lassen Sie sich Zeit. Eine Zahl von null bis zehn, oder „überspringen“.
rating-taken = { SPOKEN($n) }. Danke.
ask-moment = Gab es diese Woche einen Moment, in dem Ihre Stimme tat, was Sie wollten? Erzählen Sie mir davon, in ein oder zwei Sätzen. Ich bewahre es für Sie und Ihre Therapie auf.
ask-moment-shown = Ein Moment diese Woche, in dem Ihre Stimme tat, was Sie wollten? Erzählen Sie davon.
ask-moment-again = Lassen Sie sich Zeit. Erzählen Sie von so einem Moment, oder sagen Sie „überspringen“.
moment-tell = Erzählen Sie mir davon.
moment-taken = Danke. Ich bewahre es auf.
moment-none = In Ordnung.
ask-missed = { $days ->
    [one] Ein geplanter Tag verging diese Woche ohne Übung. Das kommt vor.
   *[other] { SPOKEN($days) } geplante Tage vergingen diese Woche ohne Übung. Das kommt vor.
} Was kam dazwischen? Sie können sagen: nicht gut, zu müde, keine Zeit, vergessen oder etwas anderes.
ask-missed-shown = Was kam dazwischen? Nicht gut · zu müde · keine Zeit · vergessen · etwas anderes
ask-missed-again = Lassen Sie sich Zeit. Nicht gut, zu müde, keine Zeit, vergessen, etwas anderes, oder „überspringen“.
missed-taken-not-well = Es ging Ihnen nicht gut. Das tut mir leid. Danke.
missed-taken-too-tired = Zu müde. Danke.
missed-taken-no-time = Keine Zeit. Danke.
missed-taken-forgot = Vergessen. Danke.
missed-taken-something-else = Etwas anderes. Danke.
ask-sign-cough-at-meals = Haben Sie diese Woche beim Essen oder Trinken gehustet oder sich verschluckt? Ja, nein oder nicht sicher?
ask-sign-cough-at-meals-shown = Diese Woche beim Essen gehustet oder verschluckt?
ask-sign-wet-voice = Klang Ihre Stimme nach dem Essen oder Trinken feucht oder gurgelnd? Ja, nein oder nicht sicher?
ask-sign-wet-voice-shown = Feuchte oder gurgelnde Stimme nach dem Essen oder Trinken?
ask-sign-weight-loss = Haben Sie ungewollt abgenommen? Ja, nein oder nicht sicher?
ask-sign-weight-loss-shown = Ungewollt abgenommen?
ask-sign-chest-infection = Hatten Sie diese Woche eine Infektion der Lunge oder der Bronchien? Ja, nein oder nicht sicher?
ask-sign-chest-infection-shown = Diese Woche eine Infektion von Lunge oder Bronchien?
ask-sign-again = Lassen Sie sich Zeit. Ja, nein, nicht sicher oder „überspringen“?
sign-taken-yes = Ja. Bitte sprechen Sie bald in der Therapie darüber. Es steht in Ihrem Bericht an erster Stelle.
sign-taken-no = Nein. Danke.
sign-taken-not-sure = Nicht sicher. Bitte fragen Sie in der Therapie danach. Es steht in Ihrem Bericht an erster Stelle.
questions-over = Danke. Ihre Antworten sind gespeichert.
questions-left = Gut. Keine weiteren Fragen.
questions-over-shown = Danke
questions-unwell = Die Übung ist zu Ende. Ich höre noch eine Weile zu. Sagen Sie „mir geht es gut“, wenn es so ist.
questions-unwell-shown = Die Übung ist zu Ende

say-ready = bereit
say-done = fertig
say-yes = ja
say-no = nein
say-stop = stopp
say-pause = Pause
say-go-on = weiter
say-again = noch einmal
say-skip = überspringen
say-go-back = zurück
say-how-long = wie lange
say-help = Hilfe
say-slower = langsamer
say-faster = schneller
say-louder = lauter
say-softer = leiser
say-rest = ausruhen
say-dry = mein Mund ist trocken
say-finish = beenden
say-dizzy = mir ist schwindlig
say-hurts = es tut weh
say-chest-pain = Brustschmerzen
say-cant-breathe = ich bekomme keine Luft
say-choking = ich verschlucke mich
say-feel-sick = mir ist übel
say-all-right = mir geht es gut
say-not-sure = nicht sicher
say-why = warum diese
say-how-did = wie war ich
say-hint = ein Tipp bitte

class-say-ready = los gehts
class-say-yes = anwesend
class-say-no = nicht hier
class-say-not-sure = nächste Person
class-say-done = alles fertig
class-say-again = noch einmal
class-say-skip = nächste Übung
class-say-help = Hilfe bitte
class-say-slower = bitte langsamer
class-say-faster = etwas schneller
class-say-louder = etwas lauter
class-say-softer = etwas leiser
class-say-rest = alle ausruhen
class-say-finish = für heute beenden

weekday-monday = Montag
weekday-tuesday = Dienstag
weekday-wednesday = Mittwoch
weekday-thursday = Donnerstag
weekday-friday = Freitag
weekday-saturday = Samstag
weekday-sunday = Sonntag

trouble-loudspeaker-too-loud = Meine Stimme ist hier so laut, dass ich Sie nicht hören kann. Antworten Sie, wenn ich gesprochen habe, oder stellen Sie mich etwas leiser.
trouble-room-too-loud = Im Raum ist es gerade laut, deshalb kann ich nicht gut messen. Wenn ein Fernseher oder ein Wasserhahn läuft, stellen Sie ihn bitte ab. Wenn das nicht geht, ist es auch gut.
trouble-room-talks = Ich höre andere Menschen reden oder einen Fernseher, deshalb überhöre ich Sie vielleicht. Wenn er sich abstellen lässt, stellen Sie ihn bitte ab, oder kommen Sie näher.
trouble-microphone-clips = Ihr Mikrofon schneidet die lautesten Stellen ab. Rücken Sie es etwas weiter weg, oder stellen Sie es leiser.
trouble-microphone-gain = Ihr Mikrofon ändert ständig seine eigene Lautstärke. Die Pegel von heute lassen sich mit denen anderer Tage nicht vergleichen.
trouble-microphone-silent = Ich höre gar nichts, nicht einmal den Raum. Bitte prüfen Sie, ob das Mikrofon eingeschaltet und eingesteckt ist. Bis dahin können Sie die Tasten oder die Seite benutzen.
trouble-microphone-back = Jetzt kann ich Sie hören.
trouble-loudspeaker-back = Eine Weile konnten Sie mich nicht hören.
trouble-loudspeaker-gone = Mein Lautsprecher ist weg. Stecken Sie ihn wieder an. Bis dahin steht hier, was ich sage.
loudspeaker-back-shown = Mein Lautsprecher ist wieder da.

class-greeting = { $title }. { $steps ->
    [one] Eine Übung
   *[other] { SPOKEN($steps) } Übungen
} für alle. Ich zähle und achte auf die Zeit.
class-shown = Für die Gruppe
class-safety = An alle: Bleiben Sie bei dem, was leichtfällt. Wenn Ihnen schwindlig wird oder Sie Schmerzen haben, lassen Sie die Übung aus.
class-roll = Zuerst: Wer ist da? Sagen Sie „anwesend“, „nicht hier“ oder „nächste Person“. Oder „los gehts“, um es zu lassen.
class-call = { $name }?
class-call-shown = { $name }?
class-call-number = Nummer { SPOKEN($n) }?
class-call-number-shown = Nummer { $n }?
class-roll-over = { $present ->
    [0] Niemand ist als anwesend vermerkt.
    [one] Eine Person ist da.
   *[other] { SPOKEN($present) } Personen sind da.
}
class-leave-out = Diese Übung lassen aus: { $names }.
class-seated = Im Sitzen machen diese Übung: { $names }.
class-start = Sagen Sie „los gehts“, oder drücken Sie die Taste, um anzufangen.
class-start-shown = „Los gehts“ oder die Taste
class-position = Wenn alle so weit sind, sagen Sie „los gehts“.
class-position-shown = „Los gehts“ oder die Taste
class-rest-over = Ruhen Sie sich alle aus. Sagen Sie „los gehts“ für die nächste.
class-rest-over-shown = Ruhen
class-keys-shown = Tasten: Leertaste oder Bild ab geht weiter, Bild auf wiederholt, Punkt hält an, Escape bricht ab, s überspringt, r ruht, + und - ändern die Lautstärke, < und > das Tempo, q beendet.
class-sip = Wenn es Ihnen erlaubt ist, nehmen Sie einen kleinen Schluck, und schlucken Sie alles herunter. Sagen Sie „los gehts“, wenn alle fertig sind.
class-sip-shown = Ein kleiner Schluck
class-halted = Ich bin still. Sagen Sie „weiter bitte“ oder „nächste Übung“.
class-resting = Ruhen Sie sich alle aus. Sagen Sie „los gehts“, wenn es weitergehen soll.
class-unwell = Wenn Ihnen nicht gut ist, lassen Sie es aus, und bleiben Sie sitzen. Ihre Therapeutin oder Ihr Therapeut ist hier.
class-over = Das war alles. Gut gearbeitet, alle miteinander.
