## Stimme

ex-long-ah-name = Langes Ah
ex-long-ah-purpose = Es soll eine kräftige, gleichmäßige Stimme auf einem Atem trainieren.
ex-long-ah-instruction = Sitzen Sie aufrecht, und atmen Sie ein. Halten Sie dann ein Ah in mittlerer Höhe, solange es gleichmäßig bleibt.
ex-long-ah-short = Das lange Ah, klar und gleichmäßig.
ex-long-ah-cue = Einatmen… und ah.
ex-long-ah-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-comfortable-ah-name = Bequemes Ah
ex-comfortable-ah-purpose = Es soll Ihre Stimme zeigen, wie sie sonst ist.
ex-comfortable-ah-instruction = Sagen Sie etwa fünf Sekunden lang ah, so hoch und so laut, wie Sie sonst sprechen.
ex-comfortable-ah-short = Ein gewöhnliches Ah, wie beim Sprechen.
ex-comfortable-ah-cue = Einatmen… und ein müheloses Ah.
ex-comfortable-ah-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-high-ee-name = Hohes I
ex-high-ee-purpose = Es soll Ihre Stimme nach oben dehnen.
ex-high-ee-instruction = Atmen Sie ein, singen Sie dann ein hohes, leichtes I, und halten Sie es einige Sekunden. Gehen Sie hoch, aber ohne Druck.
ex-high-ee-short = Das hohe I, leicht und mühelos.
ex-high-ee-cue = Einatmen… und ein hohes I.
ex-high-ee-care = Nur so hoch, wie es angenehm ist; hören Sie auf, wenn Sie sich benommen fühlen.

ex-glide-up-name = Gleiten nach oben
ex-glide-up-purpose = Es soll den Umfang Ihrer Stimme weit halten.
ex-glide-up-instruction = Beginnen Sie mit dem tiefsten angenehmen Ton, und gleiten Sie auf Ah ohne Absatz hinauf zum höchsten angenehmen Ton.
ex-glide-up-short = Gleiten Sie von tief nach hoch.
ex-glide-up-cue = Einatmen… tief beginnen, und hinaufgleiten.
ex-glide-up-care = Bleiben Sie bei angenehmen Tönen, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-glide-down-name = Gleiten nach unten
ex-glide-down-purpose = Es soll den Umfang Ihrer Stimme weit halten.
ex-glide-down-instruction = Beginnen Sie mit dem höchsten angenehmen Ton, und gleiten Sie auf Ah ohne Absatz hinunter zum tiefsten angenehmen Ton.
ex-glide-down-short = Gleiten Sie von hoch nach tief.
ex-glide-down-cue = Einatmen… hoch beginnen, und hinuntergleiten.
ex-glide-down-care = Bleiben Sie bei angenehmen Tönen, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-functional-phrases-name = Eigene Sätze
ex-functional-phrases-purpose = Sie sollen Ihre kräftige Stimme in die Sätze tragen, die Sie jeden Tag sagen.
ex-functional-phrases-instruction = Ich sage einen Satz aus Ihrem Alltag. Sprechen Sie ihn mit kräftiger Stimme nach.
ex-functional-phrases-short = Ihre eigenen Sätze, mit kräftiger Stimme.
ex-functional-phrases-cue = Sie sind dran.

ex-counting-on-a-breath-name = Zählen auf einem Atem
ex-counting-on-a-breath-purpose = Es soll Ihre Stimme über einen ganzen Atemzug tragen.
ex-counting-on-a-breath-instruction = Ich zähle. Holen Sie Luft, und zählen Sie auf diesem einen Atem dasselbe nach, am Ende so deutlich wie am Anfang.
ex-counting-on-a-breath-short = Zählen Sie nach, alles auf einem Atem.
ex-counting-on-a-breath-cue = Sie sind dran.
ex-counting-on-a-breath-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-days-on-a-breath-name = Wochentage auf einem Atem
ex-days-on-a-breath-purpose = Es soll Ihre Stimme über einen ganzen Atemzug tragen.
ex-days-on-a-breath-instruction = Ich sage einige Wochentage. Holen Sie Luft, und sprechen Sie sie auf diesem einen Atem nach, am Ende so deutlich wie am Anfang.
ex-days-on-a-breath-short = Sprechen Sie die Tage nach, alles auf einem Atem.
ex-days-on-a-breath-cue = Sie sind dran.
ex-days-on-a-breath-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-reading-passage-name = Lesetext
ex-reading-passage-purpose = Er soll Ihre Stimme durch eine ganze Seite tragen und ihren Pegel und ihre Sprechpausen zeigen.
ex-reading-passage-instruction = Auf dem Bildschirm oder auf Ihrem Blatt steht eine kurze Geschichte. Lesen Sie sie von Anfang bis Ende vor, in Ihrem Tempo.
ex-reading-passage-short = Lesen Sie die Geschichte vor, in Ihrem Tempo.
ex-reading-passage-cue = Beginnen Sie, wenn Sie möchten.

ex-talk-on-a-prompt-name = Erzählen
ex-talk-on-a-prompt-purpose = Es soll Ihre Stimme ins alltägliche Sprechen tragen.
ex-talk-on-a-prompt-instruction = Ich frage Sie nach etwas. Erzählen Sie frei davon, und ich sage Ihnen, wenn die Zeit um ist.
ex-talk-on-a-prompt-short = Erzählen Sie frei, bis die Zeit um ist.
ex-talk-on-a-prompt-cue = Erzählen Sie mir von etwas, das Sie gern tun.

