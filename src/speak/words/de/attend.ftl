attend-say-mine = übung starten | meine übung starten | starten wir meine übung
attend-say-called = { $called } starten | starten wir { $called } | mit { $called } anfangen
attend-say-called-plain = { $called } starten | starten wir { $called }
attend-say-for = start für { $name } | für { $name } starten bitte
attend-say-for-two = start für { $first } und { $second } | start für { $second } und { $first }
attend-say-for-both = start für beide | start für uns beide
attend-say-for-all = start für alle | start für uns alle
attend-say-for-unknown = start für
attend-say-for-and-unknown = start für { $name } und
attend-say-name = { $name } | für { $name }
attend-say-which = { $called } | die { $called }
attend-say-which-plain = { $called }
attend-say-not-now = jetzt nicht | vielleicht später | später bitte | später
attend-say-never-mind = schon gut | für heute beenden | genug für heute | vergessen wir es
attend-say-left = was steht heute noch an | was steht noch an
attend-say-how = wie lief es | wie ist es gelaufen
attend-say-thanks = danke | in ordnung | ich komme
attend-waiting-shown = Ich warte. Sagen Sie „Übung starten“.
attend-next-shown = Als Nächstes: { $called }, { $clock }
attend-next-shown-for = Als Nächstes: { $called } für { $name }, { $clock }
attend-start-unheard-shown = Ohne Erkennungsmodell höre ich in dieser Sprache nicht, womit eine Übung gestartet wird: Starten Sie auf der Seite. Befehle während der Übung höre ich. Mit einem eigenen Vosk-Modell: --model.
attend-deaf-shown = Ich höre nichts
attend-time-full = { $hour ->
    [one] ein Uhr
   *[other] { SPOKEN($hour) } Uhr
}
attend-time-quarter-past = Viertel nach { SPOKEN($hour) }
attend-time-half-past = { $hour ->
    [1] halb zwei
    [2] halb drei
    [3] halb vier
    [4] halb fünf
    [5] halb sechs
    [6] halb sieben
    [7] halb acht
    [8] halb neun
    [9] halb zehn
    [10] halb elf
    [11] halb zwölf
   *[other] halb eins
}
attend-time-quarter-to = Viertel vor { SPOKEN($hour) }
attend-time-past = { SPOKEN($past) } nach { SPOKEN($hour) }
attend-time-to = { SPOKEN($past) } vor { SPOKEN($hour) }
attend-invite = Es ist { $time }, Zeit für Ihre Übung: { $the }. Sagen Sie „Übung starten“, wann Sie möchten.
attend-invite-for = Es ist { $time }. { $name }, es ist Zeit für { $the }. Sagen Sie „Start für { $name }“, wann Sie möchten.
attend-invite-again = Ich bin noch da für Ihre Übung: { $the }. Sagen Sie „Übung starten“, wann Sie möchten, oder sagen Sie „später“.
attend-invite-again-for = { $name }, ich bin noch da für { $the }. Sagen Sie „Start für { $name }“, wann Sie möchten, oder sagen Sie „später“.
attend-postponed = Gut. Ich frage in einer halben Stunde wieder.
attend-left-alone = Gut. Für heute lassen wir es. Sie können trotzdem jederzeit anfangen.
attend-starting = Ja. Einen Augenblick.
attend-starting-for = Für { $name }. Einen Augenblick.
attend-for-whom-two = Für wen ist es? { $first } oder { $second }?
attend-for-whom-more = Für wen ist es? Bitte sagen Sie den Namen.
attend-who-first-two = Ich leite immer nur eine Person an. Wer fängt an? { $first } oder { $second }?
attend-who-first-more = Ich leite immer nur eine Person an. Wer fängt an? Bitte sagen Sie den Namen.
attend-unknown-name = Diesen Namen kenne ich nicht. Ich kenne { $names } und { $last }. Für wen ist es?
attend-unknown-name-one = Diesen Namen kenne ich nicht. Ich kenne { $name }.
attend-which-two = Welche? { $first } oder { $second }?
attend-which-more = Welche? Bitte sagen Sie, wie sie heißt.
attend-dropped = Gut.
attend-confirm = War das: { $said }? Ja oder nein?
attend-again-mine = Übung starten
attend-again-for = Start für { $name }
attend-again-called = { $the } starten
attend-again-not-now = jetzt nicht
attend-again-left = was steht heute noch an
attend-again-how = wie lief es
attend-not-begun = Die Übung konnte nicht beginnen. Auf dem Bildschirm steht, warum.
attend-articles = der | die | das | mein | meine | unser | unsere
attend-the-called = { $called }
attend-he = Er
attend-she = Sie
attend-they = Die Person
attend-left-today = Noch zu tun: { $the }, um { $time }.
attend-left-today-for = Noch zu tun: { $the } für { $name }, um { $time }.
attend-left-undated = Heute steht noch an: { $the }.
attend-left-undated-for = Für { $name } steht heute noch an: { $the }.
attend-left-none = Für heute ist alles getan.
attend-told-nobody = Heute hat noch niemand geübt.
attend-told-all = { $who } hat { $all ->
    [one] die eine Übung gemacht
   *[other] alle { SPOKEN($all) } Übungen gemacht
}.
attend-told-part = { $who } hat { SPOKEN($done) } von { SPOKEN($all) } gemacht.
attend-told-none = { $who } hat angefangen, aber keine der { SPOKEN($all) } Übungen gemacht.
attend-told-left-one = { $who } hat { SPOKEN($done) } von { SPOKEN($all) } gemacht; ausgelassen wurde: { $first }.
attend-told-left-two = { $who } hat { SPOKEN($done) } von { SPOKEN($all) } gemacht; ausgelassen wurden: { $first } und { $second }.
attend-told-left-more = { $who } hat { SPOKEN($done) } von { SPOKEN($all) } gemacht; { SPOKEN($left) } wurden ausgelassen.
attend-told-pain = Während der Übung hat etwas wehgetan.
attend-told-dizzy = Während der Übung gab es Schwindel.
attend-told-help = Während der Übung wurde um Hilfe gerufen.
attend-told-chest-pain = Während der Übung gab es Schmerzen in der Brust.
attend-told-cant-breathe = Während der Übung gab es Atemnot.
attend-told-choking = Während der Übung ist etwas in die falsche Kehle geraten.
attend-told-sick = Während der Übung gab es Übelkeit.
attend-early-chest-pain = Sie endete vorzeitig: Es gab Schmerzen in der Brust.
attend-early-cant-breathe = Sie endete vorzeitig: Es gab Atemnot.
attend-early-choking = Sie endete vorzeitig: Etwas geriet in die falsche Kehle.
attend-early-sick = Sie endete vorzeitig: Es gab Übelkeit.
attend-early-unwell = Sie endete vorzeitig: Es ging nicht gut.
attend-early-pain = Sie endete vorzeitig: Etwas tat weh.
attend-early-dizzy = Sie endete vorzeitig: Es gab Schwindel.
attend-early-help = Sie endete vorzeitig, nach einem Hilferuf.
attend-early-finished = Sie endete vorzeitig, auf eigenen Wunsch.
attend-early-no-answer = Sie endete vorzeitig: Es kam keine Antwort.
attend-early-no-agreement = Es wurde nichts gemacht: Die Zustimmung der Therapeutin oder des Therapeuten fehlt noch.
attend-early-broken-off = Sie wurde abgebrochen.
attend-notice-pain = { $name } hat Schmerzen. Bitte sehen Sie nach.
attend-notice-pain-during = { $name } hatte Schmerzen bei der Übung { $exercise }. Bitte sehen Sie nach.
attend-notice-dizzy = { $name } ist schwindlig. Bitte sehen Sie nach.
attend-notice-dizzy-during = { $name } wurde schwindlig bei der Übung { $exercise }. Bitte sehen Sie nach.
attend-notice-chest-pain = { $name } hat Schmerzen in der Brust. Bitte gehen Sie sofort hin.
attend-notice-chest-pain-during = { $name } hatte Schmerzen in der Brust bei der Übung { $exercise }. Bitte gehen Sie sofort hin.
attend-notice-cant-breathe = { $name } bekommt keine Luft. Bitte gehen Sie sofort hin.
attend-notice-cant-breathe-during = { $name } bekam schlecht Luft bei der Übung { $exercise }. Bitte gehen Sie sofort hin.
attend-notice-choking = { $name } hat sich verschluckt. Bitte gehen Sie sofort hin.
attend-notice-choking-during = { $name } hat sich bei der Übung { $exercise } verschluckt. Bitte gehen Sie sofort hin.
attend-notice-sick = { $name } ist übel. Bitte sehen Sie nach.
attend-notice-sick-during = { $name } war bei der Übung { $exercise } übel. Bitte sehen Sie nach.
attend-notice-help = { $name } hat um Hilfe gebeten. Bitte sehen Sie nach.
attend-notice-no-answer = { $name } antwortet nicht mehr. Bitte sehen Sie nach.
attend-notice-missed = { $name } hat oft nicht geantwortet. Bitte sehen Sie nach.
attend-notice-thanks = Sagen Sie „danke“, wenn Sie das gehört haben.
attend-notice-answered = Gut.
attend-deaf-gone = Ich höre niemanden: Mein Mikrofon ist nicht angeschlossen. Bitte prüfen Sie, ob es eingesteckt ist.
attend-deaf-silent = Ich höre niemanden: Von meinem Mikrofon kommt kein Ton. Bitte prüfen Sie, ob es ausgeschaltet ist.
attend-deaf-words = Ich verstehe gerade niemanden. Bitte starten Sie mich neu.
attend-tell-faults = Bitte sagen Sie { $whom } Bescheid.
attend-hears-again = Ich höre wieder.
