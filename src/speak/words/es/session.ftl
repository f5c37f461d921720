# Lo que se dice y se muestra. Tono: una cosa cada vez, frases cortas, luego silencio; adulto, cordial, sencillo.

greeting = { $title }. { $steps ->
    [one] Un ejercicio
   *[other] { SPOKEN($steps) } ejercicios
}, { $minutes ->
    [one] alrededor de un minuto
    [21] unos veintiún minutos
    [31] unos treinta y un minutos
    [41] unos cuarenta y un minutos
    [51] unos cincuenta y un minutos
   *[other] unos { SPOKEN($minutes) } minutos
}.
greeting-shown = { $steps ->
    [one] Un ejercicio
   *[other] { SPOKEN($steps) } ejercicios
}
aid-notice = Soy una ayuda para practicar y no hago diagnósticos. Lo que diga su logopeda, y las normas de donde está, van antes que lo que yo diga.
ear-none-shown = Sin un modelo de reconocimiento no oigo órdenes en este idioma. Use las teclas o la página; con un modelo Vosk propio: --model.
ear-commands-shown = En este idioma oigo órdenes, sí, no y números, pero ninguna otra palabra: las respuestas de los juegos de palabras no se valoran.
you-can-stop = Puede decir «parar» en cualquier momento.
stop-by-hand = Aquí no oigo órdenes habladas. Pulse Escape en cualquier momento y me callo. En la página es el botón rojo.
heading-session = { $title }
heading-step = { $name } · { $repetition } de { $repetitions }
heading-set = { $name } · serie { $set } de { $sets } · { $repetition } de { $repetitions }

ask-resume = La última vez no llegamos al final. ¿Continuamos desde ahí? ¿Sí o no?
ask-resume-shown = ¿Continuar donde lo dejó?
resumed = Continuamos con { $name }.

cautions-first = Antes de empezar, unas palabras sobre seguridad.
cautions-shown = { $name }: primero, la seguridad
ask-agreement = { $asked ->
    [0] ¿Se lo ha autorizado su logopeda? ¿Sí, no, o tiene dudas?
   *[other] ¿Lo ha autorizado su logopeda?
}
ask-agreement-shown = { $name }: ¿se lo ha autorizado su logopeda?
ask-agreement-again = ¿Se lo ha autorizado su logopeda? ¿Sí, no, o tiene dudas?
agreement-yes = Bien.
agreement-no = Entonces lo dejamos fuera.
agreement-not-sure = Entonces lo dejamos fuera hasta que pregunte a su logopeda.
agreement-missing-all = Así no queda nada que practicar hoy. Pregunte a su logopeda por estos ejercicios, por favor.
ask-yes-no-again = Tómese su tiempo. ¿Sí o no?

ask-ready-first = Siéntese con la espalda recta y los dos pies en el suelo. Diga «preparado» o «preparada» cuando quiera empezar.
ask-ready-first-shown = Espalda recta, los dos pies en el suelo
ask-ready = Siéntese con la espalda recta y los dos pies en el suelo, y luego diga «preparado» o «preparada».
ask-ready-shown = Espalda recta, los dos pies en el suelo
ask-position = Diga «preparado» o «preparada» cuando esté en posición.
ask-position-shown = Colóquese en posición
ask-rest-over = Descanse todo lo que quiera. Diga «preparado» o «preparada» para continuar.
ask-rest-over-shown = Descanso
ask-ready-again = Tómese su tiempo. Diga «preparado» o «preparada» cuando lo esté.
ask-ready-once-more = No hay prisa. Diga «preparado» o «preparada» para continuar.
ready-not-understood = He oído a alguien, pero no he entendido la palabra. Diga de nuevo «preparado» o «preparada», o acérquese un poco.
wait-for-ready = Aquí estoy. Diga «preparado» o «preparada» cuando le apetezca.
gave-up = Hace rato que no le oigo, así que lo dejo aquí. Todo está guardado.

