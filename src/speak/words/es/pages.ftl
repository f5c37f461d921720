page-skip = Saltar al contenido
page-nav-label = Páginas de configuración
page-nav-start = Configuración
page-nav-microphone = Prueba de sonido
page-nav-calibration = Calibración
page-nav-routines = Rutinas
page-nav-cautions = Precauciones
page-nav-enrolment = Su voz
page-nav-history = Historial
page-nav-progress = Progreso
page-nav-sound = Grabaciones
page-nav-caseload = Lista de casos
page-told-address = Las páginas de configuración están abiertas en esta dirección, solo en este ordenador. Ctrl-C las cierra.
page-trouble-title = No ha funcionado
page-trouble-own = Esta página no se ha podido hacer por un fallo del programa. No se ha cambiado nada. Cargue la página de nuevo.
page-practising = Hay una práctica en marcha. Podrá usar estas páginas cuando acabe.
page-back-to-start = Volver a la configuración
page-no-such-button = Esta página no tiene ese botón. Cargue la página de nuevo.
page-yes = Sí
page-no = No
page-remove = Quitar
page-break-off = Cancelar
page-broken-off = Cancelado. No se ha guardado nada.
page-look-again = Ver cómo va
page-whose = Persona
page-everybody = Todas
page-figures = Cifras
page-figure-none = desconocido
page-number-wrong = Escriba un número dentro de estos límites.
page-sure-missing = Marque antes la casilla: esto no se puede deshacer.
page-client-missing = Diga para quién es.
page-no-model = No hay modelo de reconocimiento, así que no se puede comprobar el hogar. Instale uno, o indique su carpeta con --model.
page-can-say = Puede decir: { $words }
page-level-label = Volumen ahora
page-level-hint = La barra muestra el volumen ahora. La línea en ella es el nivel de fondo de la sala.
page-summary-title = { $n ->
    [one] Una cosa por corregir
   *[other] { $n } cosas por corregir
}
page-title-faults = Por corregir: { $title }
page-hint-limits = De { $from } a { $to }.
page-hint-default = Si se deja vacío: { $value }.
page-hint-optional = Puede dejarlo vacío.
page-hint-a-line-each = Una por línea.
page-not-for = No es para estas personas, salvo que su propia logopeda diga otra cosa:
page-cautions = Tenga cuidado con esto:
page-start-title = Configuración
page-start-lead = Qué está listo y qué falta, por orden.
page-start-then = Después
page-start-then-one = Para estar a la espera de una práctica todo el día, inicie «tidecount attend». Empieza cuando alguien lo pide.
page-start-then-two = Para empezar una ahora, inicie «tidecount practise» con el archivo de la rutina.
page-standing-done = Hecho
page-standing-missing = Falta todavía
page-standing-optional = Opcional
page-standing-again = Comprobar de nuevo
page-start-mic = Pruebe el micrófono y el altavoz en el sitio de la práctica. Pruébelos de nuevo siempre que mueva uno.
page-start-mic-works = El micrófono y el altavoz funcionan.
page-start-mic-trouble = La última prueba encontró algo por corregir.
page-start-uncalibrated = Los niveles son relativos. Con un sonómetro se convierten en decibelios que se pueden comparar.
page-start-calibrated = Calibrado el { $date }: { $device }.
page-start-calibration-void = Una calibración ya no vale. Los niveles son relativos hasta que calibre de nuevo.
page-start-no-routine = Todavía no hay ninguna rutina. Escriba una, o importe el paquete de su logopeda.
page-start-routine-faults = { $n } de { $of } rutinas tienen fallos y no se pueden practicar.
page-start-routines = { $n ->
    [one] Hay una rutina lista.
   *[other] Hay { $n } rutinas listas.
} { $persons ->
    [0] Todavía no se ha elegido a nadie para practicarla. Solo hace falta para «attend».
    [one] Practica una persona.
   *[other] Practican { $persons } personas.
}
page-start-cautions-done = Nada espera la autorización de su logopeda.
page-start-cautions-open = Algunos ejercicios esperan la autorización de su logopeda, para { $names }. Hasta entonces se dejan fuera o se pregunta en voz alta.
page-start-no-voice = Si a alguien se le entiende mal a menudo, puede enseñar al programa cómo dice las órdenes.
page-start-voice = Aprendido: { $names }.
page-start-no-practice = Ninguna práctica todavía.
page-start-practices = { $n ->
    [one] Una práctica hasta ahora.
   *[other] { $n } prácticas hasta ahora.
}
page-field-mic = Micrófono
page-field-speaker = Altavoz
page-device-default = El predeterminado del ordenador
page-device-is-default = { $name } (el predeterminado del ordenador)
page-device-gone = Este dispositivo ya no está conectado. Cargue la página de nuevo y elija otro.
page-device-failed = No se ha podido usar el dispositivo: { $why }. Si lo usa otro programa, ciérrelo e inténtelo de nuevo.
page-device-busy-here = Otra de estas páginas está usando el micrófono o el altavoz. Aguarde a que acabe, o cancélela.
page-microphone-lead = Elija los dos, pruebe el altavoz y luego el micrófono. Se tarda medio minuto.
page-microphone-kept = Los dispositivos están abiertos solo mientras los prueba. No se guarda ningún sonido.
page-speaker-title = Altavoz
page-speaker-lead = Oirá un tono y una frase.
page-speaker-play = Reproducir un tono y una frase
page-speaker-playing = Escuche: un tono, luego una frase.
page-speaker-heard = ¿Lo ha oído con claridad?
page-speaker-well = Bien. Ahora pruebe el micrófono.
page-speaker-help = Suba el altavoz, compruebe que esté encendido y enchufado, o elija otro arriba. Luego reprodúzcalo de nuevo.
page-spoken-test = Así sueno yo. Si me oye bien, todo está en orden.
page-listen-title = Micrófono
page-listen-lead = Guarde silencio cinco segundos. Luego alguien habla cinco segundos, como en una práctica. Luego el programa dice una frase.
page-listen-start = Empezar la prueba
page-listen-room = Silencio, por favor. Estoy escuchando la sala.
page-listen-speech = Ahora hable, tan fuerte como en una práctica. Diga los días de la semana.
page-listen-own = Gracias. Ahora habla el programa. Guarde silencio, por favor.
page-mic-works = Funciona
page-mic-head-dead = No se ha oído nada
page-mic-head-no-speech = No se ha oído ninguna voz
page-mic-head-trouble = Algo por corregir
page-mic-dead = El micrófono solo da silencio. ¿Está silenciado, apagado, o es otro?
page-mic-no-speech = No se ha oído ninguna voz. Acérquese, hable los cinco segundos enteros, o elija otro micrófono.
page-mic-clips = Demasiado fuerte: las partes más fuertes quedan recortadas. Baje el nivel del micrófono, o siéntese más lejos.
page-mic-room-loud = La sala es demasiado ruidosa para una voz suave. Cierre la ventana, apague lo que zumbe o suene, o baje el nivel del micrófono.
page-mic-too-soft = La voz es demasiado suave: apenas supera el ruido de la sala. Acerque el micrófono, o suba su nivel.
page-mic-changes-volume = El micrófono cambia su propio volumen, así que los niveles no se pueden comparar. Desactive la ganancia automática en los ajustes de sonido del ordenador.
page-mic-own-voice = El micrófono recoge demasiado la voz del programa. Baje el altavoz, o aléjelo del micrófono.
page-mic-lost = Se ha perdido algo de sonido. Cierre otros programas, o desenchufe el micrófono y vuelva a enchufarlo.
page-figure-room = Sala, respecto a fondo de escala
page-figure-voice = Voz, respecto a fondo de escala
page-figure-own = Voz del programa en el micrófono, respecto a fondo de escala
page-figure-clipped = Recortado en los picos
page-figure-lost = Sonido perdido
page-calibration-lead = Un micrófono calibrado da decibelios que se pueden comparar de una semana a otra. Se puede practicar también sin ello.
page-calibration-kept = Calibrado
page-calibration-none = Ningún micrófono está calibrado; los niveles son relativos.
page-calibration-how = { $date }, con { $method }: { $level } a { $at } cm.
page-calibration-scale = Micrófono a { $distance } cm. Lo más fuerte que admite es { $full } dB SPL a 30 cm (SPL: nivel de presión sonora).
page-calibration-void = Ya no vale: { $why }
page-calibration-forget = Borrar
page-calibration-forgotten = La calibración se ha borrado.
page-calibration-new = Calibrar
page-calibration-step-place = Ponga el micrófono donde estará durante la práctica. Desactive la ganancia automática y la reducción de ruido.
page-calibration-step-meter = Ponga el sonómetro al lado, en A y Slow.
page-calibration-step-listen = Guarde silencio { $quiet } segundos. Luego mantenga una «a» estable { $sound } segundos, y lea la cifra mientras tanto.
page-calibration-listen = Empezar a escuchar
page-calibration-listening = Calibración
page-calibration-quiet = Silencio, por favor.
page-calibration-voice = Ahora mantenga una «a» estable, y lea la cifra mientras tanto.
page-calibration-source = Ahora encienda la fuente.
page-calibration-heard = Oídos { $length } s de sonido a { $level } dB({ $weighting }), { $over } dB por encima de la sala; 0 dB es lo más fuerte que admite el micrófono, y { $weighting } es la ponderación de frecuencias. Ha variado { $spread } dB.
page-calibration-keep = Guardar la calibración
page-calibration-drop = Descartarla
page-calibration-done = Calibrado y guardado
page-field-method = Qué muestra el nivel
page-method-choose-meter = Un sonómetro
page-method-choose-source = Una fuente de nivel conocido, como un calibrador acústico
page-method-choose-phone = Una aplicación de nivel en un teléfono: los niveles quedan marcados como aproximados
page-method-meter = un sonómetro
page-method-source = una fuente de nivel conocido
page-method-phone = la cifra de un teléfono (aproximado)
page-field-distance_cm = De la boca al micrófono, cm
page-hint-distance = Donde estará durante la práctica. Si se deja vacío: 30.
page-field-reference_cm = De la boca al medidor o teléfono, cm
page-hint-reference = Si se deja vacío: igual que el micrófono.
page-field-weighting = Ponderación de frecuencias del medidor
page-hint-weighting = La letra que sigue a dB en el medidor.
page-weighting-usual = Habitual: A (Z para una fuente)
page-field-level_db = Nivel, dB, si ya lo sabe
page-hint-level-before = Si se deja vacío: se pregunta después de escuchar.
page-field-level-read = Lo que mostró, dB({ $weighting })
page-field-level-source = El nivel de la fuente, dB({ $weighting })
page-level-missing = Escriba la cifra que se mostró.
page-enrolment-lead = El programa dice cada orden, y usted la repite tres veces. Dura unos diez minutos. Puede cancelar en cualquier palabra.
page-enrolment-consent = Antes pide permiso en voz alta. No se guarda ningún sonido, solo cifras de cada palabra. Se quedan en este ordenador, y puede borrarlas abajo.
page-enrolment-begin = Empezar
page-enrolment-starting = Un instante: el programa se prepara para escuchar.
page-enrolment-learnt = Recién aprendido
page-enrolment-nothing = No se ha aprendido nada, ni se ha guardado nada.
page-enrolment-kept = Lo que se guarda
page-enrolment-none = No se guarda nada sobre la voz de nadie.
page-enrolment-word = { $takes ->
    [one] dicha una vez
   *[other] dicha { $takes } veces
}, { $day }, { $bytes } bytes de cifras
page-enrolment-sure = Borrar todo lo guardado sobre la voz de { $name }. Esto no se puede deshacer.
page-enrolment-forget = Borrar
page-enrolment-forgotten = Borrado. No queda nada.
page-field-whose = De quién es la voz
page-field-client-name = De quién es la voz
page-hint-client-name = Un nombre corto, el mismo que en la rutina. No tiene que ser un nombre real.
page-cautions-lead = Algunos ejercicios solo se pueden hacer si la logopeda de la persona los ha autorizado. Lea las precauciones de cada ejercicio antes de marcarlo.
page-cautions-nobody = Todavía no hay nadie aquí. Escriba una rutina con un nombre, o elija quién la practica.
page-cautions-none = Ninguna rutina de { $name } necesita la autorización de su logopeda.
page-cautions-open = { $n ->
    [0] nada a la espera
    [one] un ejercicio a la espera
   *[other] { $n } ejercicios a la espera
}
page-cautions-routines = En: { $names }.
page-cautions-no-routine = Ahora esta persona no tiene ninguna rutina con él.
page-cautions-box = Su logopeda lo ha autorizado para { $name }.
page-cautions-keep = Guardar la autorización
page-cautions-withdraw = Retirar
page-cautions-agreed = La autorización está guardada. El programa no preguntará más, y sigue diciendo las precauciones.
page-cautions-withdrawn = Retirada. El ejercicio se deja fuera hasta que alguien lo autorice de nuevo.
page-cautions-tick = Marque los ejercicios que su logopeda ha autorizado.
page-field-agreed-by = Quién lo ha autorizado
page-hint-agreed-by = Nombre a la logopeda o al logopeda de forma que luego sepa quién es.
page-agreed-by-missing = Diga quién lo ha autorizado, en 80 caracteres como mucho.
page-agreed-aloud = Autorizado en voz alta durante una práctica el { $when }.
page-agreed-page = Autorizado por { $by }, anotado en esta página el { $when }.
page-agreed-package = Autorizado en el paquete de la logopeda del { $when } (clave { $by }).
page-by-page = por la página
page-routines-lead = Cada rutina es un archivo. También puede cambiarla en cualquier editor.
page-routines-none = Todavía no hay rutinas aquí.
page-routines-about = { $steps ->
    [one] Un ejercicio
   *[other] { $steps } ejercicios
}, { $minutes ->
    [one] alrededor de un minuto
   *[other] unos { $minutes } minutos
}
page-routines-faults = { $n ->
    [one] Un fallo: así no se puede practicar.
   *[other] { $n } fallos: así no se puede practicar.
}
page-routines-who = La practica { $names }
page-routines-new = Rutina nueva
page-routines-begin = Empezar
page-routines-empty = Vacía
page-routines-copy-of = Una copia de { $file }
page-routines-folder = Las rutinas están en { $folder }
page-field-file-name = Nombre del archivo
page-hint-file-name = Letras, cifras, espacios y guiones, como «noche».
page-field-like = Partir de
page-file-none = Aquí no hay ningún archivo de rutina { $file }.
page-file-bad-name = Use solo letras, cifras, espacios y guiones en el nombre del archivo, como «noche».
page-file-exists = Ya hay un archivo { $file }. Elija otro nombre.
page-file-changed = Entretanto otra persona ha cambiado el archivo { $file }, así que no se ha guardado nada. Sus cambios siguen en esta página. Mire el archivo tal como está en otra ventana, y hágalos de nuevo.
page-file-not-text = El archivo { $file } no es texto UTF-8. Guárdelo como UTF-8 en un editor.
page-file-too-large = El archivo { $file } es demasiado grande para una rutina.
page-file-system = No se ha podido usar el archivo { $file }: { $why }
page-no-such-file = Ese archivo no está aquí.
page-no-pdf = Esta copia de tidecount se hizo sin PDF. Imprima la página desde su navegador.
page-file-report-pdf = Informe de { $name } para la logopeda, para imprimir (PDF)
page-file-report-html = Informe de { $name } para un navegador (HTML)
page-file-chart = Texto de { $name } para la historia clínica, para copiar y pegar
page-file-carer-pdf = Una página para quien ayude a { $name }, para imprimir (PDF)
page-file-carer-html = Una página para quien ayude a { $name }, para un navegador (HTML)
page-letter = Una carta a otro profesional
page-letter-parts = Contar solo esto
page-letter-pdf = Hacer la carta (PDF)
page-letter-html = Hacer la carta (HTML)
page-file-csv = Intentos de { $name } en una tabla (CSV)
page-file-csv-all = Todos los intentos en una tabla (CSV)
page-file-json = Prácticas de { $name }, entrada por entrada (JSON Lines)
page-file-json-all = Todas las prácticas, entrada por entrada (JSON Lines)
page-file-fhir = Prácticas de { $name } para una historia de salud (HL7 FHIR)
page-routine-back = Todas las rutinas
page-routine-edit = Editar
page-routine-print = Imprimir una hoja
page-routine-saved = Guardado: { $file }. La versión anterior queda al lado; su nombre acaba en «before».
page-routine-chosen = Elegida. La próxima vez que inicie «tidecount attend», ofrecerá esta rutina.
page-routine-unchosen = Quitada de la lista.
page-routine-raw = El archivo
page-routine-too-large = Este archivo es demasiado grande para un formulario. Cámbielo en un editor.
page-routine-who = Quién la practica
page-routine-who-does = { $name } la practica.
page-routine-who-not = { $name } no la practica.
page-routine-choose = Elegirla para { $name }
page-routine-unchoose = Dejar de elegirla para { $name }
page-routine-choose-new = Elegirla para esta persona
page-field-person = Otra persona
page-hint-person = Un nombre como se dice, por ejemplo «abuelo». No tiene que ser un nombre real.
page-person-missing = Escriba un nombre.
page-person-last = Alguien debe tener una rutina. Elija antes otra rutina.
page-household-faults = Con este cambio el archivo del hogar tendría fallos, así que no se ha cambiado nada:
page-routine-new-title = Rutina nueva: { $file }
page-routine-edit-title = Editar { $file }
page-routine-edit-lead = No se guarda nada hasta que pulse «Guardar». Los campos vacíos toman el valor habitual.
page-routine-save = Guardar
page-routine-check = Solo comprobar
page-routine-as-text = Editar en su lugar el texto del archivo
page-routine-as-form = Volver al formulario
page-routine-well = Sin fallos. Todavía no está guardado.
page-routine-not-yet-saved = Cambiado aquí, pero todavía sin guardar.
page-routine-text-title = Texto de { $file }
page-routine-text-lead = Para quien conoce el formato del archivo. Se comprueba igual que el formulario.
page-field-text = El archivo
page-hint-text = Cada ajuste en su línea. Los comentarios empiezan con #.
page-routine-general = General
page-routine-plan = Cuándo
page-routine-plan-hint = Las horas a las que debería hacerse. Sin ellas, la persona la hace cuando quiera.
page-routine-plan-add = Añadir una hora
page-routine-plan-number = Hora { $n }
page-routine-patience = Cuando nadie responde
page-routine-steps = Ejercicios
page-routine-no-steps = Todavía no hay ejercicios. Añada uno abajo.
page-routine-adding = Añadir un ejercicio
page-routine-add-step = Añadir
page-routine-doses = Dosis publicadas o habituales
page-routine-disagree = Donde las fuentes discrepan
page-routine-whys = Por qué hay estos límites
page-dose-take = Usar esta dosis
page-dose-taken-as = Rellenado: { $dose }
page-dose-no-number = No tiene ninguna cifra que rellenar.
page-dose-beyond = Esta dosis no se puede usar: { $why }
page-step-earlier = Antes
page-step-later = Después
page-step-remove = Quitar
page-add-phase = Añadir una fase
page-add-question = Añadir una pregunta
page-add-stage = Añadir una etapa
page-grow = Que la dosis crezca con las semanas
page-phase-number = Fase { $n }
page-question-number = Pregunta { $n }
page-stage-number = Etapa { $n }
page-ramp-when = Cuándo crece
page-ramp-remove = Que no crezca
page-packs-choose = Elegir colecciones de palabras
page-field-title = Título
page-hint-title = Cómo se llama en voz alta, por ejemplo «Rutina de noche».
page-field-language = Idioma
page-field-client = Persona
page-hint-client = Un nombre corto. No tiene que ser real. Puede dejarlo vacío.
page-field-cue_words = Palabras clave antes de un intento fuerte
page-hint-cue_words = Las propias de la logopeda, como «voz fuerte». Puede dejarlo vacío.
page-field-agreement_months = Volver a pedir la autorización de un ejercicio después de tantos meses
page-field-ratings = Valoraciones al final
page-rating-effort = Preguntar al final: cuánto esfuerzo ha costado, 0 a 10
page-rating-tiredness = Preguntar al final: cuánto cansancio hay, 0 a 10
page-rating-pain = Preguntar al final: cuánto dolor hay, 0 a 10
page-field-weekly_questions = Preguntar una vez por semana: la voz en la vida diaria, por qué se perdieron días previstos, señales de alarma en la deglución
page-field-feedback_every = Decir el resultado cada tantos intentos (0: solo si se pide)
page-field-loud_limit_s = Tiempo máximo de voz fuerte mantenida en una práctica, segundos
page-field-no_answer = Cuando nadie responde
page-field-ask_again_after_s = Preguntar de nuevo después de, segundos
page-field-asks = Preguntar de nuevo tantas veces
page-field-give_up_after_s = Terminar tras tanto silencio, segundos
page-field-plan = Cuándo
page-field-at = A las
page-hint-at = Horas y minutos, como 18:30.
page-field-days = Días
page-field-step = Ejercicios
page-field-exercise = Ejercicio
page-field-add = Ejercicio
page-field-cautions_acknowledged = Se han leído las precauciones de arriba, y la logopeda de la persona lo autoriza
page-hint-acknowledge = La rutina no se puede practicar hasta que lo marque.
page-field-sets = Series
page-field-repetitions = Repeticiones
page-field-rest_s = Descanso entre repeticiones, segundos
page-field-set_rest_s = Descanso entre series, segundos
page-field-target_s = Objetivo, segundos
page-field-max_break_s = Corte más largo que no termina una fonación, segundos
page-field-min_hold_s = Fonación más corta que cuenta como intento, segundos
page-field-cues_at_s = Avisos breves durante la fonación, en el segundo
page-hint-cues = Números con comas, como 5, 10. Puede dejarlo vacío.
page-field-phases = Fases
page-field-phase-name = Qué
page-field-phase-length = Cuánto, segundos
page-field-phase_s = Cuánto, segundos
page-field-name = Nombre
page-field-count_every_s = Contar en voz alta cada, segundos
page-field-count_last_s = Contar cada segundo en los últimos, segundos
page-field-in = Tiempos dentro
page-field-out = Tiempos fuera
page-field-beat_s = Tiempo entre cuentas, segundos
page-field-next_cue_after_s = El siguiente aviso llega solo después de, segundos
page-field-sip_every = Ofrecer un sorbo de agua cada tantas
page-field-sips_enabled_by_clinician = La logopeda de la persona ha autorizado sorbos de agua
page-field-phrases = Frases
page-hint-phrases = Una por línea. Se muestran en grande y se leen en voz alta.
page-field-rungs = Escalones por orden
page-hint-rungs = Como soft, medium, strong, medium, o low, middle, high, middle.
page-field-step_db = Tamaño de un escalón, decibelios
page-field-step_st = Tamaño de un escalón, semitonos
page-field-setting = Lo que ha ajustado la logopeda
page-hint-setting = Se dice antes del primero, por ejemplo «dos vueltas de la rueda».
page-field-prompts = De qué hablar
page-hint-prompts = Uno por línea, cada uno para una charla. Si se deja vacío, el programa pregunta por algo que guste hacer.
page-field-passage = Texto de lectura
page-hint-passage = Se muestra en grande y no se lee en voz alta. Si se deja vacío, es una fábula de unas 140 palabras.
page-field-syllables = Sílabas
page-field-length_s = Cuánto, segundos
page-field-questions = Preguntas
page-field-question-clue = Pregunta
page-field-question-answers = Respuestas que valen
page-field-question-near = Respuestas que se acercan
page-field-question-hint = Pista
page-field-question-fact = Se dice después de la respuesta
page-field-packs = Colecciones de palabras
page-field-packs-other = Otras colecciones de palabras
page-hint-packs-other = Nombres de archivos junto a la rutina, con comas. Puede dejarlo vacío.
page-field-think_s = Tiempo para pensar, segundos
page-field-ramp = Una dosis que crece
page-field-ramp-days = Días hasta la etapa siguiente
page-field-stages = Etapas
page-field-hold_s = Mantenido, segundos
page-pack-categories = Nombre tantas como se le ocurran
page-pack-definitions = ¿Qué es?
page-pack-double-meanings = Una palabra, dos significados
page-pack-odd-one-out = ¿Cuál sobra?
page-pack-opposites = Contrarios
page-pack-pairs = ¿Qué va con ello?
page-pack-sayings = El final de un refrán
page-remedy-acknowledge = Lea las precauciones. Si la logopeda de la persona lo autoriza, marque la casilla.
page-remedy-sips = Si la logopeda de la persona ha autorizado sorbos, marque la casilla. Si no, deje el campo vacío.
page-remedy-sips-client = Rellene arriba la persona: los sorbos se autorizan para una persona.
page-remedy-questions = Marque una colección de palabras, o añada una pregunta.
page-remedy-phrases = Escriba al menos una frase.
page-remedy-packs = Marque al menos una colección de palabras.
page-remedy-title = Rellene el título.
page-remedy-steps = Añada al menos un ejercicio.
page-remedy-type = Escriba un número, o deje el campo vacío.
page-history-none = Ninguna práctica todavía.
page-history-table = Prácticas, la más reciente primero
page-history-pages = Más prácticas
page-history-newer = Más recientes
page-history-older = Más antiguas
page-history-range = Prácticas { $from } a { $to } de { $of }, la más reciente primero
page-history-when = Cuándo
page-history-who = Quién
page-history-routine = Rutina
page-history-done = Hecho
page-history-length = Duración
page-history-best = Fonaciones más largas
page-history-ended = Cómo acabó
page-history-steps = { $done } de { $of } ejercicios
page-history-minutes = { $n } min
page-history-under-way = en marcha
page-history-exports = Guardar como archivo
page-source-replay = de una grabación
page-source-rehearsal = ensayada
page-end-completed = completa
page-end-finished = terminada por la persona
page-end-interrupted = interrumpida
page-end-abandoned = sin continuar
page-end-no-answer = sin respuesta
page-end-time-limit = todo lo que puede durar una práctica
page-end-day-limit = bastantes prácticas para un día
page-practice-back = Todas las prácticas
page-practice-none = No hay ninguna práctica con ese número.
page-practice-what = Lo que pasó
page-practice-part = Parte { $n }, desde { $when }
page-practice-sounds = Grabaciones
page-fact-place = { $name }{ $sets ->
    [one] { $of ->
        [one] { "" }
       *[other] , { $n } de { $of }
    }
   *[other] , serie { $set } de { $sets }, { $n } de { $of }
}
page-fact-begun = Se empezó «{ $routine }», con { $n ->
    [one] un ejercicio
   *[other] { $n } ejercicios
}.
page-fact-resumed = Continuada tras una interrupción.
page-fact-agreed = Sí: la logopeda ha autorizado { $names }.
page-fact-not-agreed = Sin autorización: { $names }.
page-fact-left-out = Dejado fuera: { $reason }.
page-fact-step = Empieza { $name }.
page-fact-stage = Etapa { $n } de una dosis que crece.
page-fact-hold = Mantenido { $s } s.
page-fact-hold-figures = { $level }, { $hz } Hz, extensión tonal { $span } semitonos.
page-fact-distance = Nivel a { $cm } cm de la boca.
page-fact-distance-unknown = No se indicó la distancia al micrófono.
page-fact-clipped = Los { $s } s más fuertes están recortados: el nivel verdadero es mayor.
page-fact-auto-gain = El micrófono cambió su propio volumen, así que este nivel no se puede comparar con ningún otro.
page-fact-breaks = { $n ->
    [one] Se salvó un corte de la voz.
   *[other] Se salvaron { $n } cortes de la voz.
}
page-fact-masked = La voz del programa tapó { $s } s.
page-fact-cut-off = Cortado por una orden, así que ninguna cifra lo usa.
page-fact-posture = Mantenido { $s } de { $of } s.
page-fact-round = Una ronda en { $s } s, { $beat } s entre cuentas.
page-fact-repetition = Hecho en { $s } s, terminado por { $by }.
page-fact-phrase = «{ $phrase }» en { $s } s.
page-fact-level = { $level }, { $hz } Hz.
page-fact-talk = { $s } s, con { $pauses ->
    [0] ningún silencio
    [one] un silencio
   *[other] { $pauses } silencios
  } ({ $share } % del tiempo).
