# Was statt einer Zeile gesagt wird, die um einen gesprochenen Befehl bittet, wo keine Befehle gehört werden: KEY-by-key für KEY.

ask-ready-first-by-key = Setzen Sie sich aufrecht hin, beide Füße auf dem Boden. Drücken Sie die Leertaste oder „bereit“, wenn Sie anfangen möchten.
ask-ready-by-key = Setzen Sie sich aufrecht hin, beide Füße auf dem Boden, und drücken Sie dann die Leertaste oder „bereit“.
ask-position-by-key = Drücken Sie die Leertaste oder „bereit“, wenn Sie in der richtigen Haltung sind.
ask-rest-over-by-key = Ruhen Sie sich aus, solange Sie möchten. Drücken Sie die Leertaste oder „bereit“, wenn es weitergehen soll.
ask-ready-again-by-key = Lassen Sie sich Zeit. Drücken Sie die Leertaste oder „bereit“, wenn Sie so weit sind.
ask-ready-once-more-by-key = Es eilt nicht. Drücken Sie die Leertaste oder „bereit“, wenn es weitergehen soll.
wait-for-ready-by-key = Ich bin hier. Drücken Sie die Leertaste oder „bereit“, wann immer Sie möchten.
knock-will-do-by-key = Wenn Sie geschluckt haben, drücken Sie die Leertaste oder „fertig“, oder klopfen Sie zweimal auf den Tisch.
skipped-by-key = Wir lassen aus: { $name }. Drücken Sie V oder „zurück“, wenn Sie es doch machen möchten.
done-again-by-key = Lassen Sie sich Zeit. Drücken Sie die Leertaste oder „fertig“, wenn Sie es gemacht haben.
done-once-more-by-key = Es eilt nicht. Drücken Sie die Leertaste oder „fertig“, wenn Sie so weit sind.
wait-for-done-by-key = Ich bin hier. Drücken Sie die Leertaste oder „fertig“, wann immer Sie möchten.
ask-sip-by-key = Nehmen Sie einen kleinen Schluck, wenn es Ihnen in der Therapie erlaubt wurde. Schlucken Sie alles herunter, und drücken Sie dann die Leertaste oder „fertig“.
ask-sip-again-by-key = Drücken Sie die Leertaste oder „fertig“, wenn alles unten ist.
stopped-by-key = Ich bin still. Mit der Leertaste geht es weiter, S überspringt, Q beendet.
paused-by-key = Lassen Sie sich Zeit. Drücken Sie die Leertaste, wenn es weitergehen soll.
resting-by-key = Ruhen Sie sich aus. Drücken Sie die Leertaste oder „bereit“, wenn es weitergehen soll.
dry-sip-by-key = Nehmen Sie einen kleinen Schluck, wenn Sie möchten, und schlucken Sie alles herunter. Drücken Sie die Leertaste oder „bereit“, wenn es weitergehen soll.
dry-lips-by-key = Befeuchten Sie die Lippen, und lassen Sie sich Zeit. Drücken Sie die Leertaste oder „bereit“, wenn es weitergehen soll.
halted-reminder-by-key = Ich bin noch da. Mit der Leertaste geht es weiter, Q beendet.
finishing-by-key = Ich beende die Übung. Drücken Sie die Leertaste, wenn Sie doch weiterüben möchten.
finishing-shown-by-key = Wird beendet. Die Leertaste oder „weiter“ setzt die Übung fort.
help-go-on-by-key = Drücken Sie die Leertaste, wenn es weitergehen soll, S für die nächste Übung oder Q zum Beenden.
all-right-by-key = Gut. Drücken Sie die Leertaste, wenn es weitergehen soll, oder Q zum Beenden.
emergency-or-fine-by-key = Wenn es vorbei ist, drücken Sie Q oder „mir geht es gut“.
unwell-go-on-by-key = Drücken Sie die Leertaste für die nächste Übung oder Q zum Beenden.
questions-first-by-key = { $n ->
    [one] Noch eine kurze Frage zum Schluss.
   *[other] Noch { SPOKEN($n) } kurze Fragen zum Schluss.
} Drücken Sie S bei jeder, die Sie nicht beantworten möchten, oder Q zum Beenden.
questions-unwell-by-key = Die Übung ist zu Ende. Drücken Sie Q oder „mir geht es gut“, wenn es so ist.
ready-not-understood-by-key = Ich habe jemanden gehört, aber gesprochene Befehle höre ich hier nicht. Drücken Sie die Leertaste oder „bereit“.
done-not-understood-by-key = Ich habe jemanden gehört, aber gesprochene Befehle höre ich hier nicht. Wenn Sie es gemacht haben, drücken Sie die Leertaste oder „fertig“.
ask-moment-again-by-key = Lassen Sie sich Zeit. Erzählen Sie von so einem Moment, oder drücken Sie S.
ask-rating-again-by-key = Lassen Sie sich Zeit. Wählen Sie auf der Seite eine Zahl, oder drücken Sie S, um sie auszulassen.
ex-word-questions-instruction-by-key = Ich umschreibe ein Wort, und Sie sagen es. Lassen Sie sich Zeit. Wenn Sie es gesagt haben, drücken Sie die Leertaste oder „fertig“; dann sage ich Ihnen mein Wort.
ex-word-questions-short-by-key = Ich umschreibe ein Wort, und Sie sagen es. Drücken Sie danach die Leertaste oder „fertig“.
ex-category-naming-instruction-by-key = Ich nenne Ihnen einen Oberbegriff. Nennen Sie dazu so viele Dinge, wie Ihnen einfallen, eines nach dem anderen, mit deutlicher Stimme. Ich achte auf die Zeit.

# Was statt einer Zeile gesagt wird, die auf eine verstandene Antwort zählt, wo nur Befehle gehört werden: KEY-by-command für KEY.

ex-word-questions-instruction-by-command = Ich umschreibe ein Wort, und Sie sagen es. Lassen Sie sich Zeit. Sagen Sie danach „fertig“; dann sage ich Ihnen mein Wort.
ex-word-questions-short-by-command = Ich umschreibe ein Wort, und Sie sagen es. Sagen Sie danach „fertig“.
ex-category-naming-instruction-by-command = Ich nenne Ihnen einen Oberbegriff. Nennen Sie dazu so viele Dinge, wie Ihnen einfallen, eines nach dem anderen, mit deutlicher Stimme. Ich achte auf die Zeit.
stop-by-hand-by-command = Während ich spreche, höre ich Sie vielleicht nicht. Drücken Sie dann Escape, und ich bin still. Auf der Seite ist es der rote Knopf.

# Wo nicht gehört wird, womit eine Übung gestartet wird, startet sie die Seite.
attend-waiting-shown-by-key = Ich warte. Starten Sie auf der Seite.
attend-invite-by-key = Es ist { $time }, Zeit für Ihre Übung: { $the }. Starten Sie auf der Seite, wann Sie möchten.
attend-invite-for-by-key = Es ist { $time }. { $name }, es ist Zeit für { $the }. Starten Sie auf der Seite, wann Sie möchten.
attend-invite-again-by-key = Ich bin noch da für Ihre Übung: { $the }. Starten Sie auf der Seite, wann Sie möchten.
attend-invite-again-for-by-key = { $name }, ich bin noch da für { $the }. Starten Sie auf der Seite, wann Sie möchten.
