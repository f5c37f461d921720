report-date-shown = { $day } { $month } { $year }
report-day-month-shown = { $day } { $month }
report-month-year-shown = { $month } { $year }
report-span-shown = { $from } a { $to }
report-month-1-shown = ene.
report-month-2-shown = feb.
report-month-3-shown = mar.
report-month-4-shown = abr.
report-month-5-shown = may.
report-month-6-shown = jun.
report-month-7-shown = jul.
report-month-8-shown = ago.
report-month-9-shown = sept.
report-month-10-shown = oct.
report-month-11-shown = nov.
report-month-12-shown = dic.
report-weekday-1-shown = lun
report-weekday-2-shown = mar
report-weekday-3-shown = mié
report-weekday-4-shown = jue
report-weekday-5-shown = vie
report-weekday-6-shown = sáb
report-weekday-7-shown = dom
report-measure-hold-s-shown = tiempo de fonación
report-measure-level-db-shown = nivel
report-measure-f0-median-hz-shown = mediana de F0
report-measure-f0-span-st-shown = extensión tonal
report-measure-f0-sd-st-shown = DE de F0
report-measure-level-slope-db-per-s-shown = pendiente del nivel
report-measure-step-db-shown = escalón de volumen
report-measure-step-st-shown = escalón de tono
report-measure-phrase-span-st-shown = extensión tonal
report-measure-phrase-rate-hz-shown = velocidad del habla
report-measure-phrase-level-db-shown = nivel
report-measure-phrase-f0-hz-shown = mediana de F0
report-measure-talk-level-db-shown = nivel
report-measure-talk-f0-hz-shown = mediana de F0
report-measure-pause-share-pct-shown = proporción de silencios
report-measure-syllable-rate-hz-shown = velocidad silábica
report-measure-syllable-irregularity-pct-shown = irregularidad silábica
report-measure-named-count-shown = palabras nombradas
report-measure-cpps-db-shown = CPPS
report-measure-hnr-db-shown = HNR
report-measure-jitter-pct-shown = jitter (local)
report-measure-shimmer-pct-shown = shimmer (local)
report-unit-spl-shown = dB SPL
report-unit-rough-shown = dB SPL, aproximado
report-unit-relative-shown = dB, relativo
report-unit-mixed-shown = dB SPL y dB relativos
report-unit-words-shown = palabras
report-figure-shown = { $value }
report-value-shown = { $value } { $unit }
report-interval-shown = de { $low } a { $high }
report-weighted-shown = ponderación { $weighting }
report-at-cm-shown = { $cm } cm
report-document-shown = Informe de práctica, { $client }, { $span }
report-title-shown = Informe de práctica: { $client }
report-period-shown = { $span }, { $weeks ->
    [one] 1 semana
   *[other] { $weeks } semanas
}
report-made-shown = Hecho el { $date } con { $software }
report-levels-calibrated-shown = Niveles: { $unit }, { $terms }.
report-levels-relative-shown = Los niveles son relativos (sin calibrar): compárelos solo dentro de una serie sin cortes.
report-levels-mixed-shown = Niveles: en parte calibrados, en parte relativos; véanse las tablas.
report-glance-shown = De un vistazo
report-glance-nothing-shown = Ninguna práctica entre { $from } y { $to }.
report-glance-nothing-last-shown = Ninguna práctica entre { $from } y { $to }; la última fue el { $last }.
report-glance-planned-shown = { $done } de { $prescribed } repeticiones prescritas hechas ({ $pct } %); practicó { $days } de { $planned } días previstos; última práctica el { $last }.
report-glance-planned-bare-shown = Practicó { $days } de { $planned } días previstos; última práctica el { $last }.
report-glance-unplanned-shown = { $days ->
    [one] Practicó 1 día;
   *[other] Practicó { $days } días;
} no había días previstos, así que no se pueden contar las prácticas perdidas. En las prácticas se hicieron { $done } de { $prescribed } repeticiones ({ $pct } %). Última práctica el { $last }.
report-glance-unplanned-bare-shown = { $days ->
    [one] Practicó 1 día;
   *[other] Practicó { $days } días;
} no había días previstos, así que no se pueden contar las prácticas perdidas. Última práctica el { $last }.
report-glance-unsettled-shown = A la espera de su decisión: { $list }. Nadie ha dicho que usted lo autorizara, así que { $n ->
    [one] se deja
   *[other] se dejan
} fuera.
report-glance-stops-none-shown = Ninguna detención por malestar.
report-glance-stops-shown = { $n ->
    [one] 1 detención por malestar: { $list }.
   *[other] { $n } detenciones por malestar: { $list }.
}
report-glance-signs-shown = Preguntada una vez por semana por la deglución, la persona respondió que sí o con dudas: { $list }.
report-counted-shown = { $what } ({ $n }×)
report-glance-beyond-shown = Ha cambiado más que su propia dispersión: { $list }.
report-glance-within-shown = Sin cambio por encima de su propia dispersión: { $list }.
report-glance-early-shown = Demasiado pronto para decirlo: { $list }.
report-glance-unmeasured-shown = En estas semanas no se midió ningún ejercicio de voz.
report-glance-word-shown = { $exercise } en { $routine } supera los límites habituales, bajo la responsabilidad de { $who }: { $why }.
report-glance-word-whole-shown = { $routine } en conjunto supera los límites habituales, bajo la responsabilidad de { $who }: { $why }.
report-glance-breaks-shown = { $n ->
    [one] Las series tienen 1 corte, numerado en los gráficos. No se comparan los valores de uno y otro lado.
   *[other] Las series tienen { $n } cortes, numerados en los gráficos. No se comparan los valores de uno y otro lado.
}
report-changed-shown = { $name } { $change }
report-series-shown = { $exercise }, { $measure }
report-panel-shown = { $exercise }: { $measure }, { $unit }
report-panel-bare-shown = { $exercise }: { $measure }
report-goals-shown = Objetivos
report-goals-rule-measured-shown = Logrado: el valor típico (mediana de los últimos 3 a 5 días de práctica) ha alcanzado el objetivo, y su cambio desde el valor inicial supera la propia dispersión. Demasiado pronto: menos días de los necesarios, o no ha llegado la fecha. En los demás casos: no logrado.
report-goals-rule-by-hand-shown = Las actividades las marcan personas, nunca el programa.
report-goal-shown = «{ $words }» { $target } para el { $due }: { $state }.
report-goal-now-shown = «{ $words }» { $target } para el { $due }: { $state }. Valor típico ahora: { $now }.
report-goal-by-hand-shown = «{ $words }» Para el { $due }: { $state }.
report-goal-at-least-shown = { $exercise }, { $measure } al menos { $value }
report-goal-at-most-shown = { $exercise }, { $measure } como mucho { $value }
report-goal-activity-shown = una actividad, sin medida
report-goal-set-shown = { $date }, { $by }
report-goal-met-shown = logrado
report-goal-met-marked-shown = logrado, marcado por { $by } el { $date }
report-goal-not-met-shown = no logrado
report-goal-not-met-marked-shown = no logrado, marcado por { $by } el { $date }
report-goal-short-shown = no logrado, el valor típico no lo ha alcanzado
report-goal-within-scatter-shown = no logrado, el valor típico lo ha alcanzado pero su cambio está dentro de la propia dispersión
report-goal-no-trials-shown = demasiado pronto, ningún intento en las últimas cuatro semanas
report-goal-few-days-shown = demasiado pronto, pocos días con intentos
report-goal-not-calibrated-shown = demasiado pronto, los niveles no están calibrados
report-goal-before-due-shown = demasiado pronto, aún no logrado y no ha llegado la fecha
report-goal-not-marked-shown = demasiado pronto, nadie lo ha marcado
report-head-goal-goal-shown = Objetivo, con palabras propias
report-head-goal-target-shown = Medida y meta
report-head-goal-set-shown = Fijado
report-head-goal-due-shown = Para
report-head-goal-now-shown = Típico ahora
report-head-goal-state-shown = Estado
report-calendar-title-shown = Adherencia: repeticiones hechas de las prescritas
report-calendar-stops-shown = detenciones
report-calendar-percent-shown = %
report-calendar-described-planned-shown = Calendario de { $span }: una casilla por día, rellena según la parte de repeticiones hechas. Practicó { $days } de { $planned } días previstos; { $done } de { $prescribed } repeticiones hechas. Las cifras están en la tabla de semanas.
report-calendar-described-unplanned-shown = Calendario de { $span }: una casilla por día de práctica, rellena según la parte de repeticiones hechas. Practicó { $days } días; { $done } de { $prescribed } repeticiones hechas. Las cifras están en la tabla de semanas.
report-calendar-key-shown = Casilla: día previsto o practicado, rellena desde abajo según la parte hecha. Raya: nada previsto.
report-calendar-key-stops-shown = Casilla: día previsto o practicado, rellena desde abajo según la parte hecha. Raya: nada previsto. Cruz: detención por malestar.
report-figure-done-shown = Hecho
report-figure-done-value-shown = { $done } de { $prescribed } ({ $pct } %)
report-figure-days-shown = Días
report-figure-days-planned-shown = { $days } de { $planned } previstos
report-figure-days-value-shown = { $days }
report-figure-practices-shown = Prácticas
report-figure-minutes-shown = Duración habitual
report-figure-minutes-value-shown = { $minutes } min
report-figure-longest-gap-shown = Hueco más largo
report-figure-longest-gap-value-shown = { $days ->
    [one] 1 día
   *[other] { $days } días
}
report-figure-since-shown = Desde
report-figure-first-shown = Valor inicial
report-figure-now-shown = Último
report-figure-change-shown = Cambio
report-figure-counts-shown = Cuenta desde
report-figure-counts-value-shown = ±{ $value } (MDC95)
report-figure-slope-shown = Por semana
report-figure-trials-shown = Intentos
report-figure-trials-value-shown = { $n }
report-figure-trials-left-shown = { $n }, fuera { $left }
report-figure-few-shown = pocos días
report-verdict-beyond-shown = { $change }, supera la dispersión
report-verdict-within-shown = { $change }, dentro de la dispersión
report-chart-described-shown = Gráfico de { $name } en el tiempo, { $span }. { $first } { $now } { $verdict } { $parted } Las cifras están en la tabla de semanas.
report-described-first-shown = Valor inicial { $value }.
report-described-now-shown = Último { $value }.
report-described-verdict-shown = Cambio { $change }; un cambio cuenta desde { $mdc }.
report-described-parted-shown = { $n ->
    [one] La serie tiene un corte.
   *[other] La serie tiene { $n } cortes.
}
report-gap-shown = hueco de { $days } días
report-key-shown = Leyenda
report-key-trial-shown = cada intento
report-key-median-shown = mediana semanal con intervalo del 95 %
report-key-loose-shown = † pocos días: el intervalo cubre menos del 95 %
report-key-baseline-shown = valor inicial, mediana con intervalo
report-key-mdc-shown = desde aquí cuenta un cambio (MDC95)
report-key-gap-shown = hueco
report-key-break-shown = otro corte
report-breaks-shown = Cortes
report-break-shown = { $number }: { $when }, { $why }
report-break-gap-shown = { $days } días sin intentos
report-break-microphone-shown = otro micrófono: «{ $to }», antes «{ $from }»
report-break-gain-shown = ganancia del micrófono { $to }, antes { $from }
report-break-calibration-shown = nivel ahora { $to }, antes { $from }
report-scale-relative-shown = relativo
report-scale-sound-level-meter-shown = calibrado con un sonómetro
report-scale-known-source-shown = calibrado con una fuente conocida
report-scale-a-phone-s-number-rough-shown = calibrado con la cifra de un teléfono, aproximado
report-break-calibration-other-shown = otra calibración
report-break-weighting-shown = ponderación { $to }, antes { $from }
report-break-distance-shown = distancia { $to }, antes { $from }
report-left-out-title-shown = Dejado fuera, y por qué
report-left-out-none-shown = No se dejó nada fuera.
report-left-out-shown = { $n ->
    [one] { $exercise }: { $why }; el { $last }.
   *[other] { $exercise }: { $why }; { $n } veces, la última el { $last }.
}
report-events-title-shown = Detenciones y notas
report-events-none-shown = Ninguna detención y ninguna nota.
report-stop-shown = { $n ->
    [one] Detención, { $why }, en { $where }; el { $last }.
   *[other] Detención, { $why }, en { $where }; { $n } veces, la última el { $last }.
}
report-stop-after-shown = { $n ->
    [one] Detención, { $why }, después de { $where }; el { $last }.
   *[other] Detención, { $why }, después de { $where }; { $n } veces, la última el { $last }.
}
report-stop-outside-shown = { $n ->
    [one] Detención, { $why }, entre ejercicios; el { $last }.
   *[other] Detención, { $why }, entre ejercicios; { $n } veces, la última el { $last }.
}
report-note-shown = { $n ->
    [one] { $what }; el { $last }.
   *[other] { $what }; { $n } veces, la última el { $last }.
}
report-note-in-shown = { $what } ({ $exercise })
report-note-trouble-shown = { $why }
report-note-calibration-void-shown = { $text }
report-note-loud-limit-shown = El tiempo de voz fuerte alcanzó el límite de la rutina
report-note-fall-shown = { $text }: bajó más que la dispersión habitual dentro de una práctica
report-note-sound-lost-shown = Sonido perdido entre el micrófono y el programa
report-note-ended-early-shown = La práctica acabó antes: { $why }
report-note-clock-shown = { $n ->
    [one] 1 práctica lleva una fecha anterior a la práctica previa: el reloj se atrasó. Su fecha puede ser errónea.
   *[other] { $n } prácticas llevan una fecha anterior a la práctica previa: el reloj se atrasó. Sus fechas pueden ser erróneas.
}
report-more-shown = { $n ->
    [one] Una más en las tablas.
   *[other] { $n } más en las tablas.
}
report-sign-shown = Deglución, { $what }: sí { $yes }×, dudas { $unsure }×; la última el { $last }.
report-sign-unsure-shown = { $what } (con dudas)
report-missed-shown = Días previstos perdidos, según la persona: { $list }.
report-programme-title-shown = Cambios en el programa
report-programme-none-shown = Sin cambios.
report-programme-shown = { $date }, { $routine }: { $list }.
report-change-routine-begun-shown = empezada con { $n ->
    [one] 1 ejercicio
   *[other] { $n } ejercicios
}
report-change-routine-replaced-shown = sustituida por { $by }
report-change-added-shown = { $exercise } añadido ({ $dose })
report-change-removed-shown = { $exercise } retirado
report-change-dose-shown = { $exercise }, { $field } { $from } → { $to }
report-change-stage-shown = { $exercise }, etapa { $from } → { $to } ({ $dose })
report-change-order-shown = otro orden
report-change-plan-shown = días { $from } → { $to }
report-change-setting-shown = { $field } { $from } → { $to }
report-foot-shown = Una ayuda para practicar que mide y lleva un registro. No hace diagnósticos.
report-why-dizzy-shown = mareo
report-why-pain-shown = dolor
report-why-help-shown = pidió ayuda
report-why-hurts-shown = dolor
report-why-chest-pain-shown = dolor en el pecho
report-why-can-t-breathe-shown = dificultad para respirar
report-why-choking-shown = atragantamiento
report-why-feels-sick-shown = náuseas
report-why-cough-at-meals-shown = tos o atragantamiento en las comidas
report-why-wet-voice-shown = voz húmeda después de comer
report-why-weight-loss-shown = pérdida de peso
report-why-chest-infection-shown = infección respiratoria
report-why-not-well-shown = se encontraba mal
report-why-too-tired-shown = demasiado cansancio
report-why-no-time-shown = falta de tiempo
report-why-forgot-shown = olvido
report-why-something-else-shown = otro motivo
report-why-unwell-shown = la persona no se encontraba bien
report-why-no-spoken-agreement-shown = sin autorización hablada
report-why-loud-time-limit-shown = tiempo de voz fuerte agotado
report-why-practice-limit-shown = todo lo que cabe en una práctica
report-why-day-limit-shown = todo lo que cabe en un día
report-why-time-limit-shown = la práctica había durado todo lo permitido
report-why-skipped-shown = saltado de viva voz
report-why-went-back-shown = volvió atrás
report-why-no-answer-shown = sin respuesta
report-why-finished-early-shown = terminado de viva voz antes del final
report-why-finished-shown = terminado de viva voz
report-why-interrupted-shown = interrumpido
report-why-no-agreement-shown = sin autorización hablada
report-why-duration-shown = Fonación
report-why-level-shown = Nivel
report-why-not-reached-shown = no alcanzado: práctica { $why }
report-why-abandoned-shown = interrumpida
report-why-completed-shown = completa
report-why-loudspeaker-too-loud-shown = Altavoz demasiado fuerte para el micrófono
report-why-room-too-loud-shown = Sala demasiado ruidosa para medir
report-why-room-talks-shown = Otras personas hablaban en la sala
report-why-microphone-clips-shown = Micrófono saturado
report-why-microphone-gain-shown = El micrófono cambió su propio volumen
report-why-microphone-silent-shown = Del micrófono no llegó ningún sonido
report-why-cut-off-shown = cortado por una orden
report-why-in-noise-shown = había demasiado ruido en la sala
report-why-masked-shown = el programa habló por encima
report-why-auto-gain-shown = el micrófono cambió su propio volumen
report-why-clipped-shown = saturado
report-why-misdated-shown = su fecha no puede ser correcta
report-why-done-shown = «hecho»
report-why-next-cue-shown = la siguiente señal
report-why-yes-shown = sí
report-why-no-shown = no
report-why-not-sure-shown = no seguro
report-field-repetitions-shown = repeticiones
report-field-sets-shown = series
report-field-rest-s-shown = descanso, s
report-field-target-s-shown = objetivo, s
report-field-hold-s-shown = mantener, s
report-field-length-s-shown = duración, s
report-field-target-db-shown = objetivo, dB
report-field-feedback-every-shown = resultado dicho cada tantos intentos
report-field-phases-shown = fases
report-field-posture-shown = postura
report-field-ratings-shown = valoraciones tras la práctica
report-field-weekly-questions-shown = preguntas sobre la semana
report-field-agreement-months-shown = meses que vale una autorización
report-abbreviation-mdc-shown = MDC95: el menor cambio que supera la propia dispersión de la persona (minimal detectable change, 95 %)
report-abbreviation-spl-shown = dB SPL: nivel de presión sonora en decibelios, como lo muestra un sonómetro
report-abbreviation-relative-shown = dB, relativo: decibelios en la escala propia de este micrófono
report-abbreviation-weighted-shown = ponderación A: los sonidos graves cuentan menos, más o menos como los oye el oído
report-abbreviation-st-shown = st: semitonos, doce en una octava
report-abbreviation-f0-shown = F0: frecuencia fundamental, el tono de la voz
report-abbreviation-hz-shown = Hz: vibraciones por segundo
report-abbreviation-sd-shown = DE: desviación estándar, cuánto se separan los valores
report-abbreviation-cpps-shown = CPPS: prominencia del pico cepstral suavizada, cuánto sobresale la voz de su propio ruido
report-abbreviation-hnr-shown = HNR: relación entre armónicos y ruido
report-abbreviation-jitter-shown = Jitter: lo desiguales que son en duración las vibraciones
report-abbreviation-shimmer-shown = Shimmer: lo desiguales que son en fuerza las vibraciones
report-table-by-group-shown = Minutos y repeticiones por grupo de ejercicios
report-table-by-group-note-shown = Minutos desde el comienzo de un ejercicio hasta su final, con sus descansos.
report-table-by-day-shown = Minutos y repeticiones por día
report-table-by-day-note-shown = Minutos/repeticiones. Minutos de prácticas enteras, con lo que se dice entre los ejercicios.
report-head-group-shown = Grupo de ejercicios
report-head-minutes-shown = Minutos
report-head-repetitions-shown = Repeticiones
report-head-sum-shown = Semana
report-group-other-shown = Otros ejercicios
report-condition-cueing-shown = Ayudas dadas
report-cueing-questions-shown = Preguntas de palabras: { $n }; respondidas sin pista { $alone }, con pista { $hinted }, sin respuesta { $rest }.
report-cueing-again-shown = { $n ->
    [0] La persona nunca pidió oír algo de nuevo.
    [one] La persona pidió una vez oír algo de nuevo.
   *[other] La persona pidió { $n } veces oír algo de nuevo.
}
report-cueing-no-answer-shown = { $n ->
    [0] No se dejó ninguna repetición por falta de respuesta.
    [one] Se dejó 1 repetición por falta de respuesta.
   *[other] Se dejaron { $n } repeticiones por falta de respuesta.
}
report-cueing-led-shown = El programa guió en voz alta cada repetición; cuánto de ello necesitaba la persona no consta.
report-cueing-carer-shown = Ayuda de quien cuida: no consta.
report-moments-shown = Cuando la voz respondió, contado por la persona
report-moments-note-shown = Contado en voz alta al final de una práctica, una vez por semana. Lo escrito lo escribió un programa: puede haber oído mal. Las grabaciones se pueden escuchar en la página de la práctica.
report-head-moment-day-shown = Día
report-head-moment-told-shown = Contado
report-moment-text-shown = «{ $text }»
report-moment-sound-shown = Grabado, { $s } s: práctica { $n }, hasta el { $until }.
report-moment-gone-shown = Contado; su grabación ya no se guarda.
report-moment-line-shown = { $date }: { $told }
report-baseline-shown = Medición inicial y de control, aparte de la práctica
report-head-baseline-what-shown = Medida
report-head-baseline-first-shown = Medición inicial
report-head-baseline-latest-shown = Último control
report-head-baseline-change-shown = Diferencia
report-head-baseline-practice-shown = En la práctica
report-head-baseline-published-shown = Valores publicados
report-baseline-best-shown = { $value }, el mejor de { $trials }
report-baseline-middle-shown = { $value }, el central de { $trials }
report-baseline-left-shown = { $told } ({ $n } más sin contar)
report-baseline-other-shown = no se puede comparar: otro micrófono, sitio o escala, o no consta
report-baseline-unknown-shown = { $change }; propia dispersión aún no conocida
report-baseline-within-shown = { $change }, dentro de la propia dispersión ({ $mdc })
report-baseline-beyond-shown = { $change }, supera la propia dispersión ({ $mdc })
report-baseline-practice-shown = { $value }
report-baseline-norm-shown = { $who }: { $text }
report-baseline-no-norm-shown = no se conoce valor normativo
report-baseline-norm-below-shown = véase abajo
report-baseline-of-source-shown = { $list } ({ $source })
report-baseline-published-shown = Publicado, { $name }: { $list }.
report-baseline-line-shown = { $name }: { $value } el { $date }
report-baseline-retest-shown = { $first }; { $value } el { $date } ({ $change })
report-baseline-led-shown = { $date }
report-baseline-led-part-shown = { $date } (no completada)
report-baseline-days-shown = Realizada el { $list }.
report-baseline-microphone-unknown-shown = micrófono desconocido
report-baseline-conditions-shown = { $date }: { $microphone }; nivel { $level }.
report-baseline-source-seen-shown = { $source }
report-baseline-source-second-hand-shown = { $source } (de segunda mano)
report-baseline-source-memory-shown = { $source } (de memoria)
report-baseline-source-common-practice-shown = { $source } (práctica habitual)
report-baseline-note-shown = Las tareas son las mismas cada vez. Junto a cada diferencia figura el menor cambio que supera la propia dispersión de la persona, que procede de la práctica. Los valores publicados son medias de grupos, medidas en otras condiciones: no dicen nada de una persona concreta, y ninguna cifra de aquí es un diagnóstico.
report-ratings-shown = Valoraciones propias, 0 a 10
report-ratings-note-shown = Tal como las dijo la persona. Esfuerzo, cansancio y dolor: 0 es nada, 10 lo máximo. Voz: 0 es lo peor, 10 lo mejor.
report-rating-effort-shown = Esfuerzo
report-rating-tiredness-shown = Cansancio
report-rating-pain-shown = Dolor
report-rating-voice-shown = La voz en la vida diaria
report-rating-of-practice-shown = tras la práctica
report-rating-of-week-shown = durante la semana
report-head-rating-what-shown = Valoración
report-head-rating-median-shown = Mediana
report-head-rating-range-shown = De la menor a la mayor
report-head-rating-latest-shown = Última
report-head-rating-times-shown = Valoraciones (sin responder)
report-rating-name-shown = { $what }, { $over }
report-rating-latest-shown = { $value } el { $date }
report-rating-line-shown = { $name }: mediana { $median } ({ $range }), última { $latest }; { $n ->
    [one] 1 valoración
   *[other] { $n } valoraciones
}
report-soap-ratings-shown = Valoraciones propias, 0 a 10:
report-soap-ratings-none-shown = Valoraciones propias: ninguna registrada.
report-soap-title-shown = Texto para la historia clínica
report-soap-hint-shown = Un clic lo elige todo, para copiar y pegar. La valoración la escribe usted.
report-soap-of-shown = Práctica en casa de { $client }, { $span }
report-soap-subjective-shown = Subjetivo
report-soap-objective-shown = Objetivo
report-soap-assessment-shown = Valoración
report-soap-plan-shown = Plan
report-soap-own-words-shown = Objetivos con palabras propias:
report-soap-quoted-shown = «{ $words }»
report-soap-stops-shown = Dicho durante la práctica:
report-soap-signs-shown = Dicho al preguntar por la deglución, una vez por semana:
report-soap-by-group-shown = Por grupo de ejercicios (minutos desde el comienzo de un ejercicio hasta su final):
report-soap-group-shown = { $group }: { $minutes } min, { $repetitions } repeticiones, en { $days ->
    [one] 1 día
   *[other] { $days } días
}
report-soap-by-day-shown = Por día, minutos/repeticiones de prácticas enteras, una línea por semana desde el lunes:
report-soap-cueing-shown = Ayudas dadas:
report-soap-measured-shown = Medidas, frente a la propia dispersión de la persona:
report-soap-measure-early-shown = { $name }: demasiado pronto para decir si cambia.
report-soap-measure-within-shown = { $name }: { $first } al inicio, { $now } ahora. Cambio { $change }, dentro de la dispersión (MDC95 { $mdc }).
report-soap-measure-beyond-shown = { $name }: { $first } al inicio, { $now } ahora. Cambio { $change }, supera la dispersión (MDC95 { $mdc }).
report-soap-goals-shown = Objetivos:
report-soap-left-out-shown = Dejado fuera, y por qué:
report-soap-programme-shown = Lo que ha cambiado en el programa:
report-soap-programme-none-shown = No ha cambiado nada en el programa.
report-soap-levels-mixed-shown = Los niveles eran en parte calibrados y en parte relativos; las cifras de aquí son de la última serie.
report-soap-yours-shown = (a escribir por usted)
report-soap-decide-shown = (a decidir por usted; el programa no da ningún paso por sí solo)
report-soap-proposed-shown = A considerar:
report-propose-goal-met-shown = Un objetivo está logrado: { $words } ¿Fijar otro objetivo, o el paso siguiente?
report-propose-goal-not-met-shown = Un objetivo no está logrado en su fecha: { $words } ¿Otra fecha, otro objetivo, u otra dosis?
report-propose-longer-shown = { $exercise }: { $reached } de los últimos { $of } alcanzaron el objetivo de { $target } s. ¿Un objetivo más largo?
report-propose-shorter-shown = { $exercise }: { $reached } de los últimos { $of } alcanzaron el objetivo de { $target } s. ¿Un objetivo más corto?
report-propose-stops-shown = Hubo detenciones por malestar: mírelas antes de subir cualquier dosis.
report-propose-signs-shown = Hubo señales de alarma en la deglución: mire el trabajo de deglución antes que nada.
report-propose-agreement-shown = Dejado fuera por falta de autorización: { $list }. ¿Autorizarlo, o retirarlo?
report-tables-title-shown = Tablas y condiciones
report-table-measures-shown = Medidas
report-table-measures-note-shown = Una línea por cada serie sin cortes; las medidas sin gráfico muestran solo la última. Valor inicial: mediana de los primeros días con su intervalo. MDC95: el menor cambio que supera la propia dispersión de la persona (minimal detectable change, 95 %). Tendencia: pendiente de Theil–Sen (la central de las pendientes entre todos los pares de días) con su intervalo del 95 %. † cubre menos del 95 %: había pocos días.
report-table-quality-note-shown = CPPS, HNR, jitter, shimmer: una voz más fuerte basta para que parezcan mejores, y el micrófono y la sala los cambian.
report-table-weeks-shown = Semanas
report-table-weeks-note-shown = Medianas semanales de las medianas diarias con intervalos del 95 %. † Cubre menos del 95 %: había pocos días. Dos líneas para una semana significan que una serie se corta en ella.
report-head-measure-shown = Ejercicio y medida
report-head-stretch-shown = Días
report-head-first-shown = Valor inicial
report-head-latest-shown = Último
report-head-change-shown = Cambio
report-head-mdc-shown = MDC95
report-head-slope-shown = Tendencia por semana
report-head-trials-shown = Intentos (fuera)
report-head-week-shown = Semana del
report-head-days-shown = Días
report-head-done-shown = Hecho
report-cell-of-shown = { $a } de { $b }
report-cell-percent-shown = { $done } de { $prescribed }, { $pct } %
report-cell-median-shown = { $value } ({ $interval })
report-cell-loose-shown = { $interval }†
report-cell-trials-shown = { $n } ({ $left })
report-cell-none-shown = –
report-cell-slope-shown = { $slope } ({ $interval })
report-cell-beyond-shown = { $change } *
report-table-star-shown = * supera la propia dispersión de la persona.
report-conditions-title-shown = Condiciones
report-condition-microphone-shown = Micrófono
report-condition-microphone-value-shown = «{ $name }» ({ $system }, { $rate } Hz, ganancia { $gain }); { $span }, { $n ->
    [one] 1 intento
   *[other] { $n } intentos
}
report-condition-microphone-unknown-shown = No registrado; { $span }, { $n ->
    [one] 1 intento
   *[other] { $n } intentos
}
report-condition-level-shown = Nivel
report-condition-level-value-shown = { $unit }, { $terms }; { $span }, { $n ->
    [one] 1 intento
   *[other] { $n } intentos
}
report-condition-calibration-shown = Calibración
report-condition-discarded-shown = Dejado fuera
report-condition-discarded-none-shown = Nada.
report-condition-discarded-value-shown = { $exercise }: { $list }.
report-condition-trials-shown = Intentos
report-condition-trials-value-shown = { $n ->
    [one] 1 intento en estas semanas
   *[other] { $n } intentos en estas semanas
}.
report-condition-best-shown = El mejor de tres
report-condition-best-value-shown = { $exercise }: último { $best } de { $trials }, el { $date }.
report-condition-software-shown = Programa
report-condition-routines-shown = Rutinas
report-condition-routine-value-shown = { $routine }: { $n ->
    [one] 1 práctica
   *[other] { $n } prácticas
}, { $span }.
report-condition-method-shown = Método
report-condition-method-value-shown = Valor inicial: los primeros cinco días con intentos. Dispersión: la mayor entre la de intento a intento (dentro de los días) y la de día a día. MDC95 = 1,96·√2·dispersión. Una serie se corta por un hueco y por todo lo que hace incomparables los valores; nada se calcula a través de un corte.
report-calibration-none-shown = sin calibrar
report-calibration-void-shown = la calibración ya no vale
report-calibration-meter-shown = calibrado con un sonómetro
report-calibration-source-shown = calibrado con una fuente conocida
report-calibration-rough-shown = calibrado con la cifra de un teléfono, aproximado
report-distance-unknown-shown = distancia desconocida
report-time-energy-mean-shown = media energética de la parte sonora
report-all-left-out-shown = Todo lo dejado fuera
report-all-events-shown = Todas las detenciones y notas
report-all-programme-shown = Todos los cambios en el programa
report-all-breaks-shown = Todos los cortes
report-client-title-shown = Su práctica, { $client }
report-client-span-shown = { $span }
report-client-nothing-shown = En estas semanas no ha practicado. Puede volver a empezar cuando le venga bien.
report-client-days-shown = { $days ->
    [one] Ha practicado 1 día.
   *[other] Ha practicado { $days } días.
}
report-client-days-planned-shown = Ha practicado { $days ->
    [one] 1 día
   *[other] { $days } días
}; { $planned ->
    [one] había 1 previsto.
   *[other] había { $planned } previstos.
}
report-client-weeks-shown = { $weeks ->
    [one] Su última semana
   *[other] Sus últimas { $weeks } semanas
}
report-client-weeks-key-shown = Círculo lleno: practicó. Círculo vacío: no practicó.
report-client-weeks-described-shown = { $list }.
report-client-week-described-shown = semana del { $day }: { $days ->
    [one] 1 día
   *[other] { $days } días
}
report-client-goals-shown = Sus objetivos
report-client-goal-met-shown = «{ $words }» Logrado.
report-client-goal-not-met-shown = «{ $words }» No logrado. Puede mirarlo con su logopeda.
report-client-goal-time-left-shown = «{ $words }» Todavía no. Hay tiempo hasta el { $due }.
report-client-goal-too-early-shown = «{ $words }» Es demasiado pronto para decirlo.
report-client-moments-shown = Cuando su voz respondió
report-client-moment-text-shown = { $date }: «{ $text }»
report-client-moment-sound-shown = { $date }: usted contó uno. Su grabación se guarda hasta el { $until }.
report-client-voice-shown = Su voz
report-client-hold-first-shown = { $exercise }: unos { $now } segundos hasta ahora. Es demasiado pronto para decir qué es lo habitual en usted.
report-client-hold-early-shown = { $exercise }: suele mantenerla unos { $now } segundos. Es demasiado pronto para decir si eso cambia.
report-client-hold-same-shown = { $exercise }: unos { $now } segundos ahora, unos { $first } al principio. Está dentro de sus altibajos habituales.
report-client-hold-more-shown = { $exercise }: unos { $now } segundos ahora, unos { $first } al principio. Es más, por encima de sus altibajos habituales.
report-client-hold-less-shown = { $exercise }: unos { $now } segundos ahora, unos { $first } al principio. Es menos, por debajo de sus altibajos habituales. Puede mirarlo con su logopeda.
report-client-vowel-early-shown = Volumen en { $exercise }: es demasiado pronto para decir si cambia.
report-client-vowel-same-shown = Volumen en { $exercise }: más o menos como al principio.
report-client-vowel-more-shown = Volumen en { $exercise }: ha subido en este único sonido. Eso no dice lo fuerte que habla en su día a día.
report-client-vowel-less-shown = Volumen en { $exercise }: ha bajado en este único sonido. Puede mirarlo con su logopeda.
report-client-level-early-shown = Volumen en { $exercise }: es demasiado pronto para decir si cambia.
report-client-level-same-shown = Volumen en { $exercise }: más o menos como al principio.
report-client-level-more-shown = Volumen en { $exercise }: más fuerte que al principio, por encima de sus altibajos habituales.
report-client-level-less-shown = Volumen en { $exercise }: más suave que al principio, por debajo de sus altibajos habituales. Puede mirarlo con su logopeda.
report-client-range-early-shown = Extensión de grave a agudo en { $exercise }: es demasiado pronto para decir si cambia.
report-client-range-same-shown = Extensión de grave a agudo en { $exercise }: más o menos como al principio.
report-client-range-more-shown = Extensión de grave a agudo en { $exercise }: más amplia que al principio, por encima de sus altibajos habituales.
report-client-range-less-shown = Extensión de grave a agudo en { $exercise }: más estrecha que al principio, por debajo de sus altibajos habituales. Puede mirarlo con su logopeda.
report-client-microphone-shown = El micrófono o su sitio cambió el { $date }; «al principio» es desde entonces.
report-client-programme-shown = Lo que ha cambiado en su programa
report-client-change-added-shown = Nuevo: { $exercise }.
report-client-change-removed-shown = Ya no: { $exercise }.
report-client-change-dose-shown = Cambiado: { $exercise }.
report-client-change-repetitions-shown = { $exercise }: ahora { $to } veces.
report-client-change-target-s-shown = { $exercise }: el objetivo es ahora { $to } segundos.
report-client-change-hold-s-shown = { $exercise }: ahora se mantiene { $to } segundos.
report-client-change-plan-shown = Han cambiado sus días u horas.
report-client-care-shown = Si se marea o algo le duele, diga «parar» y dígaselo a su logopeda.
report-client-foot-shown = Estas páginas son para usted y su logopeda. No hacen diagnósticos.
report-written-shown = Guardado en { $file }
report-letter-document-shown = Carta sobre { $client }, { $span }
report-letter-title-shown = Práctica en casa de { $client }
report-letter-intro-shown = Esta carta cuenta lo que se registró en la práctica en casa, { $span }.
report-letter-safety-shown = Detenciones y señales de alarma
report-letter-practice-shown = Práctica
report-letter-dose-shown = Minutos y repeticiones
report-letter-measures-shown = Medidas
report-letter-goals-shown = Objetivos
report-letter-ratings-shown = Valoraciones propias, 0 a 10
report-letter-left-out-shown = Dejado fuera, y por qué
report-letter-programme-shown = Cambios en el programa
report-letter-nothing-shown = Nada registrado.
report-letter-yours-shown = Valoración y firma
report-letter-blank-shown = (a escribir por usted)
report-carer-document-shown = Para quien ayuda a { $client }, { $span }
report-carer-title-shown = Para quien ayude a { $client }
report-carer-wrong-shown = Detenciones y señales de alarma
report-carer-well-shown = Nadie se detuvo por encontrarse mal.
report-carer-tell-shown = Cuénteselo a su logopeda antes de la próxima práctica.
report-carer-waits-shown = A la espera de su logopeda
report-carer-waits-line-shown = Se dejan fuera hasta que su logopeda los autorice: { $list }.
report-carer-how-shown = Cómo va la práctica
report-carer-goals-shown = Objetivos
report-carer-help-shown = Cómo puede ayudar
report-carer-help-1-shown = Procure silencio en la sala, y apague el televisor.
report-carer-help-2-shown = Compruebe que el micrófono esté enchufado y siempre en el mismo sitio.
report-carer-help-3-shown = Si una voz es demasiado suave para oírse, usted puede decir las órdenes: «preparado», «hecho», «parar».
report-carer-help-4-shown = Deje que la persona haga sola los ejercicios. No cuente a la vez, y no le meta prisa.
report-carer-stop-shown = Cuándo terminar una práctica
report-carer-stop-1-shown = Diga «parar» enseguida si alguien se marea, tiene dolor, náuseas o le falta el aliento. Se detiene al instante.
report-carer-stop-2-shown = Si alguien se atraganta, tiene dolor en el pecho o no puede respirar, llame enseguida al teléfono de emergencias.
report-carer-stop-3-shown = No dé comida, bebida ni pastillas durante un ejercicio, salvo que su logopeda haya permitido sorbos pequeños.
report-carer-stop-4-shown = Si la voz suena húmeda, o una comida acaba en tos, dígaselo a su logopeda.