step-first = Primero: { $name }.
step-next = A continuación: { $name }.
dose-times = { $sets ->
    [one] { $repetitions ->
        [one] Una vez.
        [21] Veintiuna veces.
        [31] Treinta y una veces.
       *[other] { SPOKEN($repetitions) } veces.
    }
   *[other] { SPOKEN($sets) } series de { SPOKEN($repetitions) }.
}
dose-rounds = { $repetitions ->
    [one] Una ronda. Yo cuento.
    [21] Veintiuna rondas. Yo cuento.
   *[other] { SPOKEN($repetitions) } rondas. Yo cuento.
}
dose-talks = { $repetitions ->
    [one] Solo una vez.
   *[other] { SPOKEN($repetitions) } veces.
}
dose-phrases = { $repetitions ->
    [one] Una frase.
    [21] Veintiuna frases.
   *[other] { SPOKEN($repetitions) } frases.
}
dose-categories = { $repetitions ->
    [one] Una categoría, durante un minuto. Diga una palabra tras otra.
   *[other] { SPOKEN($repetitions) } categorías, un minuto cada una. Diga una palabra tras otra.
}
dose-questions = { $repetitions ->
    [one] Una pregunta.
   *[other] { SPOKEN($repetitions) } preguntas.
}
setting = Su ajuste: { $setting }.
knock-will-do = Cuando haya tragado, diga «hecho», o dé dos golpes en la mesa.
goal = Su objetivo: { SECONDS($seconds) }.
cue-words = Piense en: { $words }.
cue-words-again = { $words }.
cue-words-shown = { $words }
repetition-number = Número { SPOKEN($n) }.
repetition-last = La última.
skipped = Dejamos fuera { $name }. Diga «volver» si al final quiere hacerlo.
went-back = Volvemos a { $name }.
went-back-done = { $name } ya está hecho por hoy.
enough-now = { $name }: más de esto no le conviene en una sola práctica, así que lo dejamos ahí.
enough-today = { $name }: más de esto no le conviene en un solo día. Lo dejamos para otro día.
long-enough = Llevamos casi una hora, y más solo le cansaría.
practices-enough = Hoy ya ha practicado { $practices ->
    [one] una vez
   *[other] { SPOKEN($practices) } veces
}, y su cuerpo necesita el resto del día para recuperarse. Mañana estaré aquí.
rest-first = Primero, { SPOKEN($seconds) } segundos para recuperarse. Solo respire.
rest-longer = Un poco más, { SPOKEN($seconds) } segundos, para que se recupere.

rise-side = Ahora nos levantamos, despacio. Gírese de lado y quédese así un rato.
rise-sit = Impúlsese hasta sentarse, con los dos pies en el suelo. Siga en la silla o la cama, y respire.
rise-stand = Ahora agárrese a algo firme y póngase de pie despacio. Si la cabeza le da vueltas, vuelva a sentarse.
rise-longer = Quédese así un poco más, { SPOKEN($seconds) } segundos, para que no se maree.
rise-at-end = Cuando se levante, tómese su tiempo: gírese de lado, siéntese, y siga así dos minutos.
posture-standing = Este se hace de pie. Póngase detrás de una silla firme y agárrese a ella.

wind-down = Ahora relaje la voz. Tararee suave una o dos veces, tan grave y cómodo como quiera, y respire.
loud-enough = Ya es bastante voz fuerte por hoy. Deje que su voz repose.
offer-rest = Ha trabajado mucho. ¿Le gustaría descansar? ¿Sí o no? También puede terminar por hoy.
offer-rest-shown = ¿Le gustaría descansar?
sip-rules-now = Para los sorbos: siéntese con la espalda bien recta y el mentón recto, y tome un sorbo pequeño cada vez. Si tose, si la voz suena húmeda o con gorgoteo, o si le falta el aliento, deje la bebida por hoy y dígaselo a su logopeda.

voice-again = Cuando usted quiera.
voice-once-more = Tome aire, y empiece a su ritmo.
hold-cue = Siga así.
trial-over = Y relaje.
    .v1 = Relaje.
    .v2 = Y suelte.