page-fact-syllables = { $n } sílabas en { $s } s: { $rate } por segundo, irregularidad { $irregularity } %.
page-fact-question-right = «{ $clue }» Respondido: { $answer }.
page-fact-question-other = «{ $clue }» Otra respuesta: { $answer }.
page-fact-question-none = «{ $clue }» Sin respuesta.
page-fact-named = { $n } nombradas, { $category }, en { $s } s: { $words }
page-fact-rested = Descansó { $s } s.
page-fact-fall-length = Las fonaciones se acortaron más de lo habitual en esta persona: { $from } s, luego { $to } s.
page-fact-fall-level = La voz se suavizó más de lo habitual en esta persona: { $from } dB, luego { $to } dB.
page-fact-rest-taken = Se ofreció un descanso y se aceptó.
page-fact-rated = { $what }, { $over }, 0 a 10: { $value }.
page-fact-rated-none = sin valorar
page-fact-sign = Preguntado por { $what }: { $answer }.
page-fact-missed = { $n ->
    [one] 1 día previsto perdido
   *[other] { $n } días previstos perdidos
} esta semana: { $why }.
page-fact-missed-unsaid = sin dar motivo
page-fact-rest-declined = Se ofreció un descanso y se rechazó.
page-fact-loud-limit = La voz fuerte mantenida llegó a { $s } de { $limit } s. El resto quedó para otro día.
page-fact-command = Se oyó «{ $text }»: { $command }.
page-fact-no-answer = Nadie respondió, aunque se preguntó { $n ->
    [one] una vez más
   *[other] { $n } veces más
}.
page-fact-step-done = Hecho: { $done } de { $of }.
page-fact-step-ended = Acabó antes ({ $reason }): { $done } de { $of }.
page-fact-safety = La persona dijo que algo iba mal: { $reason }.
page-fact-recogniser = El reconocimiento se reinició. No se oyó nada durante { $s } s.
page-fact-microphone = { $text }
page-fact-room-loud = La sala se volvió demasiado ruidosa para medir ({ $db } dB; 0 dB es lo más fuerte que admite el micrófono).
page-fact-room-quiet = La sala vuelve a estar bastante silenciosa.
page-fact-in-noise = Esa fonación superó a la sala en solo { $db } dB, así que ninguna cifra la usa.
page-fact-sound-lost = Se perdieron { $s } s de sonido.
page-fact-ended = El final ({ $reason }): { $done } de { $of } ejercicios.
page-fact-other = Se guardó otra cosa: { $kind }.
page-mark-left-out = Dejado fuera
page-mark-look = Mírelo
page-mark-discarded = No cuenta
page-mark-ended = Acabó antes
page-mark-safety = Seguridad
page-trouble-loudspeaker-too-loud = La voz del programa tapó la de la persona.
page-trouble-room-too-loud = La sala era demasiado ruidosa para medir.
page-trouble-room-talks = Otras personas hablaban, o había un televisor encendido.
page-trouble-microphone-clips = El micrófono recortó las partes más fuertes.
page-trouble-microphone-gain = El micrófono cambió su propio volumen.
page-trouble-microphone-silent = Del micrófono no llegó ningún sonido.
page-progress-nobody = Elija de quién quiere ver el progreso. Aparece en cuanto haya prácticas.
page-progress-lengths = Hasta cuándo atrás
page-progress-weeks = { $n } semanas
page-progress-all = Todo
page-progress-window = Del { $from } al { $to }
page-progress-files = Informes y archivos
page-progress-goals = Objetivos
page-progress-adherence = Hecho de lo prescrito
page-progress-practices = { $n ->
    [0] Ninguna práctica en este tiempo.
    [one] Una práctica en este tiempo.
   *[other] { $n } prácticas en este tiempo.
}
page-progress-done = Se hicieron { $done } de { $of } repeticiones: { $percent } %.
page-progress-nothing-prescribed = En este tiempo no había nada prescrito.
page-progress-extra = { $n ->
    [one] Una repetición más de lo prescrito.
   *[other] { $n } repeticiones más de lo prescrito.
}
page-progress-no-plan = No había días previstos, así que no se pueden contar las prácticas perdidas.
page-progress-calendar = Calendario, la semana más reciente primero
page-progress-earlier = Semanas anteriores
page-progress-week = Semana del
page-progress-share = Hecho
page-progress-day = { $done } de { $of } repeticiones
page-short-monday = lun
page-short-tuesday = mar
page-short-wednesday = mié
page-short-thursday = jue
page-short-friday = vie
page-short-saturday = sáb
page-short-sunday = dom
page-day-outside = todavía no
page-day-free = nada previsto
page-day-all = todo hecho
page-day-part = hecho en parte
page-day-nothing = sin hacer
page-day-extra = hecho sin estar previsto
page-progress-none = No se midió nada en este tiempo.
page-progress-table = Las cifras en una tabla
page-progress-table-of = Tabla: { $title }
page-progress-stops = Detenciones y señales de alarma
page-progress-ratings = Valoraciones propias, 0 a 10
page-progress-rated = { $what }, { $over }: mediana { $median } (de { $low } a { $high }), última { $latest } el { $last }
page-progress-missed = Por qué se perdieron días previstos
page-progress-missed-for = { $what }: { $n ->
    [one] 1 día
   *[other] { $n } días
}, dicho por última vez el { $last }
page-progress-left-out = Dejado fuera
page-progress-programme = Lo que ha cambiado en el programa
page-progress-foot = Una ayuda para practicar. No hace diagnósticos.
page-progress-baseline = Valor inicial: { $median }, intentos de { $low } a { $high }, en { $days } días desde el { $from }.
page-progress-no-baseline = Todavía no hay valor inicial: hacen falta intentos en tres días.
page-progress-week-median = Mediana de la semana del { $monday }: { $median }, de { $trials ->
    [one] un intento
   *[other] { $trials } intentos
}.
page-progress-slope = Tendencia: { $slope } por semana, al 95 % entre { $low } y { $high }.
page-progress-mdc = Un cambio de más de { $mdc } supera la propia dispersión de esta persona.
page-progress-within-scatter = El cambio desde el valor inicial, { $change }, está dentro de esa dispersión.
page-progress-higher = Los últimos días están { $change } por encima del valor inicial, más que esa dispersión.
page-progress-lower = Los últimos días están { $change } por debajo del valor inicial, más que esa dispersión.
page-progress-break = Serie nueva desde el { $day }: { $why }.
page-progress-discarded = { $n ->
    [one] Un valor queda
   *[other] { $n } valores quedan
} fuera de todas las cifras: { $why }.
page-progress-conditions = Últimas condiciones: ponderación { $weighting }, distancia { $distance }, { $scale }, micrófono { $microphone }.
page-progress-conditions-mic = Último micrófono: { $microphone }.
page-scale-none = sin calibrar, relativo
page-scale-void = la calibración ya no vale, relativo
page-scale-meter = calibrado con un sonómetro
page-scale-source = calibrado con una fuente conocida
page-scale-rough = aproximado, de un teléfono
page-column-day = Día
page-column-trials = Intentos
page-column-median = Mediana
page-column-low = Menor
page-column-high = Mayor
page-measure-hold-s = tiempo de fonación
page-measure-level-db = nivel de las fonaciones
page-measure-f0-median-hz = tono de las fonaciones
page-measure-f0-span-st = extensión tonal
page-measure-f0-sd-st = variación del tono en las fonaciones
page-measure-level-slope-db-per-s = caída del nivel en las fonaciones
page-measure-step-db = escalón de volumen
page-measure-step-st = escalón de tono
page-measure-phrase-span-st = extensión tonal de las frases
page-measure-phrase-rate-hz = sílabas por segundo en las frases
page-measure-phrase-level-db = nivel de las frases
page-measure-phrase-f0-hz = tono de las frases
page-measure-talk-level-db = nivel al hablar
page-measure-talk-f0-hz = tono al hablar
page-measure-pause-share-pct = proporción de silencios
page-measure-syllable-rate-hz = sílabas por segundo
page-measure-syllable-irregularity-pct = irregularidad de las sílabas
page-measure-named-count = palabras nombradas
page-programme-begun = empezada, con { $n ->
    [one] un ejercicio
   *[other] { $n } ejercicios
}
page-programme-replaced = sustituida por { $by }
page-programme-added = { $name } añadido, { $dose }
page-programme-removed = { $name } retirado
page-programme-dose = { $name }: { $field } de { $from } a { $to }
page-programme-stage = { $name } en la etapa { $n }, { $dose }
page-programme-order = otro orden
page-programme-plan = cuándo: { $from }, ahora { $to }
page-programme-setting = { $field } de { $from } a { $to }
page-sound-lead = No se guarda ninguna grabación si la persona no quiere. Se activa aquí, y la persona debe decir además que sí en voz alta en la próxima práctica. Las grabaciones se quedan en este ordenador y se borran solas.
page-sound-nobody = Elija de quién son las grabaciones. Solo se puede preguntar a quien ya se conoce aquí.
page-sound-never = Desactivado. No se guardan grabaciones.
page-sound-asked = Pedido el { $when }, para guardar cada una { $days } días. Se preguntará a la persona en voz alta en la próxima práctica. Hasta entonces no se guarda nada.
page-sound-refused = Desactivado: la persona dijo que no el { $when }.
page-sound-given = Activado: la persona dijo que sí el { $when }. Cada grabación se guarda { $days } días.
page-sound-withdrawn = Desactivado desde el { $when }.
page-sound-on = Pedir guardar grabaciones
page-sound-change = Cambiar el número de días
page-sound-off = Desactivarlo
page-sound-stored = Grabaciones guardadas
page-sound-none = No hay grabaciones guardadas.
page-sound-one = Práctica { $practice }, { $when }, { $minutes } min, se borra después del { $until }
page-sound-sure = Borrar todas las grabaciones guardadas de esta persona. Esto no se puede deshacer.
page-sound-delete = Borrar
page-sound-told-on = Guardado. Se preguntará a la persona en voz alta en la próxima práctica.
page-sound-told-off = Desactivado. No se guardan más grabaciones. Las guardadas se borran cuando acabe su plazo, o ahora con el botón de abajo.
page-sound-told-deleted = Borrado.
page-field-sound-days = Días que se guarda cada grabación
page-caseload-lead = { $n ->
    [one] Una de { $of } personas necesita
   *[other] { $n } de { $of } personas necesitan
  } atención el { $day }.
