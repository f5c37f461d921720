# Lo que se puede decir. Se muestra la primera forma; las formas van separadas por |. Ninguna vale para dos órdenes ni está dentro de otra.
# «parar» y «pausa» se oyen mientras hablamos: ninguna frase hablada las contiene.

cmd-ready = preparado | preparada | estoy preparado | estoy preparada | cuando quiera
cmd-done = hecho | ya está hecho | está hecho | he terminado
cmd-yes = sí | sí por favor | claro que sí | desde luego
cmd-no = no | no gracias | aún no | mejor no
cmd-stop = parar | pare ya | pare por favor | parar ahora
cmd-pause = pausa | pausa por favor | espere | espere un momento
cmd-go-on = seguir | continuar | vamos a seguir | quiero continuar
cmd-again = otra vez | una vez más | repita eso | repita por favor
cmd-skip = saltar | saltar este | siguiente | siguiente ejercicio
cmd-go-back = volver | volver atrás | ejercicio anterior
cmd-how-long = cuánto tiempo | cuánto ha durado | cuántos segundos
cmd-help = ayuda | ayuda por favor | necesito ayuda
cmd-slower = más despacio | más despacio por favor | vaya despacio | demasiado rápido
cmd-faster = más rápido | más rápido por favor | vaya rápido | demasiado despacio
cmd-louder = más alto | más alto por favor | hable más alto
cmd-softer = más bajo | más bajo por favor | demasiado alto
cmd-rest = descansar | necesito descansar | quiero descansar | un descanso
cmd-dry = tengo la boca seca | tengo la garganta seca | boca seca | un poco de agua
cmd-finish = terminar | terminar por hoy | basta por hoy | se acabó por hoy
cmd-dizzy = estoy mareado | estoy mareada | me mareo | me siento débil
cmd-chest-pain = dolor de pecho | dolor en el pecho | me duele el pecho | presión en el pecho
# «no puedo respirar» empieza por «no» y se tomaría por esa orden.
cmd-cant-breathe = me falta el aire | me ahogo | me cuesta respirar | apenas puedo respirar
cmd-choking = me he atragantado | me atraganto | se me ha ido por otro lado
cmd-feel-sick = tengo náuseas | tengo ganas de vomitar | estoy a punto de vomitar
cmd-all-right = estoy bien | ya estoy bien | me encuentro bien | me encuentro mejor
cmd-not-sure = quizá | dudo | tengo dudas
cmd-why = por qué este | para qué sirve
cmd-how-did = qué tal lo hice | cómo voy
cmd-hint = una pista por favor | una pista | deme una pista
cmd-hurts = eso duele | esto duele | tengo dolor | me hace daño

# Lo que suena parecido a una orden y no lo es. Se reconoce para no confundirlo con ella.
near-misses = me siento bien | estoy cansado | estoy cansada | me da igual | eso vale

answer-0 = cero | nada en absoluto
answer-1 = uno
answer-2 = dos
answer-3 = tres
answer-4 = cuatro
answer-5 = cinco
answer-6 = seis
answer-7 = siete
answer-8 = ocho
answer-9 = nueve
answer-10 = diez
answer-not-well = me encontraba mal | estaba enfermo | estaba enferma
answer-too-tired = demasiado cansancio | estaba cansado | estaba cansada
answer-no-time = falta de tiempo | no tuve tiempo | estuve ocupado | estuve ocupada
answer-forgot = olvido | se me olvidó | me olvidé
answer-something-else = otra cosa | otro motivo

class-cmd-ready = estamos preparados | todos preparados | vamos allá
class-cmd-go-on = vamos a seguir | quiero continuar
class-cmd-rest = todos a descansar | un descanso
class-cmd-again = otra vez | una vez más
class-cmd-skip = siguiente ejercicio | saltar este
class-cmd-hurts = eso duele | esto duele
class-cmd-yes = presente | estoy aquí | aquí estoy
class-cmd-no = no está | no ha venido | hoy no viene
class-cmd-not-sure = siguiente persona | la siguiente persona
class-name-here = { $name } está aquí
class-name-not-here = { $name } no está aquí | { $name } no ha venido
class-number-here = número { SPOKEN($n) } está aquí
class-number-not-here = número { SPOKEN($n) } no está aquí | número { SPOKEN($n) } no ha venido