ex-loudness-steps-name = Lautstärkestufen
ex-loudness-steps-purpose = Sie sollen Ihnen die Kontrolle darüber geben, wie laut Sie sind.
ex-loudness-steps-instruction = Halten Sie ein Ah in Stufen: sanft, mittel, kräftig und zurück zu mittel. Machen Sie jede Stufe deutlich, und drücken Sie nie.
ex-loudness-steps-short = Ein Ah in Stufen: sanft, mittel, kräftig.
ex-loudness-steps-cue = Einatmen… und ah.
ex-loudness-steps-rung-low = Einatmen… ein sanftes Ah.
ex-loudness-steps-rung-middle = Einatmen… ein mittleres Ah.
ex-loudness-steps-rung-high = Einatmen… ein kräftiges Ah.
ex-loudness-steps-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-pitch-steps-name = Tonhöhenstufen
ex-pitch-steps-purpose = Sie sollen Ihnen die Kontrolle über Ihre Tonhöhe geben.
ex-pitch-steps-instruction = Halten Sie ein Ah in Stufen: tief, in der Mitte, hoch und zurück zur Mitte. Bleiben Sie bei angenehmen Tönen.
ex-pitch-steps-short = Ein Ah in Stufen: tief, Mitte, hoch.
ex-pitch-steps-cue = Einatmen… und ah.
ex-pitch-steps-rung-low = Einatmen… ein tiefes Ah.
ex-pitch-steps-rung-middle = Einatmen… ein Ah in der Mitte.
ex-pitch-steps-rung-high = Einatmen… ein hohes Ah.
ex-pitch-steps-care = Bleiben Sie bei angenehmen Tönen, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-sentence-melody-name = Satzmelodie
ex-sentence-melody-purpose = Sie soll hören lassen, ob Sie fragen oder etwas feststellen.
ex-sentence-melody-instruction = Ich sage einen Satz, als Frage oder als Aussage. Sprechen Sie ihn nach. Lassen Sie die Stimme am Ende einer Frage steigen und am Ende einer Aussage sinken.
ex-sentence-melody-short = Sprechen Sie jeden Satz nach: Fragen steigen, Aussagen sinken.
ex-sentence-melody-cue = Sie sind dran.

ex-sentence-stress-name = Satzbetonung
ex-sentence-stress-purpose = Sie soll das Wort hervorheben, auf das es ankommt.
ex-sentence-stress-instruction = Ich sage einen Satz, der zwei Wörter einander gegenüberstellt. Sprechen Sie ihn nach, und heben Sie diese beiden Wörter hervor.
ex-sentence-stress-short = Sprechen Sie jeden Satz nach, und heben Sie hervor, worauf es ankommt.
ex-sentence-stress-cue = Sie sind dran.

ex-paced-phrases-name = Sätze im Takt
ex-paced-phrases-purpose = Sie sollen Ihr Sprechen verlangsamen, damit jedes Wort deutlich wird. Manchen hilft das, anderen nicht.
ex-paced-phrases-instruction = Ich sage einen Satz und zähle vier Schläge. Sprechen Sie ihn dann im selben Takt, auf jeden Schlag ein Wort. Ein Punkt auf dem Bildschirm zeigt den Takt.
ex-paced-phrases-short = Ich zähle vier. Sprechen Sie dann den Satz, auf jeden Schlag ein Wort.
ex-paced-phrases-cue = Sie sind dran.

ex-easy-hum-name = Sanftes Summen
ex-easy-hum-purpose = Es soll Ihre Stimme nach lauter Arbeit zur Ruhe kommen lassen.
ex-easy-hum-instruction = Schließen Sie locker die Lippen, und summen Sie ein sanftes M, sodass die Lippen vibrieren.
ex-easy-hum-short = Ein sanftes Summen, das in den Lippen vibriert.
ex-easy-hum-cue = Einatmen… und summen.
ex-easy-hum-care = Sanft und mühelos; hören Sie auf, wenn Sie sich benommen fühlen.

ex-straw-voicing-name = Stimme durch den Strohhalm
ex-straw-voicing-purpose = Sie soll Ihre Stimme nach lauter Arbeit zur Ruhe kommen lassen.
ex-straw-voicing-instruction = Schließen Sie die Lippen um einen Strohhalm. Lassen Sie ein sanftes U strömen, alle Luft durch den Halm.
ex-straw-voicing-short = Ein sanftes U durch den Strohhalm.
ex-straw-voicing-cue = Einatmen… und u, durch den Halm.
ex-straw-voicing-care = Sanft und mühelos; hören Sie auf, wenn Sie sich benommen fühlen.

## Schlucken

ex-tongue-hold-swallow-name = Schlucken mit gehaltener Zunge
ex-tongue-hold-swallow-purpose = Es soll die Rachenhinterwand kräftigen. Ob es das tut, darin sind sich die Studien nicht einig.
ex-tongue-hold-swallow-instruction = Nur mit Speichel, der Mund ist leer. Legen Sie die Zungenspitze knapp vor die Schneidezähne, halten Sie sie dort sanft mit den Zähnen, und schlucken Sie.
ex-tongue-hold-swallow-short = Zungenspitze zwischen die Zähne, und schlucken. Nur Speichel.
ex-tongue-hold-swallow-cue = Zunge zwischen die Zähne… und schlucken.
ex-tongue-hold-swallow-before = Schlucken mit gehaltener Zunge. Nicht machen, wenn beim Schlucken Reste im Rachen bleiben oder sich Ihr Kehlkopf dabei wenig hebt; nie mit Essen, Getränk oder Tabletten im Mund.
ex-tongue-hold-swallow-care = Nur Speichel, sonst nichts im Mund.