reading-again = Dígalo a su ritmo.
reading-once-more = No hay prisa. Léala en voz alta cuando quiera.
read-phrase = { $phrase }
read-phrase-shown = { $phrase }
read-rising-shown = { $phrase } ↗
read-falling-shown = { $phrase } ↘

talk-prompt = { $prompt }
talk-prompt-shown = { $prompt }
read-passage-shown = { $passage }
talk-again = Tómese su tiempo. Le escucho.
talk-once-more = No hay prisa. Empiece por lo primero que se le ocurra.
talk-go-on = Todavía hay tiempo. ¿Qué más se le ocurre?
talk-read-on = Tómese su tiempo, y siga leyendo.
talk-over = Gracias.
    .v1 = Eso ha sido todo. Gracias.

posture-over = Y relaje.
paced-last-round = Última ronda.
paced-over = Y respire como quiera.
seconds-to-go = { $seconds ->
    [one] Queda un segundo.
   *[other] Quedan { SPOKEN($seconds) }.
}
rounds-to-go = { $rounds ->
    [0] Esta es la última ronda.
    [one] Queda una ronda.
   *[other] Quedan { SPOKEN($rounds) } rondas.
}
pace-changed = Contaré al nuevo ritmo.
speech-rate-changed = Ahora hablaré así.
pace-slowest = Más lento no cuento: una respiración más larga podría forzarle.
pace-fastest = Más deprisa no cuento: respirar más deprisa podría marearle.
pace-stays = Son segundos de verdad, así que la cuenta se queda como está.
volume-changed = ¿Así está mejor?

done-again = Tómese su tiempo. Diga «hecho» cuando lo haya hecho.
done-once-more = No hay prisa. Diga «hecho» cuando lo esté.
done-not-understood = He oído a alguien, pero no he entendido la palabra. Cuando lo haya hecho, diga «ya está hecho», o pulse una tecla.
wait-for-done = Aquí estoy. Diga «hecho» cuando le apetezca.
ask-sip = Tome un sorbo pequeño, si su logopeda lo permite. Tráguelo todo, y luego diga «hecho».
ask-sip-shown = Un sorbo pequeño, trágueselo todo
ask-sip-again = Diga «hecho» cuando lo haya tragado todo.

question-clue = { $clue }
question-kind-double-meaning = Una palabra con dos significados.
question-kind-opposite = Ahora, un contrario.
question-kind-saying = Complete el refrán.
question-kind-odd-one-out = ¿Cuál sobra?
question-kind-definition = ¿Qué es?
question-kind-pair = Dos cosas que van juntas.
question-kind-category = Nombre tantas como se le ocurran.
question-clue-shown = { $clue }
question-hint = Le doy una ayudita. { $hint }
question-hint-asked = Aquí va una pista. { $hint }
question-near = Se acerca. { $hint }
    .v1 = Bien pensado, está cerca. { $hint }
question-found = Sí. { $answer }.
    .v1 = Eso es. { $answer }.
    .v2 = { $answer }. Lo tiene.
question-told = Yo pensaba en { $answer }.
question-fact = { $fact }

naming-count = { $number ->
    [one] He oído una palabra: { $category }.
   *[other] He oído { SPOKEN($number) }: { $category }.
}
naming-over = Ya ha pasado el minuto.

held = { SECONDS($seconds) }.
held-longest-this-month = { SECONDS($seconds) }. Su mejor marca de este mes.
held-more-than-last = { SECONDS($seconds) }. { $more ->
    [one] Uno más
   *[other] { SPOKEN($more) } más
} que la última vez.
held-more-than-weekday = { SECONDS($seconds) }. { $more ->
    [one] Uno más
   *[other] { SPOKEN($more) } más
} que el { $weekday }.
ladder-result = { $reached ->
    [0] Costaba distinguir los escalones. Eso puede llegar con el tiempo.
    [one] Un escalón de { SPOKEN($all) } ha sido claro.
   *[other] { SPOKEN($reached) } de { SPOKEN($all) } escalones han sido claros.
}
melody-result = { $reached ->
    [0] Su voz se ha mantenido plana al final. Eso puede llegar con el tiempo.
    [one] Una de { SPOKEN($all) } ha ido como debía.
   *[other] { SPOKEN($reached) } de { SPOKEN($all) } han ido como debían.
}
ladder-louder-shown = { $by } dB más fuerte
ladder-softer-shown = { $by } dB más suave
ladder-higher-shown = { $by ->
    [one] 1 semitono más agudo
   *[other] { $by } semitonos más agudo
}
ladder-lower-shown = { $by ->
    [one] 1 semitono más grave
   *[other] { $by } semitonos más grave
}
best = Este ya está. Su mejor marca: { SECONDS($seconds) }.
    .v1 = Listo. Su mejor marca: { SECONDS($seconds) }.
