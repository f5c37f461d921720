# Lo que se dice en lugar de una línea que pide una orden hablada, donde no se oyen órdenes: KEY-by-key por KEY.

ask-ready-first-by-key = Siéntese con la espalda recta y los dos pies en el suelo. Pulse la barra espaciadora o «preparado» cuando quiera empezar.
ask-ready-by-key = Siéntese con la espalda recta y los dos pies en el suelo, y luego pulse la barra espaciadora o «preparado».
ask-position-by-key = Pulse la barra espaciadora o «preparado» cuando esté en posición.
ask-rest-over-by-key = Descanse todo lo que quiera. Pulse la barra espaciadora o «preparado» para continuar.
ask-ready-again-by-key = Tómese su tiempo. Pulse la barra espaciadora o «preparado» cuando lo esté.
ask-ready-once-more-by-key = No hay prisa. Pulse la barra espaciadora o «preparado» para continuar.
wait-for-ready-by-key = Aquí estoy. Pulse la barra espaciadora o «preparado» cuando le apetezca.
knock-will-do-by-key = Cuando haya tragado, pulse la barra espaciadora o «hecho», o dé dos golpes en la mesa.
skipped-by-key = Dejamos fuera { $name }. Pulse V o «volver» si al final quiere hacerlo.
done-again-by-key = Tómese su tiempo. Pulse la barra espaciadora o «hecho» cuando lo haya hecho.
done-once-more-by-key = No hay prisa. Pulse la barra espaciadora o «hecho» cuando acabe.
wait-for-done-by-key = Aquí estoy. Pulse la barra espaciadora o «hecho» cuando le apetezca.
ask-sip-by-key = Tome un sorbo pequeño, si su logopeda lo permite. Tráguelo todo, y luego pulse la barra espaciadora o «hecho».
ask-sip-again-by-key = Pulse la barra espaciadora o «hecho» cuando lo haya tragado todo.
stopped-by-key = Me quedo en silencio. Pulse la barra espaciadora para seguir, S para saltar o Q para terminar.
paused-by-key = Tómese su tiempo. Pulse la barra espaciadora cuando quiera seguir.
resting-by-key = Descanse. Pulse la barra espaciadora o «preparado» cuando quiera continuar.
dry-sip-by-key = Tome un sorbo pequeño si quiere, y trágueselo todo. Pulse la barra espaciadora o «preparado» cuando quiera continuar.
dry-lips-by-key = Humedézcase los labios, y tómese su tiempo. Pulse la barra espaciadora o «preparado» cuando quiera continuar.
halted-reminder-by-key = Sigo aquí. Pulse la barra espaciadora para seguir, o Q para terminar.
finishing-by-key = Termino aquí. Pulse la barra espaciadora para continuar la práctica.
finishing-shown-by-key = Terminando. La barra espaciadora o «seguir» continúa la práctica.
help-go-on-by-key = Pulse la barra espaciadora cuando quiera seguir, S para el ejercicio siguiente, o Q para terminar.
all-right-by-key = Bien. Pulse la barra espaciadora cuando quiera seguir, o Q para terminar.
emergency-or-fine-by-key = Si ya se le ha pasado, pulse Q o «estoy bien».
unwell-go-on-by-key = Pulse la barra espaciadora para el ejercicio siguiente, o Q para terminar.
questions-first-by-key = { $n ->
    [one] Una pregunta corta antes de acabar.
   *[other] { SPOKEN($n) } preguntas cortas antes de acabar.
} Pulse S en las que prefiera no responder, o Q para terminar.
questions-unwell-by-key = La práctica ha terminado. Pulse Q o «estoy bien» cuando lo esté.
ready-not-understood-by-key = He oído a alguien, pero aquí no oigo órdenes habladas. Pulse la barra espaciadora o «preparado».
done-not-understood-by-key = He oído a alguien, pero aquí no oigo órdenes habladas. Cuando lo haya hecho, pulse la barra espaciadora o «hecho».
ask-moment-again-by-key = Tómese su tiempo. Cuénteme un momento así, o pulse S.
ask-rating-again-by-key = Tómese su tiempo. Elija un número en la página, o pulse S para saltar la pregunta.
ex-word-questions-instruction-by-key = Yo le doy una definición, y usted dice la palabra. Tómese su tiempo. Cuando la haya dicho, pulse la barra espaciadora o «hecho», y le diré la mía.
ex-word-questions-short-by-key = Yo le doy una definición, y usted dice la palabra. Después pulse la barra espaciadora o «hecho».
ex-category-naming-instruction-by-key = Le doy una categoría. Nombre tantas cosas de ella como se le ocurran, una tras otra, con voz clara. Yo llevo el tiempo.

# Lo que se dice en lugar de una línea que cuenta con entender una respuesta, donde solo se oyen órdenes: KEY-by-command por KEY.

ex-word-questions-instruction-by-command = Yo le doy una definición, y usted dice la palabra. Tómese su tiempo. Después diga «hecho», y le diré la mía.
ex-word-questions-short-by-command = Yo le doy una definición, y usted dice la palabra. Después diga «hecho».
ex-category-naming-instruction-by-command = Le doy una categoría. Nombre tantas cosas de ella como se le ocurran, una tras otra, con voz clara. Yo llevo el tiempo.
stop-by-hand-by-command = Mientras hablo, puede que no le oiga. Pulse entonces Escape y me callo. En la página es el botón rojo.

# Donde no se oye con qué se empieza una práctica, se empieza en la página.
attend-waiting-shown-by-key = En espera. Empiece en la página.
attend-invite-by-key = A { $time } toca { $the }. Empiece en la página cuando quiera.
attend-invite-for-by-key = { $name }, a { $time } toca { $the }. Empiece en la página cuando quiera.
attend-invite-again-by-key = Sigo aquí para { $the }. Empiece en la página cuando quiera.
attend-invite-again-for-by-key = { $name }, sigo aquí para { $the }. Empiece en la página cuando quiera.