ex-mid-swallow-hold-name = Schlucken mit Halten
ex-mid-swallow-hold-purpose = Es soll Ihren Kehlkopf länger oben halten, damit der Eingang der Speiseröhre offen bleibt.
ex-mid-swallow-hold-instruction = Schlucken Sie, und spüren Sie, wie der Kehlkopf steigt. Wenn er ganz oben ist, spannen Sie an, und halten Sie ihn einige Sekunden oben. Lassen Sie ihn dann sinken, und atmen Sie aus.
ex-mid-swallow-hold-short = Schlucken, oben halten, dann sinken lassen.
ex-mid-swallow-hold-cue = Schlucken… und oben halten.
ex-mid-swallow-hold-before = Schlucken mit Halten. Dabei halten Sie den Atem an. Nicht machen bei Herzkrankheit, unregelmäßigem Herzschlag, hohem Blutdruck, Lungenkrankheit oder Atemnot oder nach einem kürzlichen Schlaganfall.
ex-mid-swallow-hold-care = Beginnen Sie mit leerem Mund, und atmen Sie zwischen den Schlucken frei.

ex-effortful-swallow-name = Kräftiges Schlucken
ex-effortful-swallow-purpose = Es soll Zunge und Rachen zusammen kräftigen. Bei Parkinson fand eine kleine Studie gemischte Ergebnisse.
ex-effortful-swallow-instruction = Sammeln Sie Speichel. Schlucken Sie dann so kräftig Sie können, als müsste ein großer Bissen hinunter. Drücken Sie mit Zunge und Rachen.
ex-effortful-swallow-short = Kräftig schlucken, mit Zunge und Rachen.
ex-effortful-swallow-cue = Und kräftig schlucken.
ex-effortful-swallow-before = Kräftiges Schlucken. Dabei halten Sie den Atem an. Nicht machen bei Herzkrankheit, unregelmäßigem Herzschlag, hohem Blutdruck, Lungenkrankheit oder Atemnot oder nach einem kürzlichen Schlaganfall.
ex-effortful-swallow-care = Beginnen Sie mit leerem Mund, und atmen Sie zwischen den Schlucken frei.

## Kopf und Hals

ex-head-lift-sustained-name = Kopf heben und halten
ex-head-lift-sustained-purpose = Es soll die Muskeln unter dem Kinn kräftigen, die den Eingang der Speiseröhre öffnen.
ex-head-lift-sustained-instruction = Legen Sie sich flach auf den Rücken, ohne Kissen. Beide Schultern bleiben liegen. Heben Sie nur den Kopf, schauen Sie auf Ihre Zehen, und halten Sie den Kopf oben, während Sie atmen.
ex-head-lift-sustained-short = Flach auf dem Rücken. Nur den Kopf heben, auf die Zehen schauen und atmen.
ex-head-lift-sustained-cue = Schultern unten… und heben.
ex-head-lift-sustained-before = Kopf heben und halten. Nicht machen bei brüchigen Knochen, Leisten- oder Bauchbruch, Luftröhrenschnitt oder Leiden an Hals, Kopf, Augen, Herz oder Blutdruck, in der Schwangerschaft, nach kürzlicher Bauchoperation, oder wenn Sie nicht flach liegen und sicher aufstehen können.
ex-head-lift-sustained-care = Flach liegen, weiteratmen, und vor dem Aufsetzen auf die Seite drehen.
ex-head-lift-sustained-phase-lift = Oben halten, und atmen.

ex-head-lift-repeated-name = Kopf heben, wiederholt
ex-head-lift-repeated-purpose = Es soll die Muskeln unter dem Kinn kräftigen, die den Eingang der Speiseröhre öffnen.
ex-head-lift-repeated-instruction = Legen Sie sich flach auf den Rücken, ohne Kissen. Beide Schultern bleiben liegen. Jedes Mal, wenn ich „heben“ sage, heben Sie nur den Kopf, schauen auf Ihre Zehen und legen ihn wieder ab.
ex-head-lift-repeated-short = Flach auf dem Rücken. Kopf heben, auf die Zehen schauen und wieder ablegen.
ex-head-lift-repeated-cue = Heben… und ablegen.
ex-head-lift-repeated-before = Kopf heben, wiederholt. Nicht machen bei brüchigen Knochen, Leisten- oder Bauchbruch, Luftröhrenschnitt oder Leiden an Hals, Kopf, Augen, Herz oder Blutdruck, in der Schwangerschaft, nach kürzlicher Bauchoperation, oder wenn Sie nicht flach liegen und sicher aufstehen können.
ex-head-lift-repeated-care = Flach liegen, weiteratmen, und vor dem Aufsetzen auf die Seite drehen.

ex-chin-tuck-ball-name = Kinn auf den Ball, gehalten
ex-chin-tuck-ball-purpose = Es soll im Sitzen die Muskeln unter dem Kinn kräftigen.
ex-chin-tuck-ball-instruction = Sitzen Sie aufrecht, mit einem weichen Ball zwischen Kinn und Brust. Drücken Sie das Kinn auf den Ball, und drücken Sie weiter, während Sie atmen.
ex-chin-tuck-ball-short = Kinn auf den Ball drücken, und atmen.
ex-chin-tuck-ball-cue = Aufrecht sitzen… und drücken.
ex-chin-tuck-ball-before = Kinn auf den Ball, gehalten. Nicht machen bei Leiden an Hals oder Kiefergelenk, brüchigen Halswirbeln oder einem Luftröhrenschnitt. Bei hohem Blutdruck fragen Sie vorher in der Therapie.
ex-chin-tuck-ball-care = Weiteratmen, und loslassen, wenn Kiefer oder Nacken schmerzt.
ex-chin-tuck-ball-phase-press = Weiter drücken, und atmen.

ex-chin-tuck-ball-repeated-name = Kinn auf den Ball, wiederholt
ex-chin-tuck-ball-repeated-purpose = Es soll im Sitzen die Muskeln unter dem Kinn kräftigen.
ex-chin-tuck-ball-repeated-instruction = Sitzen Sie aufrecht, mit einem weichen Ball zwischen Kinn und Brust. Jedes Mal, wenn ich „drücken“ sage, drücken Sie das Kinn auf den Ball und lassen dann los.
ex-chin-tuck-ball-repeated-short = Kinn auf den Ball drücken, dann loslassen.
ex-chin-tuck-ball-repeated-cue = Drücken… und loslassen.
ex-chin-tuck-ball-repeated-before = Kinn auf den Ball, wiederholt. Nicht machen bei Leiden an Hals oder Kiefergelenk, brüchigen Halswirbeln oder einem Luftröhrenschnitt.
ex-chin-tuck-ball-repeated-care = Weiteratmen, und loslassen, wenn Kiefer oder Nacken schmerzt.

