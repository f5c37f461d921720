handout-for-shown = Para { $client }
handout-about-shown = { $minutes ->
    [one] alrededor de un minuto
   *[other] unos { $minutes } minutos
}
handout-seated-shown = Siéntese con la espalda recta y los dos pies en el suelo, salvo que se indique otra cosa.
handout-every-day-shown = todos los días a las { $times }
handout-on-days-shown = { $days } a las { $times }
handout-and-shown = { $before } y { $last }
handout-times-shown = { $sets ->
    [one] { $n ->
        [one] una vez
        [2] dos veces
       *[other] { $n } veces
    }
   *[other] { $sets } series de { $n }
}
handout-goal-shown = objetivo: { $s } segundos
handout-no-goal-shown = mientras sea cómodo
handout-ladder-shown = por escalones: { $rungs }
handout-setting-shown = ajuste: { $setting }
handout-held-shown = mantenido { $s } segundos
handout-phase-shown = { $name } { $s } s
handout-phases-shown = { $phases }
handout-counts-shown = dentro en { $in }, fuera en { $out }
handout-next-on-done-shown = diga «{ $done }» después de cada uno
handout-next-on-cue-shown = uno a cada aviso
handout-phrases-shown = { $n ->
    [one] una frase
   *[other] { $n } frases
}
handout-talk-shown = { $s } segundos
handout-passage-shown = una vez, a su ritmo
handout-questions-shown = { $n ->
    [one] una pregunta
   *[other] { $n } preguntas
}
handout-categories-shown = { $n ->
    [one] una categoría
   *[other] { $n } categorías
}
handout-minute-shown = tantas como se le ocurran en { $s } segundos
handout-syllables-shown = «{ $syllables }» durante { $s } segundos
handout-rest-length-shown = { $s } segundos
handout-rest-ready-shown = hasta que diga «{ $ready }»
handout-rest-between-shown = descanso de { $s } s entre medias
handout-sips-shown = { $every ->
    [one] un sorbo pequeño después de cada uno
   *[other] un sorbo pequeño cada { $every }
}
handout-posture-lying-shown = boca arriba
handout-posture-standing-shown = de pie, con la mano en una silla firme
handout-word-shown = { $name }: más de lo habitual. Lo ha autorizado { $who } ({ $why }).
handout-word-whole-shown = Más práctica de lo habitual. Lo ha autorizado { $who } ({ $why }).
handout-grows-shown = aumenta con las semanas hasta { $goal }
handout-say-title-shown = Diga
handout-say-ready-shown = «{ $word }» para empezar
handout-say-done-shown = «{ $word }» cuando haya hecho uno
handout-say-stop-shown = «{ $word }» en cualquier momento
handout-say-pause-shown = «{ $word }» para aguardar
handout-say-help-shown = «{ $word }» para oírlo de nuevo
handout-say-finish-shown = «{ $word }» para acabar por hoy
handout-care-shown = Precaución: { $list }.
handout-not-for-shown = No es para, salvo que su logopeda diga otra cosa: { $list }.
handout-stop-title-shown = Deténgase enseguida si hay
handout-stop-unwell-shown = Mareo, desvanecimiento, falta de aliento o dolor. Si dura, llame a alguien.
handout-stop-swallow-shown = Tos, atragantamiento o voz húmeda: hoy no más ejercicios de tragar. Dígaselo a su logopeda.
handout-stop-emergency-shown = Dolor en el pecho, debilidad repentina, dificultad para hablar: llame a emergencias.
handout-asked-shown = Preguntas cortas al final: diga «saltar» para dejar una.
handout-asked-weekly-shown = Una vez por semana, unas preguntas cortas al final: diga «saltar» para dejar una.
handout-asked-both-shown = Preguntas cortas al final, y una vez por semana alguna más: diga «saltar» para dejar una.
handout-foot-shown = Una ayuda para practicar. No hace diagnósticos. Lo que diga su logopeda va primero.
handout-page-shown = Página { $page } de { $pages }
care-voice-strain-shown = déjelo si le duele o se le tensa la garganta
care-voice-hoarse-shown = no con ronquera
care-voice-no-force-shown = hágalo cómodo
care-bearing-down-shown = no haga fuerza con el vientre
care-straw-water-shown = pajita al aire, en agua solo si está permitido
care-stand-safely-shown = de pie tras una silla firme, con una mano en ella
care-sit-upright-shown = espalda recta, pies en el suelo
care-swallow-assessed-shown = solo como le enseñó su logopeda
care-saliva-only-shown = solo saliva, boca vacía
care-clear-mouth-shown = primero, boca vacía
care-gentle-bite-shown = sujete la lengua con suavidad
care-residue-shown = después, trague otra vez
care-breath-break-heart-shown = con problemas de corazón, solo si está permitido
care-sip-rules-shown = sorbos solo si su logopeda lo permite
care-keep-breathing-shown = siga respirando
care-lie-flat-shown = déjelo si al tumbarse le falta el aliento
care-neck-soreness-shown = déjelo si el dolor es agudo
care-static-effort-shown = tensión alta: pregunte antes
care-rise-slowly-shown = después, gírese y siéntese dos minutos
care-jaw-pain-shown = déjelo si la mandíbula duele o se traba
care-neck-signs-shown = déjelo con mareo, náuseas, hormigueo o visión doble
care-neck-range-shown = despacio, y solo hasta donde sea cómodo
care-shoulder-pain-shown = círculos pequeños si duele
care-face-comfort-shown = déjelo si duele
care-breathe-through-nose-shown = respire por la nariz
care-dentures-shown = dentadura bien sujeta, o fuera
care-light-headed-shown = con mareo, respire como quiera
care-no-forcing-shown = sin fuerza, nunca aguante la respiración
care-set-by-clinician-shown = solo como le enseñó y ajustó su logopeda
care-spoon-clean-shown = cuchara limpia y lisa, delante en la boca
care-syllable-tired-shown = déjelo cuando se cansen labios o lengua
care-game-enjoy-shown = déjelo cuando quiera
