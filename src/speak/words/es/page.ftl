page-title-shown = Práctica
page-always-shown = Siempre
page-exercise-shown = Ejercicio
page-captions-shown = Lo que se dice
page-log-shown = Lo que se ha dicho
page-can-say-shown = Puede decir
page-more-shown = más
page-less-shown = menos
page-everything-shown = También puede decir
page-settings-shown = Ajustes
page-keys-shown = Teclas y pasapáginas
page-keys-help-shown = Espacio o avance de página: hecho. Retroceso de página: otra vez. Punto: pausa. S: saltar. Y, N: sí, no. Escape para en cualquier momento, aunque esto esté desactivado.
page-aloud-shown = Dejar que un lector de pantalla lea lo que se dice
page-messages-shown = Mensajes
page-done-shown = Lo que se ha hecho
page-others-shown = Otras páginas
page-no-script-shown = Esta página necesita JavaScript. La práctica continúa sin ella, guiada por la voz.
page-connecting-shown = La práctica continúa. Esta página se está conectando de nuevo.
page-ended-shown = El programa de práctica ha terminado. Puede cerrar esta página.
page-anew-shown = tidecount se ha reiniciado. Abra la dirección que ha escrito.
page-refused-shown = Eso no ha llegado. Dígalo, o pulse de nuevo.
page-speaking-shown = Habla
page-listening-shown = Escucha
page-holding-shown = Le oigo
page-still-shown = Silencio
page-read-shown = Lea
page-go-shown = Ahora
page-rest-shown = Descanso
page-turn-shown = Su turno
page-paused-shown = En pausa
page-heard-shown = Usted: «{ $words }»
page-held-shown = Mantenido { $seconds } segundos.
page-seconds-held-shown = Segundos mantenidos
page-seconds-rest-shown = Segundos de descanso restantes
page-seconds-shown = Segundos
page-count-shown = Cuenta
page-syllables-shown = Sílabas
page-of-seconds-shown = de { $n } { $n ->
    [one] segundo
   *[other] segundos
}
page-of-shown = de { $n }
page-starting-shown = La práctica empieza enseguida
page-broken-off-shown = La práctica se ha interrumpido. Lo medido está guardado.
page-exercises-shown = { $done } de { $all } ejercicios hechos
page-done-of-shown = { $done } de { $all }
page-begun-shown = empezado
page-left-out-shown = dejado fuera
page-loudness-shown = Volumen
page-usual-level-shown = su nivel habitual
page-as-usual-shown = tan fuerte como siempre
page-louder-shown = { $n } dB más fuerte que de costumbre
page-softer-shown = { $n } dB más suave que de costumbre
page-level-shown = { $n } dB
page-voice-heard-shown = Le oigo
page-pitch-shown = Tono
page-usual-voice-shown = su voz habitual
page-first-note-shown = donde empezó
page-usual-note-shown = su nota aguda habitual
page-semitones-higher-shown = { $n } { $n ->
    [one] semitono
   *[other] semitonos
} más agudo
page-semitones-lower-shown = { $n } { $n ->
    [one] semitono
   *[other] semitonos
} más grave
page-same-pitch-shown = en el mismo tono
page-address-shown = La página: { $address }

# The terminal's log of results

log-here-shown = { $name }: aquí
log-not-here-shown = { $name }: no está
log-not-asked-shown = { $name }: sin preguntar
log-hold-shown = { $s } s sostenidos, { $pitch }, { $level }
log-hold-cut-off-shown = { $s } s sostenidos, { $pitch }, { $level }, interrumpido
log-hz-shown = { $hz } Hz
log-no-hz-shown = sin Hz
log-posture-shown = postura: { $s } de { $of } s
log-phrase-shown = frase: { $s } s, { $level }
log-talk-shown = charla: { $s } s, { $pauses } pausas, { $level }
log-syllables-shown = { $n } sílabas, { $rate } por segundo
log-left-out-shown = { $name }, dejado fuera: { $why }
log-recogniser-shown = el reconocedor se reinició; { $s } s quedaron sin oír
log-room-loud-shown = hay demasiado ruido para medir ({ $db } dB respecto a la escala completa)
log-room-quiet-shown = la habitación vuelve a estar bastante tranquila
log-in-noise-shown = esa vocal quedó solo { $db } dB por encima del ruido; sus cifras son dudosas
log-sound-lost-shown = se perdieron { $s } s de sonido

# A level in words, in the log and on pages: "72 dB(A) SPL at 30 cm", "-29 dB(A) relative"

level-relative-shown = { $db } dB({ $weighting }) relativos
level-spl-shown = { $db } dB({ $weighting }) SPL a 30 cm
level-rough-shown = { $db } dB({ $weighting }) SPL a 30 cm, APROXIMADO
level-none-shown = sin
level-auto-gain-shown = { $level }, no comparable (ganancia automática)
level-clipped-shown = { $level }, saturado

# The terminal's table at the end. Heads of columns: at most 5 letters for table-done and table-f0, 6 for the other figures.

table-exercise-shown = Ejercicio
table-done-shown = hecho
table-best-shown = máx. s
table-mean-shown = med. s
table-f0-shown = F0 Hz
table-level-shown = dB(A)
table-notes-shown = Notas
table-left-out-shown = dejado fuera: { $why }
table-stopped-shown = interrumpido: { $why }
table-rate-shown = { $rate } síl./s
table-right-shown = { $right } de { $all } bien
table-clipped-shown = { $n } con saturación
table-not-comparable-shown = niveles no comparables
table-masked-shown = { $n } bajo nuestra voz
table-none-shown = * respecto a la escala completa: el micrófono no está calibrado
table-void-shown = * respecto a la escala completa: la calibración del micrófono ya no vale
table-rough-shown = ~ aproximado: dB SPL a 30 cm según un teléfono
table-meter-shown = dB(A): dB SPL a 30 cm, media energética, calibrado con sonómetro
table-source-shown = dB(A): dB SPL a 30 cm, media energética, calibrado con una fuente conocida
table-auto-gain-shown = El micrófono cambió su propio volumen: los niveles no son comparables.
table-ended-shown = { $done } de { $all } ejercicios hechos; final: { $why }
table-ratings-shown = Valoración propia, de 0 a 10: { $list }
table-rating-shown = { $what } { $value }
table-moment-shown = Se contó un momento en que la voz respondió; el informe dice dónde está.
table-signs-shown = Dígaselo a su logopeda: { $list }
table-sign-shown = { $what } ({ $answer })