ex-neck-turns-name = Kopf drehen
ex-neck-turns-purpose = Es soll Ihren Hals beweglich halten.
ex-neck-turns-instruction = Sitzen Sie aufrecht, mit lockeren Schultern. Drehen Sie den Kopf langsam zu einer Seite, so weit es angenehm ist, und bleiben Sie dort. Dann zur Mitte, und dann zur anderen Seite.
ex-neck-turns-standing = Stehen Sie aufrecht hinter einem festen Stuhl, halten Sie sich an der Lehne, die Schultern locker. Drehen Sie den Kopf langsam zu einer Seite, so weit es angenehm ist, und bleiben Sie dort. Dann zur Mitte, und dann zur anderen Seite.
ex-neck-turns-short = Langsam zu jeder Seite drehen, nur so weit es angenehm ist.
ex-neck-turns-cue = Schauen Sie geradeaus.
ex-neck-turns-before = Kopf drehen. Nicht machen nach kürzlichem Schlaganfall, Halsverletzung oder Halsoperation, bei brüchigen Halswirbeln, verengten Halsschlagadern, steifem, instabilem oder sich verdrehendem Hals, mit Luftröhrenschnitt oder dem Kabel eines Implantats im Hals.
ex-neck-turns-care = Langsam bewegen, und nur so weit es angenehm ist.
ex-neck-turns-phase-left = Langsam nach links drehen, und bleiben.
ex-neck-turns-phase-middle = Und zurück zur Mitte.
ex-neck-turns-phase-right = Langsam nach rechts drehen, und bleiben.

ex-neck-tilts-name = Kopf neigen
ex-neck-tilts-purpose = Es soll die Seiten Ihres Halses lockern.
ex-neck-tilts-instruction = Sitzen Sie aufrecht, mit lockeren Schultern. Neigen Sie ein Ohr langsam zur Schulter, so weit es angenehm ist, und bleiben Sie dort. Dann zurück zur Mitte, und zur anderen Seite neigen.
ex-neck-tilts-standing = Stehen Sie aufrecht hinter einem festen Stuhl, halten Sie sich an der Lehne, die Schultern locker. Neigen Sie ein Ohr langsam zur Schulter, so weit es angenehm ist, und bleiben Sie dort. Dann zurück zur Mitte, und zur anderen Seite neigen.
ex-neck-tilts-short = Langsam zu jeder Seite neigen, nur so weit es angenehm ist.
ex-neck-tilts-cue = Schauen Sie geradeaus.
ex-neck-tilts-before = Kopf neigen. Nicht machen nach kürzlichem Schlaganfall, Halsverletzung oder Halsoperation, bei brüchigen Halswirbeln, verengten Halsschlagadern, steifem, instabilem oder sich verdrehendem Hals, mit Luftröhrenschnitt oder dem Kabel eines Implantats im Hals.
ex-neck-tilts-care = Langsam bewegen, und nur so weit es angenehm ist.
ex-neck-tilts-phase-left = Linkes Ohr zur Schulter, und bleiben.
ex-neck-tilts-phase-middle = Und zurück zur Mitte.
ex-neck-tilts-phase-right = Rechtes Ohr zur Schulter, und bleiben.

ex-shoulder-rolls-name = Schulterkreisen
ex-shoulder-rolls-purpose = Es soll Ihre Schultern lockern, damit Atem und Stimme frei fließen.
ex-shoulder-rolls-instruction = Sitzen Sie aufrecht, und lassen Sie die Arme hängen. Jedes Mal, wenn ich „kreisen“ sage, führen Sie beide Schultern in einem langsamen Kreis nach oben, hinten und unten.
ex-shoulder-rolls-standing = Stehen Sie aufrecht neben einem festen Stuhl, nah genug, um sich daran zu halten, und lassen Sie die Arme hängen. Jedes Mal, wenn ich „kreisen“ sage, führen Sie beide Schultern in einem langsamen Kreis nach oben, hinten und unten.
ex-shoulder-rolls-short = Langsame Kreise: nach oben, hinten und unten.
ex-shoulder-rolls-cue = Und kreisen.

## Gesicht, Zunge und Kiefer

ex-lip-press-smile-name = Lippen pressen und lächeln
ex-lip-press-smile-purpose = Es soll Ihre Lippen darin trainieren, fest zu schließen und sich deutlich zu bewegen.
ex-lip-press-smile-instruction = Pressen Sie die Lippen aufeinander, und atmen Sie durch die Nase. Wenn ich „fester“ sage, pressen Sie stärker. Am Ende lächeln Sie breit.
ex-lip-press-smile-short = Lippen aufeinanderpressen, am Ende fester, dann lächeln.
ex-lip-press-smile-cue = Lippen zusammen… und pressen.
ex-lip-press-smile-care = Durch die Nase atmen, und loslassen, wenn das Gesicht schmerzt.
ex-lip-press-smile-phase-press = Halten.
ex-lip-press-smile-phase-tighter = Jetzt fester.
ex-lip-press-smile-phase-smile = Und lächeln.