best-longest-this-month = Este ya está. Su mejor marca: { SECONDS($seconds) }, la más larga de este mes.
best-more-than-last = Este ya está. Su mejor marca: { SECONDS($seconds) }, { $more ->
    [one] uno más
   *[other] { SPOKEN($more) } más
} que la última vez.
best-more-than-weekday = Este ya está. Su mejor marca: { SECONDS($seconds) }, { $more ->
    [one] uno más
   *[other] { SPOKEN($more) } más
} que el { $weekday }.
best-so-far = Su mejor marca hasta ahora: { SECONDS($seconds) }.
done-so-far = Hasta ahora, { SPOKEN($done) } de { SPOKEN($all) }.
why-practice = Cada ejercicio tiene su propósito. Pregúnteme de nuevo cuando haya empezado.
step-done = Este ya está.
    .v1 = Listo.
    .v2 = Con esto, este ejercicio queda hecho.
rest-done = Continuamos.
minutes-left = { $minutes ->
    [one] Queda alrededor de un minuto.
    [21] Quedan unos veintiún minutos.
    [31] Quedan unos treinta y un minutos.
    [41] Quedan unos cuarenta y un minutos.
    [51] Quedan unos cincuenta y un minutos.
   *[other] Quedan unos { SPOKEN($minutes) } minutos.
}

stopped = Me quedo en silencio. Diga «seguir», «saltar» o «terminar».
stopped-shown = Detenido
paused = Tómese su tiempo. Diga «seguir» cuando quiera.
paused-shown = En pausa
resting = Descanse. Diga «preparado» o «preparada» cuando quiera continuar.
resting-shown = Descanso
dry-sip = Tome un sorbo pequeño si quiere, y trágueselo todo. Diga «preparado» o «preparada» cuando quiera continuar.
dry-lips = Humedézcase los labios, y tómese su tiempo. Diga «preparado» o «preparada» cuando quiera continuar.
halted-reminder = Sigo aquí. Diga «seguir», o «terminar».
going-on = Continuamos.
finishing = Termino aquí. Diga «seguir» para continuar la práctica.
finishing-shown = Terminando. Diga «seguir» para continuar.
ask-confirm = ¿Ha dicho «{ $command }»?
ask-confirm-shown = ¿Ha dicho «{ $command }»?

help = Si algo va mal, llame a alguien, o en una urgencia al teléfono de emergencias.
help-more = Si no, yo guío y usted sigue, a su ritmo.
help-go-on = Diga «seguir» cuando quiera, «saltar» para el ejercicio siguiente, o «terminar».
help-shown = Ayuda
unwell-leave = Por hoy dejamos { $name }.
unwell-leave-all = Por hoy dejamos { $name }, y todo lo que se le parece.
unwell-leave-others = Hoy dejaré fuera lo que podría hacer que vuelva.
unwell-earlier = Hoy ya se ha encontrado mal, así que dejaré fuera lo que podría hacer que vuelva.
unwell-earlier-all = Hoy ya se ha encontrado mal, así que dejamos esta práctica para otro día.
unwell-earlier-no-practice = Hoy ha tenido dolor en el pecho o dificultad para respirar. Hoy no practicamos. Hable con su médico antes de volver a practicar, por favor.
unwell-dizzy = Respire como quiera y no se levante, o túmbese.
unwell-dizzy-more = Si no se le pasa, llame a alguien. Si tiene dolor en el pecho, debilidad repentina o dificultad para hablar, llame a emergencias. Lo he anotado para su logopeda.
unwell-pain = Relájese, y afloje todo el cuerpo.
unwell-pain-more = Si no se alivia, llame a alguien. Si tiene dolor en el pecho, llame a emergencias. Lo he anotado para su logopeda.
unwell-choking = Inclínese hacia delante y tosa. Siga tosiendo. Si le falta el aire o la voz, necesita ayuda enseguida.
unwell-sick = Incorpórese, y respire como quiera.
unwell-sick-more = Si no se le pasa, o tiene dolor en el pecho, llame a alguien. Lo he anotado para su logopeda.
all-right = Bien. Diga «seguir» cuando quiera, o «terminar».

