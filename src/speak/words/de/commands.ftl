# Was man sagen kann. Die erste Wendung wird gezeigt; Wendungen sind durch | getrennt. Keine steht für zwei Befehle oder in einem anderen.
# „pause“ und „stopp“ werden gehört, während wir sprechen: Kein gesprochener Satz enthält sie.

cmd-ready = bereit | ich bin bereit | ich bin so weit | es kann losgehen
cmd-done = fertig | ich bin fertig | alles fertig | geschafft
cmd-yes = ja | ja bitte | ja gern | ja habe ich
cmd-no = nein | nein danke | noch nicht | lieber nicht
cmd-stop = stopp | stopp jetzt | bitte stopp
cmd-pause = pause | pause bitte | bitte warten | moment bitte
cmd-go-on = weiter | weitermachen | bitte weiter | machen wir weiter
cmd-again = noch einmal | nochmal bitte | bitte wiederholen | wiederholen
cmd-skip = überspringen | auslassen | nächste übung | die nächste bitte
cmd-go-back = zurück | eins zurück | vorige übung
cmd-how-long = wie lange | wie lange war das | wie viele sekunden
cmd-help = hilfe | hilfe bitte | ich brauche hilfe
cmd-slower = langsamer | bitte langsamer | etwas langsamer | zu schnell
cmd-faster = schneller | bitte schneller | etwas schneller | zu langsam
cmd-louder = lauter | bitte lauter | etwas lauter | sprechen sie lauter
cmd-softer = leiser | bitte leiser | etwas leiser | zu laut
cmd-rest = ausruhen | kurz ausruhen | ich möchte mich ausruhen | ich muss mich ausruhen
cmd-dry = mein mund ist trocken | mein hals ist trocken | trockener mund | etwas wasser bitte
cmd-finish = beenden | für heute beenden | schluss für heute | genug für heute
cmd-dizzy = mir ist schwindlig | mir ist schwindelig | mir wird schwindlig | mir wird schwarz vor augen
cmd-chest-pain = brustschmerzen | ich habe brustschmerzen | schmerzen in der brust | meine brust schmerzt | meine brust ist eng
cmd-cant-breathe = ich bekomme keine luft | ich kriege keine luft | keine luft | ich kann nicht atmen
cmd-choking = ich verschlucke mich | ich habe mich verschluckt | verschluckt | es ist in den falschen hals gekommen
cmd-feel-sick = mir ist übel | mir ist schlecht | mir wird übel | ich muss mich übergeben
cmd-all-right = mir geht es gut | es geht mir gut | es geht wieder | es geht mir besser
cmd-not-sure = nicht sicher | ich bin nicht sicher | ich bin mir nicht sicher
cmd-why = warum diese | wozu ist das gut | wozu dient das
cmd-how-did = wie war ich | wie mache ich mich
cmd-hint = ein tipp bitte | einen tipp bitte | ich weiß es nicht
cmd-hurts = es tut weh | das tut weh | ich habe schmerzen

# Was so ähnlich klingt wie ein Befehl und keiner ist. Es wird erkannt, damit es nicht für einen gehalten wird.
near-misses = es tut gut | das tut gut | mir ist recht | mir ist langweilig

answer-0 = null | überhaupt nicht
answer-1 = eins
answer-2 = zwei
answer-3 = drei
answer-4 = vier
answer-5 = fünf
answer-6 = sechs
answer-7 = sieben
answer-8 = acht
answer-9 = neun
answer-10 = zehn
answer-not-well = nicht gut | mir ging es nicht gut | ich war krank
answer-too-tired = zu müde | ich war zu müde | ich war müde
answer-no-time = keine zeit | ich hatte keine zeit | ich hatte zu tun
answer-forgot = vergessen | ich habe es vergessen | hab ich vergessen
answer-something-else = etwas anderes | ein anderer grund

class-cmd-ready = wir sind bereit | alle bereit | los gehts
class-cmd-go-on = weiter bitte | machen wir weiter | bitte weiter
class-cmd-rest = alle ausruhen | kurz ausruhen
class-cmd-again = noch einmal | bitte wiederholen
class-cmd-skip = nächste übung | die nächste bitte
class-cmd-hurts = es tut weh | das tut weh
class-cmd-yes = anwesend | ich bin hier | ich bin da
class-cmd-no = nicht hier | heute nicht | heute nicht da
class-cmd-not-sure = nächste person | die nächste person
class-name-here = { $name } ist hier
class-name-not-here = { $name } ist nicht hier | { $name } ist nicht da
class-number-here = nummer { SPOKEN($n) } ist hier
class-number-not-here = nummer { SPOKEN($n) } ist nicht hier | nummer { SPOKEN($n) } ist nicht da