ex-cheek-puff-name = Volle Backen
ex-cheek-puff-purpose = Es soll Lippen und Wangen darin trainieren, den Mund geschlossen zu halten.
ex-cheek-puff-instruction = Schließen Sie die Lippen, füllen Sie die Wangen mit Luft, und behalten Sie sie darin. Atmen Sie durch die Nase.
ex-cheek-puff-short = Wangen mit Luft füllen, und die Luft darin behalten.
ex-cheek-puff-cue = Lippen zu… und die Wangen füllen.
ex-cheek-puff-care = Durch die Nase atmen, und loslassen, wenn das Gesicht schmerzt.
ex-cheek-puff-phase-puff = Die Luft darin behalten.

ex-tongue-against-spoon-name = Zunge gegen den Löffel
ex-tongue-against-spoon-purpose = Es soll Ihre Zunge nach vorn und zu beiden Seiten kräftigen.
ex-tongue-against-spoon-instruction = Halten Sie die Rückseite eines Löffels an die Zunge. Drücken Sie mit der Zunge dagegen, nach vorn, dann nach links, dann nach rechts, und atmen Sie weiter.
ex-tongue-against-spoon-short = Zunge gegen den Löffel drücken: vorn, links, rechts.
ex-tongue-against-spoon-cue = Löffel an die Zunge… und drücken.
ex-tongue-against-spoon-before = Zunge gegen den Löffel. Sie drücken kräftig. Nicht machen nach einer kürzlichen Verletzung oder Operation im Mund. Bei hohem Blutdruck fragen Sie vorher in der Therapie.
ex-tongue-against-spoon-care = Atmen Sie weiter, während Sie drücken.
ex-tongue-against-spoon-phase-forward = Nach vorn.
ex-tongue-against-spoon-phase-left = Nach links.
ex-tongue-against-spoon-phase-right = Und nach rechts.

ex-lips-around-spoon-name = Lippen um den Löffel
ex-lips-around-spoon-purpose = Es soll Ihre Lippen darin trainieren, fest zu schließen.
ex-lips-around-spoon-instruction = Halten Sie den Stiel eines Löffels waagerecht zwischen den Lippen, nicht zwischen den Zähnen. Halten Sie ihn dort, und atmen Sie durch die Nase.
ex-lips-around-spoon-short = Den Löffel waagerecht zwischen den Lippen halten.
ex-lips-around-spoon-cue = Löffel zwischen die Lippen… und halten.
ex-lips-around-spoon-care = Durch die Nase atmen, und loslassen, wenn das Gesicht schmerzt.
ex-lips-around-spoon-phase-hold = Waagerecht halten.

ex-tongue-press-name = Zunge an den Gaumen
ex-tongue-press-purpose = Es soll Ihre Zunge für das Schlucken und für deutliche Laute kräftigen.
ex-tongue-press-instruction = Schließen Sie den Mund. Drücken Sie die Zunge fest an den Gaumen, und drücken Sie weiter, während Sie durch die Nase atmen.
ex-tongue-press-short = Die Zunge an den Gaumen drücken.
ex-tongue-press-cue = Zunge nach oben… und drücken.
ex-tongue-press-before = Zunge an den Gaumen. Sie drücken kräftig. Nicht machen nach einer kürzlichen Verletzung oder Operation im Mund. Bei hohem Blutdruck fragen Sie vorher in der Therapie.
ex-tongue-press-care = Atmen Sie weiter, während Sie drücken.
ex-tongue-press-phase-press = Weiter drücken.

ex-tongue-side-to-side-name = Zunge von Seite zu Seite
ex-tongue-side-to-side-purpose = Es soll Ihre Zunge flink und beweglich halten.
ex-tongue-side-to-side-instruction = Öffnen Sie den Mund ein wenig. Jedes Mal, wenn ich „links und rechts“ sage, berühren Sie mit der Zungenspitze einen Mundwinkel und dann den anderen.
ex-tongue-side-to-side-short = Zungenspitze von Mundwinkel zu Mundwinkel.
ex-tongue-side-to-side-cue = Links… und rechts.

ex-tongue-reach-name = Zunge strecken
ex-tongue-reach-purpose = Es soll Ihre Zunge frei beweglich halten.
ex-tongue-reach-instruction = Strecken Sie die Zunge heraus, so weit es angenehm ist, und halten Sie sie dort. Zeigen Sie dann mit ihr nach oben zur Nase, und halten Sie sie dort.
ex-tongue-reach-short = Zunge heraus, dann nach oben.
ex-tongue-reach-cue = Mund auf.
ex-tongue-reach-phase-out = Zunge heraus, und dort halten.
ex-tongue-reach-phase-up = Jetzt nach oben.

ex-jaw-opening-name = Mund weit öffnen
ex-jaw-opening-purpose = Es soll die Muskeln kräftigen, die beim Schlucken den Kehlkopf heben.
ex-jaw-opening-instruction = Öffnen Sie den Mund so weit, wie es angenehm ist. Halten Sie ihn offen, und atmen Sie weiter, bis ich „lösen“ sage.
ex-jaw-opening-short = Weit öffnen, so weit es angenehm ist, und halten.
ex-jaw-opening-cue = Und weit öffnen.
ex-jaw-opening-before = Mund weit öffnen. Nicht machen bei Leiden am Kiefergelenk oder wenn Ihr Kiefer schon einmal ausgerenkt war. Bei hohem Blutdruck fragen Sie vorher in der Therapie.
ex-jaw-opening-care = Weiteratmen, und den Mund schließen, wenn der Kiefer schmerzt.
ex-jaw-opening-phase-open = Offen halten, und atmen.

## Atmen und Sprechen

ex-nasal-breathing-name = Nasenatmung
ex-nasal-breathing-purpose = Sie soll Sie beruhigen und Ihnen die Kontrolle über ein längeres Ausatmen geben.
ex-nasal-breathing-instruction = Schließen Sie den Mund. Atmen Sie durch die Nase ein, während ich zähle. Lassen Sie dann die Luft langsam durch die Nase ausströmen, während ich weiterzähle.
ex-nasal-breathing-short = Durch die Nase ein und aus, so wie ich zähle.
ex-nasal-breathing-cue = Ausatmen… und wir beginnen.
ex-nasal-breathing-care = Sanft atmen; lassen Sie das Zählen, wenn Sie sich benommen fühlen.

