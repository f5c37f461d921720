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
