ask-sound = En la página de configuración alguien ha pedido guardar grabaciones de sus prácticas durante { $days ->
    [one] un día
   *[other] { SPOKEN($days) } días
}, solo en este ordenador. ¿Le parece bien? ¿Sí o no?
ask-sound-shown = ¿Guardar grabaciones de sus prácticas durante { $days ->
    [one] un día
   *[other] { $days } días
}?
ask-sound-again = Las grabaciones de sus prácticas se guardan durante { $days ->
    [one] un día
   *[other] { SPOKEN($days) } días
}. ¿Le sigue pareciendo bien? ¿Sí o no?
ask-sound-again-shown = ¿Seguir guardando grabaciones de sus prácticas?
sound-agreed = Gracias. Las grabaciones se guardan, y se borran después de { $days ->
    [one] un día
   *[other] { SPOKEN($days) } días
}.
sound-not-agreed = De acuerdo. No se guarda ninguna grabación.
sound-unanswered = De acuerdo. Se lo preguntaré otro día.
sound-kept-shown = La grabación de esta práctica se guarda hasta el { $date }.
sound-over-shown = Ya no se guarda la grabación de esta práctica: { $why }
sound-withdrawn-shown = se ha retirado el consentimiento.
sound-too-slow-shown = el disco es demasiado lento.