ex-breath-out-resistance-name = Ausatmen gegen Widerstand
ex-breath-out-resistance-purpose = Es soll die Muskeln kräftigen, mit denen Sie ausatmen und husten.
ex-breath-out-resistance-instruction = Nehmen Sie den Atemtrainer aus Ihrer Therapie. Atmen Sie ein, schließen Sie die Lippen darum, und blasen Sie kräftig und gleichmäßig, bis die Luft heraus ist.
ex-breath-out-resistance-short = Einatmen, und kräftig durch den Trainer blasen.
ex-breath-out-resistance-cue = Einatmen… und blasen.
ex-breath-out-resistance-before = Ausatmen gegen Widerstand. Nicht machen bei Lungen- oder Herzkrankheit, unregelmäßigem Herzschlag, hohem Blutdruck, Leisten- oder Bauchbruch, in später Schwangerschaft, nach kürzlichem Schlaganfall oder kürzlicher Operation an Bauch, Augen, Ohren, Nebenhöhlen oder Zähnen.
ex-breath-out-resistance-care = Atmen Sie dazwischen normal, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-voluntary-cough-name = Kräftiges Husten
ex-voluntary-cough-purpose = Es soll Ihren Husten kräftig genug halten, um den Rachen zu reinigen.
ex-voluntary-cough-instruction = Atmen Sie tief ein, schließen Sie die Kehle, und husten Sie einmal, kräftig und kurz. Machen Sie es so, wie es Ihnen in der Therapie gezeigt wurde.
ex-voluntary-cough-short = Einatmen, und einmal kräftig und kurz husten.
ex-voluntary-cough-cue = Einatmen… und husten.
ex-voluntary-cough-before = Kräftiges Husten. Nicht machen bei Halsinfektion, Lungenkrankheit, hohem Blutdruck, Leisten- oder Bauchbruch, brüchigen Knochen oder Augenkrankheit, in später Schwangerschaft, nach kürzlichem Schlaganfall oder einer Operation an Kehle, Bauch, Augen, Ohren, Nebenhöhlen oder Zähnen.
ex-voluntary-cough-care = Beginnen Sie mit leerem Mund, und hören Sie auf, wenn Sie sich benommen fühlen.

ex-syllable-repetition-name = Schnelle Silben
ex-syllable-repetition-purpose = Sie sollen Lippen und Zunge darin trainieren, sich schnell und gleichmäßig zu bewegen.
ex-syllable-repetition-instruction = Holen Sie Luft, und sprechen Sie die Silben immer wieder, so schnell und gleichmäßig Sie können, bis ich „danke“ sage.
ex-syllable-repetition-short = Die Silben, schnell und gleichmäßig.
ex-syllable-repetition-cue = Einatmen… und los.
ex-syllable-repetition-care = Schlucken Sie vorher, und atmen Sie zwischen den Durchgängen normal.

ex-pa-repetition-name = Schnelles Pa
ex-pa-repetition-purpose = Es soll Ihre Lippen darin trainieren, sich schnell und gleichmäßig zu bewegen.
ex-pa-repetition-instruction = Holen Sie Luft, und sprechen Sie pa, pa, pa, immer wieder, so schnell und gleichmäßig Sie können, bis ich „danke“ sage.
ex-pa-repetition-short = Pa, pa, pa, schnell und gleichmäßig.
ex-pa-repetition-cue = Einatmen… und los.
ex-pa-repetition-care = Schlucken Sie vorher, und atmen Sie zwischen den Durchgängen normal.

ex-ta-repetition-name = Schnelles Ta
ex-ta-repetition-purpose = Es soll Ihre Zungenspitze darin trainieren, sich schnell und gleichmäßig zu bewegen.
ex-ta-repetition-instruction = Holen Sie Luft, und sprechen Sie ta, ta, ta, immer wieder, so schnell und gleichmäßig Sie können, bis ich „danke“ sage.
ex-ta-repetition-short = Ta, ta, ta, schnell und gleichmäßig.
ex-ta-repetition-cue = Einatmen… und los.
ex-ta-repetition-care = Schlucken Sie vorher, und atmen Sie zwischen den Durchgängen normal.

ex-ka-repetition-name = Schnelles Ka
ex-ka-repetition-purpose = Es soll Ihren Zungenrücken darin trainieren, sich schnell und gleichmäßig zu bewegen.
ex-ka-repetition-instruction = Holen Sie Luft, und sprechen Sie ka, ka, ka, immer wieder, so schnell und gleichmäßig Sie können, bis ich „danke“ sage.
ex-ka-repetition-short = Ka, ka, ka, schnell und gleichmäßig.
ex-ka-repetition-cue = Einatmen… und los.
ex-ka-repetition-care = Schlucken Sie vorher, und atmen Sie zwischen den Durchgängen normal.

ex-category-naming-name = Benennen
ex-category-naming-purpose = Es soll das Finden von Wörtern schneller machen.
ex-category-naming-instruction = Ich nenne Ihnen einen Oberbegriff. Nennen Sie dazu so viele Dinge, wie Ihnen einfallen, eines nach dem anderen, mit deutlicher Stimme. Ich zähle mit und achte auf die Zeit.
ex-category-naming-short = So viele, wie Ihnen einfallen, mit deutlicher Stimme.
ex-category-naming-cue = Beginnen Sie jetzt.

ex-word-questions-name = Wortfragen
ex-word-questions-purpose = Sie sollen trainieren, Wörter zu finden und sie deutlich zu sagen.
ex-word-questions-instruction = Ich umschreibe ein Wort, und Sie sagen es. Lassen Sie sich Zeit.
ex-word-questions-short = Ich umschreibe ein Wort, und Sie sagen es.
ex-word-questions-cue = Hier ist die Umschreibung.

