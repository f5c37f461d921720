attend-say-mine = empezar mi práctica | empezar la práctica | quiero empezar mi práctica
attend-say-called = empezar { $called } | empezar con { $called } | empezar { $called } por favor
attend-say-called-plain = empezar { $called } | empezar { $called } por favor
attend-say-for = empezar para { $name } | empezar para { $name } por favor
attend-say-for-two = empezar para { $first } y { $second } | empezar para { $second } y { $first }
attend-say-for-both = empezar para los dos | empezar para las dos
attend-say-for-all = empezar para todos | empezar para todas
attend-say-for-unknown = empezar para
attend-say-for-and-unknown = empezar para { $name } y
attend-say-name = { $name } | para { $name }
attend-say-which = { $called } | la de { $called }
attend-say-which-plain = { $called }
attend-say-not-now = ahora no | quizá más tarde | más tarde por favor | más tarde
attend-say-never-mind = da igual | terminar por hoy | basta por hoy | olvídelo
attend-say-left = qué queda hoy | qué queda por hacer
attend-say-how = cómo ha ido | qué tal ha ido
attend-say-thanks = gracias | de acuerdo | ya voy
attend-waiting-shown = A la escucha. Diga «empezar mi práctica».
attend-next-shown = A continuación: { $called }, { $clock }
attend-next-shown-for = A continuación: { $called } para { $name }, { $clock }
attend-start-unheard-shown = Sin un modelo de reconocimiento no oigo en este idioma con qué se empieza una práctica: empiece en la página. Las órdenes durante la práctica sí las oigo. Con un modelo Vosk propio: --model.
attend-deaf-shown = No oigo nada
attend-time-full = { $hour ->
    [one] la una en punto
   *[other] las { SPOKEN($hour) } en punto
}
attend-time-quarter-past = { $hour ->
    [one] la una y cuarto
   *[other] las { SPOKEN($hour) } y cuarto
}
attend-time-half-past = { $hour ->
    [one] la una y media
   *[other] las { SPOKEN($hour) } y media
}
attend-time-quarter-to = { $hour ->
    [one] la una menos cuarto
   *[other] las { SPOKEN($hour) } menos cuarto
}
attend-time-past = { $hour ->
    [one] la una y { SPOKEN($past) }
   *[other] las { SPOKEN($hour) } y { SPOKEN($past) }
}
attend-time-to = { $hour ->
    [one] la una menos { SPOKEN($past) }
   *[other] las { SPOKEN($hour) } menos { SPOKEN($past) }
}
attend-invite = A { $time } toca { $the }. Diga «empezar mi práctica» cuando quiera.
attend-invite-for = { $name }, a { $time } toca { $the }. Diga «empezar para { $name }» cuando quiera.
attend-invite-again = Sigo aquí para { $the }. Diga «empezar mi práctica» cuando quiera, o diga «más tarde».
attend-invite-again-for = { $name }, sigo aquí para { $the }. Diga «empezar para { $name }» cuando quiera, o diga «más tarde».
attend-postponed = De acuerdo. Preguntaré de nuevo dentro de media hora.
attend-left-alone = De acuerdo. Por hoy lo dejamos. Puede empezar igualmente cuando quiera.
attend-starting = Sí. Un instante.
attend-starting-for = Para { $name }. Un instante.
attend-for-whom-two = ¿Para quién es? ¿{ $first }, o { $second }?
attend-for-whom-more = ¿Para quién es? Diga el nombre, por favor.
attend-who-first-two = Guío a una sola persona cada vez. ¿Quién empieza? ¿{ $first }, o { $second }?
attend-who-first-more = Guío a una sola persona cada vez. ¿Quién empieza? Diga el nombre, por favor.
attend-unknown-name = No conozco ese nombre. Conozco a { $names } y a { $last }. ¿Para quién es?
attend-unknown-name-one = No conozco ese nombre. Conozco a { $name }.
attend-which-two = ¿Cuál? ¿{ $first }, o { $second }?
attend-which-more = ¿Cuál? Diga cómo se llama, por favor.
attend-dropped = De acuerdo.
attend-confirm = ¿Ha dicho: { $said }? ¿Sí o no?
attend-again-mine = empezar mi práctica
attend-again-for = empezar para { $name }
attend-again-called = empezar { $the }
attend-again-not-now = ahora no
attend-again-left = qué queda hoy
attend-again-how = cómo ha ido
attend-not-begun = La práctica no ha podido empezar. La pantalla dice por qué.
attend-articles = el | la | los | las | mi | nuestra
attend-the-called = { $called }
attend-he = Él
attend-she = Ella
attend-they = La persona
attend-left-today = Queda por hacer: { $the }, a { $time }.
attend-left-today-for = Queda por hacer: { $the } para { $name }, a { $time }.
attend-left-undated = Hoy queda por hacer: { $the }.
attend-left-undated-for = A { $name } hoy le queda por hacer: { $the }.
attend-left-none = Hoy no queda nada por hacer.
attend-told-nobody = Hoy todavía no ha practicado nadie.
attend-told-all = { $who } ha hecho { $all ->
    [one] el único ejercicio
   *[other] los { SPOKEN($all) } ejercicios
}.
attend-told-part = { $who } ha hecho { SPOKEN($done) } de { SPOKEN($all) }.
attend-told-none = { $who } ha empezado, pero no ha hecho ninguno de { SPOKEN($all) }.
attend-told-left-one = { $who } ha hecho { SPOKEN($done) } de { SPOKEN($all) }; ha quedado fuera: { $first }.
attend-told-left-two = { $who } ha hecho { SPOKEN($done) } de { SPOKEN($all) }; han quedado fuera: { $first } y { $second }.
attend-told-left-more = { $who } ha hecho { SPOKEN($done) } de { SPOKEN($all) }; han quedado fuera { SPOKEN($left) }.
attend-told-pain = Algo ha dolido durante la práctica.
attend-told-dizzy = Ha habido mareo durante la práctica.
attend-told-help = Se ha pedido ayuda durante la práctica.
attend-told-chest-pain = Ha habido dolor en el pecho durante la práctica.
attend-told-cant-breathe = Ha habido dificultad para respirar durante la práctica.
attend-told-choking = Ha habido un atragantamiento durante la práctica.
attend-told-sick = Ha habido náuseas durante la práctica.
attend-early-chest-pain = Ha acabado antes: ha habido dolor en el pecho.
attend-early-cant-breathe = Ha acabado antes: ha habido dificultad para respirar.
attend-early-choking = Ha acabado antes: ha habido un atragantamiento.
attend-early-sick = Ha acabado antes: ha habido náuseas.
attend-early-unwell = Ha acabado antes: algo no iba bien.
attend-early-pain = Ha acabado antes: algo ha dolido.
attend-early-dizzy = Ha acabado antes: ha habido mareo.
attend-early-help = Ha acabado antes, tras una petición de ayuda.
attend-early-finished = Ha acabado antes, por decisión propia.
attend-early-no-answer = Ha acabado antes: no ha habido respuesta.
attend-early-no-agreement = No se ha hecho nada: falta la autorización de su logopeda.
attend-early-broken-off = Se ha interrumpido.
attend-notice-pain = { $name } dice que le duele. Vaya a ver, por favor.
attend-notice-pain-during = { $name } ha dicho que le dolía durante el ejercicio { $exercise }. Vaya a ver, por favor.
attend-notice-dizzy = { $name } tiene mareo. Vaya a ver, por favor.
attend-notice-dizzy-during = { $name } ha tenido mareo durante el ejercicio { $exercise }. Vaya a ver, por favor.
attend-notice-chest-pain = { $name } dice que tiene dolor en el pecho. Vaya ahora mismo, por favor.
attend-notice-chest-pain-during = { $name } ha tenido dolor en el pecho durante el ejercicio { $exercise }. Vaya ahora mismo, por favor.
attend-notice-cant-breathe = { $name } dice que no puede respirar. Vaya ahora mismo, por favor.
attend-notice-cant-breathe-during = { $name } ha respirado con dificultad durante el ejercicio { $exercise }. Vaya ahora mismo, por favor.
attend-notice-choking = { $name } se ha atragantado. Vaya ahora mismo, por favor.
attend-notice-choking-during = { $name } se ha atragantado durante el ejercicio { $exercise }. Vaya ahora mismo, por favor.
attend-notice-sick = { $name } tiene náuseas. Vaya a ver, por favor.
attend-notice-sick-during = { $name } ha tenido náuseas durante el ejercicio { $exercise }. Vaya a ver, por favor.
attend-notice-help = { $name } ha pedido ayuda. Vaya a ver, por favor.
attend-notice-no-answer = { $name } ya no responde. Vaya a ver, por favor.
attend-notice-missed = { $name } a menudo no ha respondido. Vaya a ver, por favor.
attend-notice-thanks = Diga «gracias» cuando haya oído esto.
attend-notice-answered = Bien.
attend-deaf-gone = No oigo a nadie: mi micrófono no está conectado. Compruebe que esté enchufado, por favor.
attend-deaf-silent = No oigo a nadie: de mi micrófono no llega ningún sonido. Compruebe si está apagado, por favor.
attend-deaf-words = Ahora mismo no entiendo a nadie. Reinícieme, por favor.
attend-tell-faults = Avise a { $whom }, por favor.
attend-hears-again = Vuelvo a oír.