page-caseload-choices = Qué personas
page-caseload-needing = Necesitan atención
page-caseload-range = { $from } a { $to } de { $of }, lo más grave primero
page-caseload-nobody = Nadie, por lo que muestran los resultados.
page-caseload-nothing = Nada que señalar, que se sepa.
page-caseload-desk = de { $desk }
page-caseload-pages = Más personas
page-caseload-before = Anterior
page-caseload-behind = Siguiente
page-caseload-back = Volver a la lista de casos
page-caseload-none = Aquí no hay base de datos de la clínica. Importe resultados con `tidecount clinic import`, y abra las páginas de nuevo.
page-caseload-no-client = No hay ninguna persona con ese número.
page-caseload-foot = Esta página muestra solo los resultados que han llegado. Lo que significan lo dice la logopeda o el logopeda.
page-caseload-foot-sheet = Todas las cifras comparan a esta persona solo consigo misma. Lo que significan lo dice la logopeda o el logopeda.
page-caseload-why = Por qué necesita atención
page-caseload-note = Nota
page-caseload-note-hint = Una nota para usted y los demás puestos. Puede dejarla vacía. Lo señalado hasta ahora no se vuelve a señalar.
page-caseload-note-long = Que no pase de { $n } caracteres.
page-caseload-news = Después de hacerse esta página llegaron resultados nuevos. Ahora se muestran: mire de nuevo, por favor.
page-caseload-seen = Lo he mirado
page-caseload-told-seen = Anotado que lo ha mirado.
page-caseload-events = Señalado por las prácticas
page-caseload-event = Qué
page-caseload-event-state = Estado
page-caseload-event-seen = visto
page-caseload-event-new = nuevo
page-caseload-measures = Medidas
page-caseload-measures-hint = Primeros días, últimos días, y el menor cambio que supera la propia dispersión de esta persona (95 %).
page-caseload-measure = Ejercicio y medida
page-caseload-baseline = Primeros
page-caseload-latest = Últimos
page-caseload-smallest = Menor cambio
page-caseload-verdict = Veredicto
page-caseload-conditions = Basado en
page-caseload-trials = { $n ->
    [one] un intento
   *[other] { $n } intentos
  }
page-caseload-days = Adherencia por día
page-caseload-days-hint = Repeticiones hechas de las prescritas en los días previstos. Las de más no cuentan.
page-caseload-days-begun = Adherencia en las prácticas empezadas
page-caseload-days-begun-hint = No se acordaron días, así que no se pueden contar los días sin práctica.
page-caseload-share = Parte
page-caseload-reps = Repeticiones
page-caseload-practices = Prácticas
page-caseload-discarded = fuera de las cifras
page-caseload-sessions = Prácticas, la más reciente primero
page-caseload-looks = Quién lo ha mirado, y cuándo
page-verdict-unknown = muy poco para decirlo
page-verdict-unchanged = dentro de la dispersión
page-verdict-fallen = ha bajado
page-verdict-risen = ha subido
page-reason-safety = Seguridad
page-reason-swallow-sign = Deglución
page-reason-no-practice = Sin práctica
page-reason-no-results = Sin resultados
page-reason-adherence = Adherencia
page-reason-decline = Descenso
page-reason-left-out = Dejado fuera
page-reason-tired = Cansancio
page-reason-programme = Programa
page-reason-microphone = Micrófono
page-reason-clock = Reloj