ex-rest-name = Erholung
ex-rest-purpose = Sie soll Stimme und Körper sich erholen lassen.
ex-rest-instruction = Lehnen Sie sich zurück, bleiben Sie still, und atmen Sie, wie Sie mögen.
ex-rest-short = Lehnen Sie sich zurück, und atmen Sie, wie Sie mögen.
ex-rest-cue = Lehnen Sie sich zurück.

paced-in = Ein
paced-out = Aus

## Vorsicht

caution-voice-strain = Beenden Sie die Übung, wenn der Hals wund ist oder Sie Anspannung im Hals spüren, und sagen Sie es in der Therapie.
caution-voice-hoarse = Wenn Sie seit mehr als einem Tag heiser sind, lassen Sie die lauten Übungen weg, und fragen Sie zuerst in der Therapie.
caution-voice-no-force = Bleiben Sie locker: Hören Sie beim ersten Unbehagen auf, und drücken Sie nie bis ins Quieken.
caution-bearing-down = Lassen Sie den Klang strömen, und pressen Sie nicht. Wenn Sie einen Leisten- oder Bauchbruch oder starkes Sodbrennen haben, fragen Sie in der Therapie, bevor Sie lange Laute halten.
caution-straw-water = Halten Sie das andere Ende des Strohhalms in die Luft. Wasser nur, wenn es Ihnen in der Therapie erlaubt wurde: das Ende knapp unter der Oberfläche, und blasen, nie saugen.
caution-stand-safely = Stehen Sie aufrecht hinter einem festen Stuhl, und halten Sie sich mit einer Hand an der Lehne.
caution-sit-upright = Sitzen Sie aufrecht auf einem festen Stuhl, beide Füße auf dem Boden.
caution-swallow-assessed = Machen Sie das nur, wenn Ihr Schlucken in der Therapie untersucht und Ihnen die Übung gezeigt wurde.
caution-saliva-only = Machen Sie das mit leerem Mund, nur mit Speichel, nie mit Essen, Getränk oder Tabletten.
caution-clear-mouth = Beginnen Sie mit leerem Mund, und atmen Sie zwischen den Schlucken normal.
caution-gentle-bite = Halten Sie die Zunge sanft, damit die Zähne ihr nicht wehtun.
caution-residue = Bei dieser Übung reinigt sich der Rachen schlechter. Schlucken Sie danach noch einmal wie gewohnt.
caution-breath-break-heart = Hier halten Sie kurz den Atem an. Wenn Sie ein Herzleiden haben, machen Sie das nur, wenn es Ihnen in der Therapie erlaubt wurde.
caution-sip-rules = Nehmen Sie nur einen Schluck, wenn es Ihnen in der Therapie erlaubt wurde. Sitzen Sie ganz aufrecht, das Kinn gerade, nehmen Sie einen kleinen Schluck, und schlucken Sie alles herunter, bevor Sie den nächsten nehmen. Wenn Sie husten oder Ihre Stimme feucht oder gurgelnd klingt, lassen Sie die Schlucke für heute, und sagen Sie es noch am selben Tag in der Therapie.
caution-keep-breathing = Atmen Sie die ganze Zeit weiter. Den Atem anzuhalten belastet das Herz.
caution-lie-flat = Liegen Sie flach, die Schultern unten, und hören Sie sofort auf, wenn Sie im Liegen schlecht Luft bekommen.
caution-neck-soreness = Etwas Muskelkater im Nacken ist in den ersten Wochen üblich. Wenn der Schmerz stechend ist oder anhält, beenden Sie die Übung, und fragen Sie in der Therapie.
caution-static-effort = Anstrengung ohne Bewegung erhöht den Blutdruck. Wenn Ihrer hoch ist, fragen Sie zuerst in der Therapie.
caution-rise-slowly = Drehen Sie sich danach auf die Seite, und sitzen Sie zwei Minuten, bevor Sie aufstehen.
caution-jaw-pain = Beenden Sie die Übung sofort, wenn der Kiefer schmerzt, schmerzhaft knackt oder hängen bleibt, und fragen Sie in der Therapie.
caution-neck-signs = Beenden Sie die Übung sofort, und rufen Sie jemanden, wenn Sie sich benommen fühlen oder Ihnen übel wird, wenn Sie doppelt sehen, nicht deutlich sprechen können oder Gesicht oder Arm taub wird.
caution-neck-range = Bewegen Sie sich langsam und nur so weit, wie es angenehm ist, nie im vollen Kreis.
caution-shoulder-pain = Machen Sie die Kreise klein, wenn eine Schulter schmerzt.
caution-face-comfort = Beenden Sie die Übung, wenn Gesicht oder Mund schmerzt.
caution-breathe-through-nose = Atmen Sie durch die Nase. Lassen Sie die Übung aus, wenn die Nase verstopft ist.
caution-dentures = Prüfen Sie, ob Ihre Zahnprothese fest sitzt, oder nehmen Sie sie heraus.
caution-light-headed = Wenn Sie sich benommen fühlen, atmen Sie, wie Sie mögen, bis es Ihnen gut geht, und sagen Sie es in der Therapie.
caution-no-forcing = Lassen Sie die Luft ohne Kraft kommen und gehen, und halten Sie nie den Atem an.
caution-set-by-clinician = Machen Sie das nur so, wie es Ihnen in der Therapie gezeigt wurde, und nur mit dem, was dort eingestellt wurde.
caution-spoon-clean = Nehmen Sie einen sauberen, glatten Löffel, und bleiben Sie damit vorn im Mund.
caution-syllable-tired = Beenden Sie die Übung, wenn Lippen oder Zunge müde sind. Wenn sich Speichel sammelt, unterbrechen Sie, und schlucken Sie erst.
caution-game-enjoy = Das dient der Freude und der Übung. Lassen Sie es, wann immer es Sie belastet.