emergency-chest-pain = Quédese donde está, sin moverse. El dolor en el pecho necesita ayuda ahora.
emergency-cant-breathe = Incorpórese e inclínese un poco hacia delante. Necesita ayuda ahora.
emergency-call = Llame al { DIGITS($number) } Lo repito: { DIGITS($number) }
emergency-call-unknown = Llame al teléfono de emergencias. Lo repito: llame al teléfono de emergencias.
emergency-anybody = Si alguien me oye, aquí hay una persona que necesita ayuda. Venga ahora, por favor.
emergency-or-fine = Si ya se le ha pasado, diga «estoy bien».
emergency-shown = Llame al { $number }
emergency-shown-unknown = Llame al teléfono de emergencias
emergency-passed = Bien. Por hoy lo dejamos aquí. Cuénteselo hoy mismo a su médico, por favor, aunque ya se le haya pasado. Todo está guardado.
emergency-passed-shown = Cuéntelo hoy mismo a su médico
emergency-ends = Termino la práctica ahora. Todo está guardado. Si necesita ayuda, pídala.
unwell-go-on = Diga «seguir» para el ejercicio siguiente, o «terminar».
unwell-shown = Dejado por hoy

summary-all = Eso es todo por hoy. { $done ->
    [one] Ha hecho el ejercicio entero.
    [2] Ha hecho los dos ejercicios.
   *[other] Ha hecho los { SPOKEN($done) } ejercicios.
} Buen trabajo.
summary-part = Eso es todo por hoy. { $done ->
    [0] Lo dejamos ahí.
   *[other] { SPOKEN($done) } de { SPOKEN($all) } hechos{ $left ->
        [0] .
        [one] , uno queda para otro día.
       *[other] , { SPOKEN($left) } quedan para otro día.
    }
}
summary-all-but = Eso es todo por hoy. { SPOKEN($done) } de { SPOKEN($all) } hechos; para otro día queda { $name }.
summary-shown = { $done } de { $all } ejercicios hechos

