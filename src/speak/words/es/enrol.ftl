enrol-welcome = Me gustaría aprender cómo dice usted las palabras que yo escucho. Yo digo una palabra y usted la repite, tres veces. No hay prisa, y no tiene que tocar nada.
enrol-what-is-kept = No guardo el sonido de su voz. Guardo cifras de cada palabra: lo fuertes que son sus tonos graves y agudos, instante a instante. Se quedan en este ordenador, y puede pedir que se borren.
enrol-ask-consent = ¿Le parece bien? Responda sí o no, por favor.
enrol-ask-consent-shown = ¿Puedo guardar cifras de cómo dice usted las órdenes? El sonido en sí no se guarda.
enrol-ask-consent-again = Tómese su tiempo. ¿Puedo guardar esas cifras? ¿Sí o no?
enrol-was-that-yes = No tengo la certeza de haberle oído. Si está de acuerdo, diga sí otra vez, por favor.
enrol-agreed = Gracias. Hable como habla siempre, después del tono.
enrol-not-agreed = Me parece perfecto. No se ha guardado nada.
enrol-no-answer = No le he oído, así que lo dejo aquí. No se ha guardado nada.
enrol-say = Diga, por favor: { $word }.
enrol-say-next = Gracias. La próxima es: { $word }.
enrol-once-more = Y de nuevo: { $word }.
    .v1 = Otra vez: { $word }.
enrol-last-time = Una última vez: { $word }.
enrol-say-again = Tómese su tiempo. Diga, por favor: { $word }.
enrol-wait = Aquí estoy. Diga { $word } cuando le apetezca.
enrol-shown = Diga, por favor: { $word }
enrol-heading = Su propia voz · palabra { $number } de { $words }
enrol-heading-consent = Su propia voz
enrol-too-soft = Me ha llegado un poco flojo. Un poco más fuerte, o más cerca del micrófono, por favor: { $word }.
enrol-too-noisy = Hay algo de ruido a su alrededor. Si puede, busque un lugar más tranquilo, y luego diga: { $word }.
enrol-clipped = Eso ha sonado muy cerca. Un poco más lejos, o un poco más suave, por favor: { $word }.
enrol-too-long = Ha sido más largo de lo que esperaba. Solo esto, por favor: { $word }.
enrol-too-short = Solo he captado una parte. Dígalo de nuevo, por favor: { $word }.
enrol-in-two = He oído dos cosas. Solo esto, por favor: { $word }.
enrol-too-early = Ha sido un poco pronto. Después del tono, por favor: { $word }.
enrol-sounded-like = A mí me ha sonado a { $other }. Diga, por favor: { $word }.
enrol-leave-out = A mí me ha sonado a { $other }. Si quiere dejar esta palabra, dígalo de nuevo. Si no, diga: { $word }.
enrol-unlike = Esta ha sido bastante distinta de las otras. Dígala como suele decirla, por favor: { $word }.
enrol-near = Eso se parecía a { $other }. Otra vez, por favor: { $word }.
enrol-left-out = Dejamos esa palabra fuera.
enrol-leave-for-now = De momento dejamos esa palabra.
enrol-doubtful-again = De esta todavía tengo dudas. Otra vez, por favor: { $word }.
enrol-halted = Con esto basta por ahora, y está guardado. Diga «seguir» si quiere seguir. Si no, lo dejamos aquí.
enrol-halted-shown = Diga «seguir», o guarde silencio
enrol-going-on = Seguimos.
enrol-learnt = { $surer ->
    [0] Todavía no he aprendido ninguna palabra.
    [one] Ahora conozco mejor una de sus palabras.
   *[other] Ahora conozco mejor { SPOKEN($surer) } de sus palabras.
}
enrol-doubtful = { $doubtful ->
    [one] Todavía tengo dudas de una: { $names }. Puede decírmela otro día.
   *[other] Todavía tengo dudas de { SPOKEN($doubtful) }: { $names }. Puede decírmelas otro día.
}
enrol-thanks = Gracias. Las usaré desde la próxima práctica.
enrol-summary-head = Las palabras de { $client }
enrol-summary-surer = ahora mejor conocidas
enrol-summary-doubtful = todavía con dudas
enrol-none-kept = No se guarda nada sobre la voz de { $client }.
enrol-forgotten = Borrado: { $words ->
    [one] una palabra
   *[other] { $words } palabras
} de { $client }.
