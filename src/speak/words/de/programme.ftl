handout-for-shown = Für { $client }
handout-about-shown = etwa { $minutes ->
    [one] eine Minute
   *[other] { $minutes } Minuten
}
handout-seated-shown = Sitzen Sie aufrecht, beide Füße auf dem Boden, wenn nichts anderes dasteht.
handout-every-day-shown = jeden Tag um { $times }
handout-on-days-shown = { $days } um { $times }
handout-and-shown = { $before } und { $last }
handout-times-shown = { $sets ->
    [one] { $n ->
        [one] einmal
        [2] zweimal
       *[other] { $n }-mal
    }
   *[other] { $sets } Durchgänge zu je { $n }
}
handout-goal-shown = Ziel: { $s } Sekunden
handout-no-goal-shown = so lange es angenehm ist
handout-ladder-shown = in Stufen: { $rungs }
handout-setting-shown = eingestellt auf: { $setting }
handout-held-shown = { $s } Sekunden gehalten
handout-phase-shown = { $name } { $s } s
handout-phases-shown = { $phases }
handout-counts-shown = ein auf { $in }, aus auf { $out }
handout-next-on-done-shown = nach jedem „{ $done }“ sagen
handout-next-on-cue-shown = eines auf jeden Ruf
handout-phrases-shown = { $n ->
    [one] ein Satz
   *[other] { $n } Sätze
}
handout-talk-shown = { $s } Sekunden
handout-passage-shown = einmal, in Ihrem Tempo
handout-questions-shown = { $n ->
    [one] eine Frage
   *[other] { $n } Fragen
}
handout-categories-shown = { $n ->
    [one] ein Oberbegriff
   *[other] { $n } Oberbegriffe
}
handout-minute-shown = so viele, wie Ihnen in { $s } Sekunden einfallen
handout-syllables-shown = „{ $syllables }“, { $s } Sekunden lang
handout-rest-length-shown = { $s } Sekunden
handout-rest-ready-shown = bis Sie „{ $ready }“ sagen
handout-rest-between-shown = dazwischen { $s } s ruhen
handout-sips-shown = { $every ->
    [one] nach jedem ein kleiner Schluck Wasser
   *[other] nach je { $every } ein kleiner Schluck Wasser
}
handout-posture-lying-shown = im Liegen
handout-posture-standing-shown = im Stehen, an einem festen Stuhl
handout-word-shown = { $name }: mehr als üblich. Zugestimmt hat { $who } ({ $why }).
handout-word-whole-shown = Mehr Übung als üblich. Zugestimmt hat { $who } ({ $why }).
handout-grows-shown = wächst über die Wochen bis { $goal }
handout-say-title-shown = Sagen Sie
handout-say-ready-shown = „{ $word }“, um anzufangen
handout-say-done-shown = „{ $word }“, wenn Sie eines gemacht haben
handout-say-stop-shown = „{ $word }“, jederzeit
handout-say-pause-shown = „{ $word }“, um zu warten
handout-say-help-shown = „{ $word }“, um es noch einmal zu hören
handout-say-finish-shown = „{ $word }“, um für heute aufzuhören
handout-care-shown = Vorsicht: { $list }.
handout-not-for-shown = Nicht für, wenn Ihre Therapie nichts anderes sagt: { $list }.
handout-stop-title-shown = Sofort aufhören bei
handout-stop-unwell-shown = Schwindel, Schwäche, Atemnot oder Schmerzen. Wenn es anhält, rufen Sie jemanden.
handout-stop-swallow-shown = Husten, Verschlucken oder feuchter Stimme: heute keine Schluckübungen mehr. Sagen Sie es in der Therapie.
handout-stop-emergency-shown = Schmerzen in der Brust, plötzlicher Schwäche, Mühe beim Sprechen: Rufen Sie den Notruf.
handout-asked-shown = Kurze Fragen am Ende: „überspringen“ lässt eine aus.
handout-asked-weekly-shown = Einmal in der Woche ein paar kurze Fragen am Ende: „überspringen“ lässt eine aus.
handout-asked-both-shown = Kurze Fragen am Ende, einmal in der Woche ein paar mehr: „überspringen“ lässt eine aus.
handout-foot-shown = Eine Übungshilfe. Sie stellt keine Diagnose. Was Ihre Therapeutin oder Ihr Therapeut sagt, geht vor.
handout-page-shown = Seite { $page } von { $pages }
care-voice-strain-shown = aufhören, wenn der Hals wund oder angespannt ist
care-voice-hoarse-shown = nicht bei Heiserkeit
care-voice-no-force-shown = locker bleiben
care-bearing-down-shown = nicht pressen
care-straw-water-shown = Halm in die Luft, in Wasser nur, wenn erlaubt
care-stand-safely-shown = hinter einem festen Stuhl stehen, eine Hand daran
care-sit-upright-shown = aufrecht sitzen, Füße auf dem Boden
care-swallow-assessed-shown = nur wie in der Therapie gezeigt
care-saliva-only-shown = nur mit Speichel, Mund leer
care-clear-mouth-shown = erst den Mund leeren
care-gentle-bite-shown = die Zunge sanft halten
care-residue-shown = danach noch einmal schlucken
care-breath-break-heart-shown = bei Herzleiden nur, wenn erlaubt
care-sip-rules-shown = Wasser nur, wenn in der Therapie erlaubt
care-keep-breathing-shown = weiteratmen
care-lie-flat-shown = aufhören, wenn das Atmen im Liegen schwerfällt
care-neck-soreness-shown = aufhören, wenn der Schmerz sticht
care-static-effort-shown = bei hohem Blutdruck erst fragen
care-rise-slowly-shown = danach auf die Seite drehen und zwei Minuten sitzen
care-jaw-pain-shown = aufhören, wenn der Kiefer schmerzt oder hängt
care-neck-signs-shown = aufhören bei Schwindel, Übelkeit, Taubheit, Doppelbildern
care-neck-range-shown = langsam, und nur so weit es angenehm ist
care-shoulder-pain-shown = kleine Kreise, wenn es schmerzt
care-face-comfort-shown = aufhören, wenn es schmerzt
care-breathe-through-nose-shown = durch die Nase atmen
care-dentures-shown = Zahnprothese fest, oder herausnehmen
care-light-headed-shown = bei Benommenheit atmen, wie Sie mögen
care-no-forcing-shown = ohne Kraft, nie den Atem anhalten
care-set-by-clinician-shown = nur wie in der Therapie gezeigt und eingestellt
care-spoon-clean-shown = sauberer, glatter Löffel, vorn im Mund
care-syllable-tired-shown = aufhören, wenn Lippen oder Zunge ermüden
care-game-enjoy-shown = aufhören, wann immer Sie möchten