questions-first = { $n ->
    [one] Una pregunta corta antes de acabar.
   *[other] { SPOKEN($n) } preguntas cortas antes de acabar.
} Diga «saltar» en las que prefiera no responder, o «terminar».
ask-effort = ¿Cuánto esfuerzo le ha costado? Diga un número: cero es ningún esfuerzo, diez es lo máximo que podría hacer.
ask-effort-shown = ¿Cuánto esfuerzo? 0 ninguno · 10 lo máximo
ask-tiredness = ¿Cuánto cansancio tiene ahora? Cero es nada de cansancio, diez es más que nunca.
ask-tiredness-shown = ¿Cuánto cansancio ahora? 0 nada · 10 más que nunca
ask-pain = ¿Cuánto dolor tiene ahora? Cero es nada de dolor, diez es el peor que pueda imaginar.
ask-pain-shown = ¿Cuánto dolor ahora? 0 nada · 10 el peor
ask-voice = Esta semana, en su vida diaria, ¿qué tal le ha respondido la voz? Cero es nada, diez es tan bien como desearía.
ask-voice-shown = ¿Qué tal le ha respondido la voz esta semana? 0 nada · 10 como desearía
ask-rating-again = Tómese su tiempo. Un número de cero a diez, o «saltar».
rating-taken = { SPOKEN($n) }. Gracias.
ask-moment = Esta semana, ¿ha habido algún momento en que la voz le haya respondido como quería? Cuéntemelo en una o dos frases. Lo guardaré para usted y su logopeda.
ask-moment-shown = ¿Algún momento de esta semana en que la voz le haya respondido como quería? Cuéntemelo.
ask-moment-again = Tómese su tiempo. Cuénteme un momento así, o diga «saltar».
moment-tell = Cuéntemelo.
moment-taken = Gracias. Lo he guardado.
moment-none = De acuerdo.
ask-missed = { $days ->
    [one] Esta semana ha pasado un día previsto sin práctica. Son cosas que ocurren.
   *[other] Esta semana han pasado { SPOKEN($days) } días previstos sin práctica. Son cosas que ocurren.
} ¿Qué lo ha impedido? Puede decir: me encontraba mal, demasiado cansancio, falta de tiempo, se me olvidó, u otra cosa.
ask-missed-shown = ¿Qué lo ha impedido? Me encontraba mal · cansancio · falta de tiempo · olvido · otra cosa
ask-missed-again = Tómese su tiempo. Me encontraba mal, demasiado cansancio, falta de tiempo, se me olvidó, otra cosa, o «saltar».
missed-taken-not-well = Se encontraba mal. Lo siento. Gracias.
missed-taken-too-tired = Demasiado cansancio. Gracias.
missed-taken-no-time = Falta de tiempo. Gracias.
missed-taken-forgot = Se le olvidó. Gracias.
missed-taken-something-else = Otra cosa. Gracias.
ask-sign-cough-at-meals = Esta semana, ¿ha tosido o se ha atragantado al comer o beber? ¿Sí, no, o tiene dudas?
ask-sign-cough-at-meals-shown = ¿Tos o atragantamiento en las comidas esta semana?
ask-sign-wet-voice = ¿Le ha sonado la voz húmeda o con gorgoteo después de comer o beber? ¿Sí, no, o tiene dudas?
ask-sign-wet-voice-shown = ¿Voz húmeda o con gorgoteo después de comer o beber?
ask-sign-weight-loss = ¿Ha perdido peso sin querer? ¿Sí, no, o tiene dudas?
ask-sign-weight-loss-shown = ¿Pérdida de peso sin querer?
ask-sign-chest-infection = ¿Ha tenido una infección respiratoria esta semana? ¿Sí, no, o tiene dudas?
ask-sign-chest-infection-shown = ¿Una infección respiratoria esta semana?
ask-sign-again = Tómese su tiempo. ¿Sí, no, dudas, o «saltar»?
sign-taken-yes = Sí. Coménteselo pronto a su logopeda, por favor. Figurará en primer lugar en su informe.
sign-taken-no = No. Gracias.
sign-taken-not-sure = Con dudas. Pregúnteselo a su logopeda, por favor. Figurará en primer lugar en su informe.
questions-over = Gracias. Sus respuestas están guardadas.
questions-left = De acuerdo. No hay más preguntas.
questions-over-shown = Gracias
questions-unwell = La práctica ha terminado. Seguiré escuchando un rato. Diga «estoy bien» cuando lo esté.
questions-unwell-shown = La práctica ha terminado

say-ready = preparado
say-done = hecho
say-yes = sí
say-no = no
say-stop = parar
say-pause = pausa
say-go-on = seguir
say-again = otra vez
say-skip = saltar
say-go-back = volver
say-how-long = cuánto tiempo
say-help = ayuda
say-slower = más despacio
say-faster = más rápido
say-louder = más alto
say-softer = más bajo
say-rest = descansar
say-dry = tengo la boca seca
say-finish = terminar
say-dizzy = me mareo
say-hurts = eso duele
say-chest-pain = dolor de pecho
say-cant-breathe = me falta el aire
say-choking = me he atragantado
say-feel-sick = tengo náuseas
say-all-right = estoy bien
say-not-sure = dudo
say-why = para qué sirve
say-how-did = qué tal lo hice
say-hint = una pista por favor