## Wer eine Übung auslassen soll, wenn die eigene Therapie nichts anderes sagt

notfor-voice-acute = Menschen mit einer frischen Halsinfektion, einer frischen Blutung oder einer kürzlichen Operation an den Stimmlippen.
notfor-poor-clearing = Menschen, bei denen Reste im Rachen bleiben oder deren Zungenbein sich beim Schlucken wenig bewegt.
notfor-heart-rhythm = Menschen mit Herzkrankheit oder unregelmäßigem Herzschlag.
notfor-recent-stroke = Menschen, die kürzlich einen Schlaganfall oder eine kurze Durchblutungsstörung des Gehirns hatten.
notfor-blood-pressure = Menschen, deren Blutdruck nicht gut eingestellt ist.
notfor-breathless = Menschen mit Atemnot oder einer Lungenkrankheit.
notfor-neck-unstable = Menschen, deren Hals verletzt, instabil, steif oder operiert ist oder die Rheuma an der Halswirbelsäule haben.
notfor-tracheostomy = Menschen, die durch eine Öffnung im Hals atmen.
notfor-head-pressure = Menschen mit erhöhtem Druck im Kopf oder nach einer kürzlichen Operation an Kopf oder Hals.
notfor-flat-lying = Menschen, die nicht flach liegen können oder die Herzschwäche, starken Reflux oder einen nicht gut eingestellten Blutdruck haben.
notfor-eye-pressure = Menschen mit grünem Star oder einer Netzhautkrankheit.
notfor-fragile-bones = Menschen mit brüchigen Knochen, vor allem an der Wirbelsäule.
notfor-late-pregnancy = Menschen, die mehr als 16 Wochen schwanger sind.
notfor-hernia = Menschen mit einem Leisten- oder Bauchbruch (Hernie).
notfor-belly-recent = Menschen nach einer kürzlichen Bauchoperation.
notfor-floor-unsafe = Menschen, die sich nicht sicher allein hinlegen und wieder aufstehen können.
notfor-neck-arteries = Menschen mit erkrankten oder verengten Halsschlagadern.
notfor-neck-dystonia = Menschen, deren Hals sich von selbst verdreht oder zieht (zervikale Dystonie).
notfor-neck-implant = Menschen mit dem Kabel oder dem Gerät eines implantierten Stimulators im Hals.
notfor-jaw-joint = Menschen mit Leiden am Kiefergelenk oder deren Kiefer ausgerenkt war.
notfor-neck-bones = Menschen mit brüchigen Halswirbeln oder einer kürzlichen Halsverletzung.
notfor-shoulder-injury = Menschen nach einer kürzlichen Verletzung oder Operation der Schulter.
notfor-face-recent = Menschen nach einer kürzlichen Verletzung oder Operation im Gesicht.
notfor-face-palsy = Menschen, deren Gesicht auf einer Seite schwach ist oder hängt (Fazialisparese).
notfor-pressure-recent = Menschen nach einer kürzlichen Operation an Auge, Ohr, Nebenhöhlen oder Zähnen.
notfor-mouth-recent = Menschen nach einer kürzlichen Verletzung oder Operation an Mund oder Zunge.
notfor-breathing-illness = Menschen mit einer akuten Lungenkrankheit oder mit nicht gut eingestelltem Asthma.
notfor-lung-disease = Menschen mit einer chronischen Lungenkrankheit, auch einer stabilen.

## Was gelesen und nachgesprochen wird, wenn der Übungsplan nichts Eigenes nennt; Sätze sind durch | getrennt

ex-sentence-melody-phrases = Sie gehen nach Hause? | Sie gehen nach Hause. | Es regnet draußen? | Es regnet draußen. | In der Kanne ist Tee? | In der Kanne ist Tee.
ex-sentence-stress-phrases = Die rote Tasse, nicht die blaue. | Ich sagte Dienstag, nicht Donnerstag. | Unter dem Tisch, nicht darauf. | Meine Schwester hat angerufen, nicht mein Bruder. | Ich möchte Tee, nicht Kaffee.
ex-paced-phrases-phrases = Guten Morgen Ihnen allen | Bitte reichen Sie mir das Salz | Heute können wir im Park spazieren | Ich hätte gern eine Tasse Tee
ex-counting-on-a-breath-phrases = eins, zwei, drei, vier, fünf | eins, zwei, drei, vier, fünf, sechs, sieben, acht | eins, zwei, drei, vier, fünf, sechs, sieben, acht, neun, zehn
ex-days-on-a-breath-phrases = Montag, Dienstag, Mittwoch | Montag, Dienstag, Mittwoch, Donnerstag, Freitag | Montag, Dienstag, Mittwoch, Donnerstag, Freitag, Samstag, Sonntag
# Die Fabel vom Nordwind und der Sonne, eigene Nacherzählung.
ex-reading-passage-passage = Der Nordwind und die Sonne gerieten in Streit, wer von ihnen der Stärkere sei. Schließlich wollten sie ihre Kräfte an einem Wanderer messen, der gerade des Weges kam: Wer ihm schneller den Mantel nähme, der sollte gewonnen haben. Der Nordwind versuchte es zuerst. Er sammelte alle Kraft und fuhr mit wildem Brausen auf den Mann los, als wollte er ihm den Mantel mit einem Griff entreißen. Doch je heftiger er blies, desto enger zog der Mann den Mantel um sich. Dann kam die Sonne an die Reihe. Erst schien sie freundlich auf den Wanderer herab, und bald öffnete er den Mantel und ließ ihn lose um die Schultern hängen. Dann strahlte sie mit voller Kraft, und nach wenigen Schritten warf der Mann den Mantel ab und ging leichten Herzens weiter.