class-say-ready = vamos allá
class-say-yes = presente
class-say-no = no está
class-say-not-sure = siguiente persona
class-say-done = ya está hecho
class-say-again = una vez más
class-say-skip = siguiente ejercicio
class-say-help = ayuda por favor
class-say-slower = vaya despacio
class-say-faster = vaya rápido
class-say-louder = hable más alto
class-say-softer = más bajo por favor
class-say-rest = todos a descansar
class-say-finish = terminar por hoy

weekday-monday = lunes
weekday-tuesday = martes
weekday-wednesday = miércoles
weekday-thursday = jueves
weekday-friday = viernes
weekday-saturday = sábado
weekday-sunday = domingo

trouble-loudspeaker-too-loud = Mi voz suena tan fuerte aquí que no puedo oírle por encima. Responda cuando yo haya hablado, o bájeme un poco.
trouble-room-too-loud = Ahora hay mucho ruido en la sala, y no puedo medir bien. Si hay un televisor o un grifo abierto, ciérrelo, por favor. Si no puede, no pasa nada.
trouble-room-talks = Oigo hablar a otras personas, o un televisor, así que puede que no le oiga. Si se puede apagar, apáguelo, por favor, o acérquese más.
trouble-microphone-clips = Su micrófono recorta las partes más fuertes. Aléjelo un poco, o bájelo.
trouble-microphone-gain = Su micrófono cambia solo su propio volumen. Los niveles de hoy no se pueden comparar con los de otros días.
trouble-microphone-silent = No oigo absolutamente nada, ni siquiera la sala. Compruebe que el micrófono esté encendido y enchufado, por favor. Mientras tanto puede usar las teclas o la página.
trouble-microphone-back = Ahora le oigo.
trouble-loudspeaker-back = Durante un rato no ha podido oírme.
trouble-loudspeaker-gone = No encuentro mi altavoz. Vuelva a conectarlo. Hasta entonces, lea aquí lo que digo.
loudspeaker-back-shown = Mi altavoz vuelve a funcionar.

class-greeting = { $title }. { $steps ->
    [one] Un ejercicio
   *[other] { SPOKEN($steps) } ejercicios
} para todo el grupo. Yo cuento y llevo el tiempo.
class-shown = Para el grupo
class-safety = Para todo el grupo: hagan solo lo que resulte fácil. Si alguien se marea o tiene dolor, que deje el ejercicio.
class-roll = Primero, ¿quién está? Digan «presente», «no está» o «siguiente persona». O «vamos allá», para dejarlo.
class-call = ¿{ $name }?
class-call-shown = ¿{ $name }?
class-call-number = ¿Número { SPOKEN($n) }?
class-call-number-shown = ¿Número { $n }?
class-roll-over = { $present ->
    [0] No consta nadie como presente.
    [one] Hay una persona.
   *[other] Hay { SPOKEN($present) } personas.
}
class-leave-out = Dejan fuera este ejercicio: { $names }.
class-seated = Hacen este ejercicio en silla: { $names }.
class-start = Diga «vamos allá», o pulse la tecla, para empezar.
class-start-shown = «Vamos allá», o la tecla
class-position = Cuando todo el grupo esté en posición, diga «vamos allá».
class-position-shown = «Vamos allá», o la tecla
class-rest-over = Descansen. Diga «vamos allá» para el siguiente.
class-rest-over-shown = Descanso
class-keys-shown = Teclas: espacio o avance de página continúa, retroceso de página repite, punto pausa, escape para, s salta, r descansa, + y - cambian el volumen, < y > el ritmo, q termina.
class-sip = Quien lo tenga permitido, que tome un sorbo pequeño y lo trague todo. Diga «vamos allá» cuando hayan terminado.
class-sip-shown = Un sorbo pequeño
class-halted = Me quedo en silencio. Diga «vamos a seguir», o «siguiente ejercicio».
class-resting = Descansen. Diga «vamos allá» cuando quieran continuar.
class-unwell = Si alguien se encuentra mal, que lo deje y siga en la silla. Su logopeda está aquí.
class-over = Eso es todo. Buen trabajo, a todo el grupo.
