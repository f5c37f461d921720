## Voz

ex-long-ah-name = A larga
ex-long-ah-purpose = Sirve para entrenar una voz fuerte y estable en una sola espiración.
ex-long-ah-instruction = Siéntese con la espalda recta y tome aire. Luego mantenga una a en un tono medio, mientras siga estable.
ex-long-ah-short = La a larga, clara y estable.
ex-long-ah-cue = Tome aire… y a.
ex-long-ah-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-comfortable-ah-name = A cómoda
ex-comfortable-ah-purpose = Sirve para mostrar su voz tal como es.
ex-comfortable-ah-instruction = Diga a durante unos cinco segundos, con el tono y el volumen con los que habla.
ex-comfortable-ah-short = Una a normal, como al hablar.
ex-comfortable-ah-cue = Tome aire… y una a cómoda.
ex-comfortable-ah-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-high-ee-name = I aguda
ex-high-ee-purpose = Sirve para extender su voz hacia el agudo.
ex-high-ee-instruction = Tome aire, cante una i aguda y ligera, y manténgala unos segundos. Suba, pero sin empujar.
ex-high-ee-short = La i aguda, ligera y cómoda.
ex-high-ee-cue = Tome aire… y una i aguda.
ex-high-ee-care = Suba solo hasta donde sea cómodo, y déjelo si nota mareo.

ex-glide-up-name = Deslizar hacia el agudo
ex-glide-up-purpose = Sirve para mantener amplia la extensión de su voz.
ex-glide-up-instruction = Empiece en su nota cómoda más grave, y deslice una a sin cortes hasta su nota cómoda más aguda.
ex-glide-up-short = Deslice de grave a agudo.
ex-glide-up-cue = Tome aire… empiece en grave, y suba.
ex-glide-up-care = Quédese en notas cómodas, y déjelo si nota mareo.

ex-glide-down-name = Deslizar hacia el grave
ex-glide-down-purpose = Sirve para mantener amplia la extensión de su voz.
ex-glide-down-instruction = Empiece en su nota cómoda más aguda, y deslice una a sin cortes hasta su nota cómoda más grave.
ex-glide-down-short = Deslice de agudo a grave.
ex-glide-down-cue = Tome aire… empiece en agudo, y baje.
ex-glide-down-care = Quédese en notas cómodas, y déjelo si nota mareo.

ex-functional-phrases-name = Frases propias
ex-functional-phrases-purpose = Sirve para llevar su voz fuerte a las frases que usa cada día.
ex-functional-phrases-instruction = Yo digo una frase de su día a día. Repítala con voz fuerte.
ex-functional-phrases-short = Sus propias frases, con voz fuerte.
ex-functional-phrases-cue = Su turno.

ex-counting-on-a-breath-name = Contar en una espiración
ex-counting-on-a-breath-purpose = Sirve para que la voz le dure toda la espiración.
ex-counting-on-a-breath-instruction = Yo cuento. Tome aire, y cuente lo mismo en esa sola espiración, tan claro al final como al principio.
ex-counting-on-a-breath-short = Cuente después de mí, todo en una espiración.
ex-counting-on-a-breath-cue = Su turno.
ex-counting-on-a-breath-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-days-on-a-breath-name = Días en una espiración
ex-days-on-a-breath-purpose = Sirve para que la voz le dure toda la espiración.
ex-days-on-a-breath-instruction = Yo digo algunos días de la semana. Tome aire, y dígalos en esa sola espiración, tan claro al final como al principio.
ex-days-on-a-breath-short = Diga los días después de mí, todos en una espiración.
ex-days-on-a-breath-cue = Su turno.
ex-days-on-a-breath-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-reading-passage-name = Texto de lectura
ex-reading-passage-purpose = Sirve para llevar la voz por una página entera, y para mostrar su nivel y sus silencios.
ex-reading-passage-instruction = En la pantalla, o en su hoja, hay un cuento breve. Léalo en voz alta de principio a fin, a su ritmo.
ex-reading-passage-short = Lea el cuento en voz alta, a su ritmo.
ex-reading-passage-cue = Empiece cuando quiera.

ex-talk-on-a-prompt-name = Hablar
ex-talk-on-a-prompt-purpose = Sirve para llevar la voz a la conversación de cada día.
ex-talk-on-a-prompt-instruction = Le pregunto por algo. Hable con libertad, y yo le aviso cuando pase el tiempo.
ex-talk-on-a-prompt-short = Hable con libertad hasta que pase el tiempo.
ex-talk-on-a-prompt-cue = Hábleme de algo que le guste hacer.

ex-loudness-steps-name = Escalones de volumen
ex-loudness-steps-purpose = Sirve para que domine lo fuerte que habla.
ex-loudness-steps-instruction = Mantenga una a por escalones: suave, media, fuerte y otra vez media. Que cada escalón sea claro, y nunca fuerce.
ex-loudness-steps-short = Una a por escalones: suave, media, fuerte.
ex-loudness-steps-cue = Tome aire… y a.
ex-loudness-steps-rung-low = Tome aire… una a suave.
ex-loudness-steps-rung-middle = Tome aire… una a media.
ex-loudness-steps-rung-high = Tome aire… una a fuerte.
ex-loudness-steps-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-pitch-steps-name = Escalones de tono
ex-pitch-steps-purpose = Sirve para que domine el tono de su voz.
ex-pitch-steps-instruction = Mantenga una a por escalones: grave, en el medio, aguda, y de vuelta al medio. Quédese en notas cómodas.
ex-pitch-steps-short = Una a por escalones: grave, media, aguda.
ex-pitch-steps-cue = Tome aire… y a.
ex-pitch-steps-rung-low = Tome aire… una a grave.
ex-pitch-steps-rung-middle = Tome aire… una a en el medio.
ex-pitch-steps-rung-high = Tome aire… una a aguda.
ex-pitch-steps-care = Quédese en notas cómodas, y déjelo si nota mareo.

ex-sentence-melody-name = Entonación
ex-sentence-melody-purpose = Sirve para que se oiga si pregunta o afirma.
ex-sentence-melody-instruction = Yo digo una frase, como pregunta o como afirmación. Repítala. Suba la voz al final de una pregunta, y bájela al final de una afirmación.
ex-sentence-melody-short = Repita cada frase: las preguntas suben, las afirmaciones bajan.
ex-sentence-melody-cue = Su turno.

ex-sentence-stress-name = Énfasis
ex-sentence-stress-purpose = Sirve para que destaque la palabra que importa.
ex-sentence-stress-instruction = Yo digo una frase que contrapone dos palabras. Repítala, y haga destacar esas dos palabras.
ex-sentence-stress-short = Repita cada frase, y haga destacar las palabras que importan.
ex-sentence-stress-cue = Su turno.

ex-paced-phrases-name = Frases a compás
ex-paced-phrases-purpose = Sirve para hablar con más calma, y que cada palabra se entienda. A unas personas les ayuda, y a otras no.
ex-paced-phrases-instruction = Yo digo una frase y cuento cuatro tiempos. Luego dígala al mismo compás, una palabra en cada tiempo. Un punto en la pantalla marca el compás.
ex-paced-phrases-short = Cuento cuatro. Luego diga la frase, una palabra en cada tiempo.
ex-paced-phrases-cue = Su turno.

ex-easy-hum-name = Tarareo suave
ex-easy-hum-purpose = Sirve para que la voz se relaje después de trabajar fuerte.
ex-easy-hum-instruction = Cierre los labios sin apretar, y haga una eme suave, que le vibren los labios.
ex-easy-hum-short = Una eme suave, con vibración en los labios.
ex-easy-hum-cue = Tome aire… y eme.
ex-easy-hum-care = Suave y cómodo, y déjelo si nota mareo.

ex-straw-voicing-name = Voz por una pajita
ex-straw-voicing-purpose = Sirve para que la voz se relaje después de trabajar fuerte.
ex-straw-voicing-instruction = Cierre los labios alrededor de una pajita. Deje salir una u suave, con todo el aire por la pajita.
ex-straw-voicing-short = Una u suave por la pajita.
ex-straw-voicing-cue = Tome aire… y u, por la pajita.
ex-straw-voicing-care = Suave y cómodo, y déjelo si nota mareo.

## Deglución

ex-tongue-hold-swallow-name = Deglución con la lengua sujeta
ex-tongue-hold-swallow-purpose = Busca fortalecer la pared posterior de la faringe. Los estudios discrepan sobre si lo consigue.
ex-tongue-hold-swallow-instruction = Solo con saliva, con la boca vacía. Ponga la punta de la lengua justo por delante de los incisivos, sujétela ahí con suavidad entre los dientes, y trague.
ex-tongue-hold-swallow-short = Punta de la lengua entre los dientes, y trague. Solo saliva.
ex-tongue-hold-swallow-cue = Lengua entre los dientes… y trague.
ex-tongue-hold-swallow-before = Deglución con la lengua sujeta. No la haga si le quedan restos en la garganta al tragar, o si su laringe se mueve poco; nunca con comida, bebida o pastillas en la boca.
ex-tongue-hold-swallow-care = Solo saliva, sin nada más en la boca.

ex-mid-swallow-hold-name = Deglución mantenida
ex-mid-swallow-hold-purpose = Busca mantener la laringe arriba más tiempo, para que la entrada del esófago siga abierta.
ex-mid-swallow-hold-instruction = Trague, y note cómo sube la laringe. Cuando esté arriba del todo, apriete y manténgala ahí unos segundos. Luego déjela bajar, y suelte el aire.
ex-mid-swallow-hold-short = Trague, manténgala arriba, y déjela bajar.
ex-mid-swallow-hold-cue = Trague… y manténgala arriba.
ex-mid-swallow-hold-before = Deglución mantenida. Se contiene la respiración. No la haga con enfermedad del corazón, arritmia, tensión alta, enfermedad pulmonar o falta de aliento, o tras un ictus reciente.
ex-mid-swallow-hold-care = Empiece con la boca vacía, y respire libremente entre degluciones.

ex-effortful-swallow-name = Deglución con esfuerzo
ex-effortful-swallow-purpose = Busca fortalecer juntas la lengua y la garganta. En el párkinson, un estudio pequeño halló resultados dispares.
ex-effortful-swallow-instruction = Junte saliva. Luego trague con toda la fuerza que pueda, como si tuviera que bajar un bocado grande. Apriete con la lengua y la garganta.
ex-effortful-swallow-short = Trague con fuerza, con la lengua y la garganta.
ex-effortful-swallow-cue = Y trague con fuerza.
ex-effortful-swallow-before = Deglución con esfuerzo. Se contiene la respiración. No la haga con enfermedad del corazón, arritmia, tensión alta, enfermedad pulmonar o falta de aliento, o tras un ictus reciente.
ex-effortful-swallow-care = Empiece con la boca vacía, y respire libremente entre degluciones.

## Cabeza y cuello

ex-head-lift-sustained-name = Elevar la cabeza, mantenida
ex-head-lift-sustained-purpose = Busca fortalecer los músculos de debajo del mentón que abren la entrada del esófago.
ex-head-lift-sustained-instruction = Túmbese boca arriba, sin almohada. Los dos hombros no se despegan. Levante solo la cabeza, mírese los dedos de los pies, y manténgala arriba mientras respira.
ex-head-lift-sustained-short = Boca arriba. Levante solo la cabeza, mírese los pies, y respire.
ex-head-lift-sustained-cue = Hombros abajo… y arriba.
ex-head-lift-sustained-before = Elevar la cabeza, mantenida. No lo haga con huesos frágiles, hernia, traqueostomía, o problemas de cuello, cabeza, ojos, corazón o tensión; tampoco en el embarazo, tras cirugía abdominal reciente, o si no puede tumbarse en plano y levantarse sin riesgo.
ex-head-lift-sustained-care = Boca arriba, siga respirando, y gírese de lado antes de incorporarse.
ex-head-lift-sustained-phase-lift = Arriba, y respire.

ex-head-lift-repeated-name = Elevar la cabeza, repetida
ex-head-lift-repeated-purpose = Busca fortalecer los músculos de debajo del mentón que abren la entrada del esófago.
ex-head-lift-repeated-instruction = Túmbese boca arriba, sin almohada. Los dos hombros no se despegan. Cada vez que diga «arriba», levante solo la cabeza, mírese los dedos de los pies, y vuelva a apoyarla.
ex-head-lift-repeated-short = Boca arriba. Levante la cabeza, mírese los pies, y vuelva a apoyarla.
ex-head-lift-repeated-cue = Arriba… y abajo.
ex-head-lift-repeated-before = Elevar la cabeza, repetida. No lo haga con huesos frágiles, hernia, traqueostomía, o problemas de cuello, cabeza, ojos, corazón o tensión; tampoco en el embarazo, tras cirugía abdominal reciente, o si no puede tumbarse en plano y levantarse sin riesgo.
ex-head-lift-repeated-care = Boca arriba, siga respirando, y gírese de lado antes de incorporarse.

ex-chin-tuck-ball-name = Mentón contra la pelota, mantenido
ex-chin-tuck-ball-purpose = Busca fortalecer, en la silla, los músculos de debajo del mentón.
ex-chin-tuck-ball-instruction = Siéntese con la espalda recta y una pelota blanda entre el mentón y el pecho. Apriete el mentón contra la pelota, y siga apretando mientras respira.
ex-chin-tuck-ball-short = Apriete el mentón contra la pelota, y respire.
ex-chin-tuck-ball-cue = Espalda recta… y apriete.
ex-chin-tuck-ball-before = Mentón contra la pelota, mantenido. No lo haga con problemas de cuello o de la articulación de la mandíbula, vértebras cervicales frágiles o traqueostomía. Con la tensión alta, pregunte antes a su logopeda.
ex-chin-tuck-ball-care = Siga respirando, y suelte si le duele la mandíbula o el cuello.
ex-chin-tuck-ball-phase-press = Siga apretando, y respire.

ex-chin-tuck-ball-repeated-name = Mentón contra la pelota, repetido
ex-chin-tuck-ball-repeated-purpose = Busca fortalecer, en la silla, los músculos de debajo del mentón.
ex-chin-tuck-ball-repeated-instruction = Siéntese con la espalda recta y una pelota blanda entre el mentón y el pecho. Cada vez que diga «apriete», apriete el mentón contra la pelota, y luego suelte.
ex-chin-tuck-ball-repeated-short = Apriete el mentón contra la pelota, y suelte.
ex-chin-tuck-ball-repeated-cue = Apriete… y suelte.
ex-chin-tuck-ball-repeated-before = Mentón contra la pelota, repetido. No lo haga con problemas de cuello o de la articulación de la mandíbula, vértebras cervicales frágiles o traqueostomía.
ex-chin-tuck-ball-repeated-care = Siga respirando, y suelte si le duele la mandíbula o el cuello.

ex-neck-turns-name = Giros de cuello
ex-neck-turns-purpose = Sirve para que el cuello gire con soltura.
ex-neck-turns-instruction = Siéntese con la espalda recta y los hombros sueltos. Gire la cabeza despacio hacia un lado, hasta donde sea cómodo, y quédese ahí. Luego al centro, y luego al otro lado.
ex-neck-turns-standing = De pie y con la espalda recta, detrás de una silla firme, agárrese al respaldo y deje los hombros sueltos. Gire la cabeza despacio hacia un lado, hasta donde sea cómodo, y quédese ahí. Luego al centro, y luego al otro lado.
ex-neck-turns-short = Gire despacio a cada lado, solo hasta donde sea cómodo.
ex-neck-turns-cue = Mire al frente.
ex-neck-turns-before = Giros de cuello. No los haga tras un ictus, lesión o cirugía de cuello recientes, ni con vértebras cervicales frágiles, arterias del cuello estrechas, cuello rígido, inestable o que se tuerce solo, traqueostomía, o el cable de un implante.
ex-neck-turns-care = Muévase despacio, y solo hasta donde sea cómodo.
ex-neck-turns-phase-left = Gire despacio a la izquierda, y quédese.
ex-neck-turns-phase-middle = Y de vuelta al centro.
ex-neck-turns-phase-right = Gire despacio a la derecha, y quédese.

ex-neck-tilts-name = Inclinaciones de cuello
ex-neck-tilts-purpose = Sirve para soltar los lados del cuello.
ex-neck-tilts-instruction = Siéntese con la espalda recta y los hombros sueltos. Incline una oreja despacio hacia el hombro, hasta donde sea cómodo, y quédese ahí. Luego regrese al centro, e incline hacia el otro lado.
ex-neck-tilts-standing = De pie y con la espalda recta, detrás de una silla firme, agárrese al respaldo y deje los hombros sueltos. Incline una oreja despacio hacia el hombro, hasta donde sea cómodo, y quédese ahí. Luego regrese al centro, e incline hacia el otro lado.
ex-neck-tilts-short = Incline despacio a cada lado, solo hasta donde sea cómodo.
ex-neck-tilts-cue = Mire al frente.
ex-neck-tilts-before = Inclinaciones de cuello. No las haga tras un ictus, lesión o cirugía de cuello recientes, ni con vértebras cervicales frágiles, arterias del cuello estrechas, cuello rígido, inestable o que se tuerce solo, traqueostomía, o el cable de un implante.
ex-neck-tilts-care = Muévase despacio, y solo hasta donde sea cómodo.
ex-neck-tilts-phase-left = Oreja izquierda hacia el hombro, y quédese.
ex-neck-tilts-phase-middle = Y de vuelta al centro.
ex-neck-tilts-phase-right = Oreja derecha hacia el hombro, y quédese.

ex-shoulder-rolls-name = Círculos de hombros
ex-shoulder-rolls-purpose = Sirve para soltar los hombros, y que el aire y la voz fluyan.
ex-shoulder-rolls-instruction = Siéntese con la espalda recta, y deje los brazos colgando. Cada vez que diga «gire», lleve los dos hombros arriba, atrás y abajo en un círculo lento.
ex-shoulder-rolls-standing = De pie y con la espalda recta, junto a una silla firme, lo bastante cerca para agarrarse, deje los brazos colgando. Cada vez que diga «gire», lleve los dos hombros arriba, atrás y abajo en un círculo lento.
ex-shoulder-rolls-short = Círculos lentos: arriba, atrás y abajo.
ex-shoulder-rolls-cue = Y gire.

## Cara, lengua y mandíbula

ex-lip-press-smile-name = Apretar labios y sonreír
ex-lip-press-smile-purpose = Sirve para que los labios cierren con firmeza y se muevan con claridad.
ex-lip-press-smile-instruction = Apriete los labios uno contra otro y respire por la nariz. Cuando diga «más», apriete con más fuerza. Al final, sonría bien ancho.
ex-lip-press-smile-short = Apriete los labios, más al final, y luego sonría.
ex-lip-press-smile-cue = Labios juntos… y apriete.
ex-lip-press-smile-care = Respire por la nariz, y suelte si le duele la cara.
ex-lip-press-smile-phase-press = Mantenga.
ex-lip-press-smile-phase-tighter = Ahora más.
ex-lip-press-smile-phase-smile = Y sonría.

ex-cheek-puff-name = Mejillas llenas
ex-cheek-puff-purpose = Sirve para que labios y mejillas mantengan la boca cerrada.
ex-cheek-puff-instruction = Cierre los labios, llene las mejillas de aire, y guárdelo dentro. Respire por la nariz.
ex-cheek-puff-short = Llene las mejillas, y guarde el aire.
ex-cheek-puff-cue = Labios cerrados… y llene las mejillas.
ex-cheek-puff-care = Respire por la nariz, y suelte si le duele la cara.
ex-cheek-puff-phase-puff = Guarde el aire.

ex-tongue-against-spoon-name = Lengua contra la cuchara
ex-tongue-against-spoon-purpose = Busca fortalecer la lengua hacia delante y hacia los dos lados.
ex-tongue-against-spoon-instruction = Ponga el dorso de una cuchara contra la lengua. Empuje con la lengua hacia delante, luego a la izquierda, luego a la derecha, y siga respirando.
ex-tongue-against-spoon-short = Empuje la cuchara con la lengua: delante, izquierda, derecha.
ex-tongue-against-spoon-cue = Cuchara contra la lengua… y empuje.
ex-tongue-against-spoon-before = Lengua contra la cuchara. Se empuja fuerte. No lo haga tras una lesión o cirugía recientes en la boca. Con la tensión alta, pregunte antes a su logopeda.
ex-tongue-against-spoon-care = Siga respirando mientras empuja.
ex-tongue-against-spoon-phase-forward = Hacia delante.
ex-tongue-against-spoon-phase-left = A la izquierda.
ex-tongue-against-spoon-phase-right = Y a la derecha.

ex-lips-around-spoon-name = Labios alrededor de la cuchara
ex-lips-around-spoon-purpose = Sirve para que los labios cierren con firmeza.
ex-lips-around-spoon-instruction = Sujete el mango de una cuchara horizontal entre los labios, no entre los dientes. Manténgalo ahí, y respire por la nariz.
ex-lips-around-spoon-short = Sujete la cuchara horizontal entre los labios.
ex-lips-around-spoon-cue = Cuchara entre los labios… y mantenga.
ex-lips-around-spoon-care = Respire por la nariz, y suelte si le duele la cara.
ex-lips-around-spoon-phase-hold = Manténgala horizontal.

ex-tongue-press-name = Lengua contra el paladar
ex-tongue-press-purpose = Busca fortalecer la lengua para tragar y para pronunciar con claridad.
ex-tongue-press-instruction = Cierre la boca. Empuje la lengua con firmeza contra el paladar, y siga empujando mientras respira por la nariz.
ex-tongue-press-short = Empuje la lengua contra el paladar.
ex-tongue-press-cue = Lengua arriba… y empuje.
ex-tongue-press-before = Lengua contra el paladar. Se empuja fuerte. No lo haga tras una lesión o cirugía recientes en la boca. Con la tensión alta, pregunte antes a su logopeda.
ex-tongue-press-care = Siga respirando mientras empuja.
ex-tongue-press-phase-press = Siga empujando.

ex-tongue-side-to-side-name = Lengua de lado a lado
ex-tongue-side-to-side-purpose = Sirve para que la lengua siga ágil y móvil.
ex-tongue-side-to-side-instruction = Abra un poco la boca. Cada vez que diga «izquierda y derecha», toque una comisura con la punta de la lengua, y luego la otra.
ex-tongue-side-to-side-short = Punta de la lengua de comisura a comisura.
ex-tongue-side-to-side-cue = Izquierda… y derecha.

ex-tongue-reach-name = Sacar la lengua
ex-tongue-reach-purpose = Sirve para que la lengua se mueva con libertad.
ex-tongue-reach-instruction = Saque la lengua hasta donde sea cómodo, y manténgala ahí. Luego apunte con ella hacia la nariz, y manténgala ahí.
ex-tongue-reach-short = Lengua fuera, y luego arriba.
ex-tongue-reach-cue = Boca abierta.
ex-tongue-reach-phase-out = Lengua fuera, y manténgala ahí.
ex-tongue-reach-phase-up = Ahora hacia arriba.

ex-jaw-opening-name = Abrir la mandíbula
ex-jaw-opening-purpose = Busca fortalecer los músculos que elevan la laringe al tragar.
ex-jaw-opening-instruction = Abra la boca todo lo que le sea cómodo. Manténgala abierta, y siga respirando, hasta que diga «relaje».
ex-jaw-opening-short = Abra mucho, hasta donde sea cómodo, y mantenga.
ex-jaw-opening-cue = Y abra mucho.
ex-jaw-opening-before = Abrir la mandíbula. No lo haga con problemas en la articulación de la mandíbula, o si alguna vez se le ha desencajado. Con la tensión alta, pregunte antes a su logopeda.
ex-jaw-opening-care = Siga respirando, y cierre la boca si le duele la mandíbula.
ex-jaw-opening-phase-open = Manténgala abierta, y respire.

## Respiración y habla

ex-nasal-breathing-name = Respiración nasal
ex-nasal-breathing-purpose = Sirve para calmarle, y para que domine una espiración más larga.
ex-nasal-breathing-instruction = Cierre la boca. Tome aire por la nariz mientras cuento. Luego deje salir el aire despacio por la nariz mientras sigo contando.
ex-nasal-breathing-short = Dentro y fuera por la nariz, a mi cuenta.
ex-nasal-breathing-cue = Suelte el aire… y empezamos.
ex-nasal-breathing-care = Respire con suavidad, y olvide la cuenta si nota mareo.

ex-breath-out-resistance-name = Espirar contra resistencia
ex-breath-out-resistance-purpose = Busca fortalecer los músculos con los que espira y tose.
ex-breath-out-resistance-instruction = Tome el entrenador que le dio su logopeda. Tome aire, cierre los labios alrededor, y sople fuerte y de forma constante, hasta vaciar el aire.
ex-breath-out-resistance-short = Tome aire, y sople fuerte por el entrenador.
ex-breath-out-resistance-cue = Tome aire… y sople.
ex-breath-out-resistance-before = Espirar contra resistencia. No lo haga con enfermedad de pulmón o corazón, arritmia, tensión alta, hernia, embarazo avanzado, o tras un ictus reciente o una operación reciente de abdomen, ojos, oídos, senos paranasales o dientes.
ex-breath-out-resistance-care = Respire con normalidad entre medias, y déjelo si nota mareo.

ex-voluntary-cough-name = Tos fuerte
ex-voluntary-cough-purpose = Busca que su tos siga siendo lo bastante fuerte para limpiar la garganta.
ex-voluntary-cough-instruction = Tome mucho aire, cierre la garganta, y tosa una vez, fuerte y corto. Hágalo como le enseñó su logopeda.
ex-voluntary-cough-short = Tome aire, y tosa una vez, fuerte y corto.
ex-voluntary-cough-cue = Tome aire… y tosa.
ex-voluntary-cough-before = Tos fuerte. No lo haga con infección de garganta, enfermedad pulmonar, tensión alta, hernia, huesos frágiles o enfermedad ocular, embarazo avanzado, o tras un ictus reciente u operación de garganta, abdomen, ojos, oídos, senos paranasales o dientes.
ex-voluntary-cough-care = Empiece con la boca vacía, y déjelo si nota mareo.

ex-syllable-repetition-name = Sílabas rápidas
ex-syllable-repetition-purpose = Sirve para que labios y lengua se muevan con rapidez y regularidad.
ex-syllable-repetition-instruction = Tome aire y diga las sílabas sin cesar, tan rápido y tan regular como pueda, hasta que yo diga gracias.
ex-syllable-repetition-short = Las sílabas, rápidas y regulares.
ex-syllable-repetition-cue = Tome aire… y adelante.
ex-syllable-repetition-care = Trague antes, y respire con normalidad entre series.

ex-pa-repetition-name = Pa rápida
ex-pa-repetition-purpose = Sirve para que los labios se muevan con rapidez y regularidad.
ex-pa-repetition-instruction = Tome aire y diga pa, pa, pa, sin cesar, tan rápido y tan regular como pueda, hasta que yo diga gracias.
ex-pa-repetition-short = Pa, pa, pa, rápidas y regulares.
ex-pa-repetition-cue = Tome aire… y adelante.
ex-pa-repetition-care = Trague antes, y respire con normalidad entre series.

ex-ta-repetition-name = Ta rápida
ex-ta-repetition-purpose = Sirve para que la punta de la lengua se mueva con rapidez y regularidad.
ex-ta-repetition-instruction = Tome aire y diga ta, ta, ta, sin cesar, tan rápido y tan regular como pueda, hasta que yo diga gracias.
ex-ta-repetition-short = Ta, ta, ta, rápidas y regulares.
ex-ta-repetition-cue = Tome aire… y adelante.
ex-ta-repetition-care = Trague antes, y respire con normalidad entre series.

ex-ka-repetition-name = Ka rápida
ex-ka-repetition-purpose = Sirve para que el dorso de la lengua se mueva con rapidez y regularidad.
ex-ka-repetition-instruction = Tome aire y diga ca, ca, ca, sin cesar, tan rápido y tan regular como pueda, hasta que yo diga gracias.
ex-ka-repetition-short = Ca, ca, ca, rápidas y regulares.
ex-ka-repetition-cue = Tome aire… y adelante.
ex-ka-repetition-care = Trague antes, y respire con normalidad entre series.

ex-category-naming-name = Denominación
ex-category-naming-purpose = Sirve para encontrar las palabras con más rapidez.
ex-category-naming-instruction = Le doy una categoría. Nombre tantas cosas de ella como se le ocurran, una tras otra, con voz clara. Yo cuento y llevo el tiempo.
ex-category-naming-short = Tantas como se le ocurran, con voz clara.
ex-category-naming-cue = Empiece ahora.

ex-word-questions-name = Preguntas de palabras
ex-word-questions-purpose = Sirve para entrenar a encontrar palabras y decirlas con claridad.
ex-word-questions-instruction = Yo le doy una definición, y usted dice la palabra. Tómese su tiempo.
ex-word-questions-short = Yo doy una definición, y usted dice la palabra.
ex-word-questions-cue = Aquí va.

ex-rest-name = Descanso
ex-rest-purpose = Sirve para que la voz y el cuerpo se recuperen.
ex-rest-instruction = Recuéstese, quédese en silencio, y respire como quiera.
ex-rest-short = Recuéstese y respire como quiera.
ex-rest-cue = Recuéstese.

paced-in = Dentro
paced-out = Fuera

## Precauciones

caution-voice-strain = Deje el ejercicio si le duele la garganta o nota tensión en el cuello, y dígaselo a su logopeda.
caution-voice-hoarse = Si lleva más de un día con ronquera, deje los ejercicios fuertes y pregunte antes a su logopeda.
caution-voice-no-force = Hágalo cómodo: déjelo a la primera molestia, y nunca empuje hasta que la voz chille.
caution-bearing-down = Deje fluir el sonido, y no haga fuerza con el vientre. Si tiene una hernia o mucho reflujo, pregunte a su logopeda antes de mantener sonidos largos.
caution-straw-water = Tenga el otro extremo de la pajita al aire. Agua solo si su logopeda lo permite: el extremo apenas bajo la superficie, y sople, nunca sorba.
caution-stand-safely = Póngase de pie detrás de una silla firme, y agárrese al respaldo con una mano.
caution-sit-upright = Siéntese con la espalda recta en una silla firme, con los dos pies en el suelo.
caution-swallow-assessed = Hágalo solo si su logopeda ha valorado su deglución y le ha enseñado cómo.
caution-saliva-only = Hágalo con la boca vacía, solo con saliva, nunca con comida, bebida o pastillas.
caution-clear-mouth = Empiece con la boca vacía, y respire con normalidad entre degluciones.
caution-gentle-bite = Sujete la lengua con suavidad, para que los dientes no le hagan daño.
caution-residue = Con este ejercicio la garganta se limpia peor, así que después trague otra vez como suele.
caution-breath-break-heart = Aquí se contiene un instante la respiración. Si tiene algún problema de corazón, hágalo solo si su logopeda lo ha permitido.
caution-sip-rules = Tome un sorbo solo si su logopeda lo permite. Siéntese con la espalda bien recta y el mentón recto, tome un sorbo pequeño, y tráguelo todo antes de tomar otro. Si tose o la voz suena húmeda o con gorgoteo, deje los sorbos por hoy, y dígaselo a su logopeda el mismo día.
caution-keep-breathing = Respire todo el rato. Aguantar la respiración carga el corazón.
caution-lie-flat = Túmbese boca arriba, con los hombros apoyados, y déjelo enseguida si al tumbarse le falta el aliento.
caution-neck-soreness = Es normal tener el cuello algo dolorido las primeras semanas. Si el dolor es agudo o dura, deje el ejercicio y pregunte a su logopeda.
caution-static-effort = Hacer fuerza sin moverse sube la tensión. Si la suya es alta, pregunte antes a su logopeda.
caution-rise-slowly = Después, gírese de lado, y siéntese dos minutos antes de ponerse de pie.
caution-jaw-pain = Deje el ejercicio enseguida si la mandíbula le duele, chasca con dolor o se traba, y pregunte a su logopeda.
caution-neck-signs = Deje el ejercicio enseguida y llame a alguien si nota mareo, ve doble, no puede hablar claro, tiene náuseas, o se le duerme la cara o un brazo.
caution-neck-range = Muévase despacio y solo hasta donde sea cómodo, nunca en círculos completos.
caution-shoulder-pain = Haga círculos pequeños si le duele un hombro.
caution-face-comfort = Deje el ejercicio si le duele la cara o la boca.
caution-breathe-through-nose = Respire por la nariz. Deje el ejercicio si la tiene taponada.
caution-dentures = Compruebe que su dentadura esté bien sujeta, o quítesela.
caution-light-headed = Si nota mareo, respire como quiera hasta encontrarse bien, y dígaselo a su logopeda.
caution-no-forcing = Deje que el aire entre y salga sin fuerza, y nunca aguante la respiración.
caution-set-by-clinician = Hágalo solo como le ha enseñado su logopeda, y solo con lo que le ha ajustado.
caution-spoon-clean = Use una cuchara limpia y lisa, y no pase de la parte delantera de la boca.
caution-syllable-tired = Deje el ejercicio cuando se cansen los labios o la lengua. Si se junta saliva, deténgase y trague antes.
caution-game-enjoy = Esto es para disfrutar y practicar. Déjelo siempre que le disguste.

## Quién debe dejar un ejercicio, salvo que su logopeda diga otra cosa

notfor-voice-acute = Personas con una infección de garganta reciente, o con un sangrado reciente o una operación reciente de las cuerdas vocales.
notfor-poor-clearing = Personas a quienes les quedan restos en la garganta, o cuyo hueso hioides se mueve poco al tragar.
notfor-heart-rhythm = Personas con enfermedad del corazón o arritmia.
notfor-recent-stroke = Personas que han tenido hace poco un ictus o un accidente isquémico transitorio.
notfor-blood-pressure = Personas con la tensión sin controlar.
notfor-breathless = Personas con falta de aliento o con una enfermedad pulmonar.
notfor-neck-unstable = Personas con el cuello lesionado, inestable, rígido u operado, o con enfermedad reumatoide del cuello.
notfor-tracheostomy = Personas que respiran por una abertura en el cuello.
notfor-head-pressure = Personas con presión elevada en la cabeza, o tras una operación reciente de cabeza o cuello.
notfor-flat-lying = Personas que no pueden tumbarse en plano, o que tienen insuficiencia cardiaca, reflujo intenso o la tensión sin controlar.
notfor-eye-pressure = Personas con glaucoma o una enfermedad de la retina.
notfor-fragile-bones = Personas con huesos frágiles, sobre todo en la columna.
notfor-late-pregnancy = Personas con más de 16 semanas de embarazo.
notfor-hernia = Personas con una hernia.
notfor-belly-recent = Personas con una operación reciente de abdomen.
notfor-floor-unsafe = Personas que no pueden tumbarse y levantarse solas sin riesgo.
notfor-neck-arteries = Personas con las arterias del cuello enfermas o estrechas.
notfor-neck-dystonia = Personas a quienes el cuello se les tuerce o tira solo (distonía cervical).
notfor-neck-implant = Personas con el cable o la caja de un estimulador implantado en el cuello.
notfor-jaw-joint = Personas con problemas en la articulación de la mandíbula, o a quienes se les ha desencajado.
notfor-neck-bones = Personas con vértebras cervicales frágiles, o con una lesión reciente de cuello.
notfor-shoulder-injury = Personas con una lesión u operación reciente de hombro.
notfor-face-recent = Personas con una lesión u operación reciente en la cara.
notfor-face-palsy = Personas con un lado de la cara débil o caído (parálisis facial).
notfor-pressure-recent = Personas con una operación reciente de ojo, oído, senos paranasales o dientes.
notfor-mouth-recent = Personas con una lesión u operación reciente de boca o lengua.
notfor-breathing-illness = Personas con una enfermedad pulmonar aguda, o con asma sin controlar.
notfor-lung-disease = Personas con una enfermedad pulmonar crónica, aunque sea estable.

## Lo que se lee y se repite cuando la rutina no trae lo suyo; las frases van separadas por |

ex-sentence-melody-phrases = ¿Se va usted a casa? | Se va usted a casa. | ¿Está lloviendo fuera? | Está lloviendo fuera. | ¿Hay té en la tetera? | Hay té en la tetera.
ex-sentence-stress-phrases = La taza roja, no la azul. | He dicho martes, no jueves. | Debajo de la mesa, no encima. | Ha llamado mi hermana, no mi hermano. | Quiero té, no café.
ex-paced-phrases-phrases = Buenos días a todos ustedes | Páseme la sal y la pimienta | Hoy podemos pasear por el parque | Me gustaría tomar una taza de té
ex-counting-on-a-breath-phrases = uno, dos, tres, cuatro, cinco | uno, dos, tres, cuatro, cinco, seis, siete, ocho | uno, dos, tres, cuatro, cinco, seis, siete, ocho, nueve, diez
ex-days-on-a-breath-phrases = lunes, martes, miércoles | lunes, martes, miércoles, jueves, viernes | lunes, martes, miércoles, jueves, viernes, sábado, domingo
# La fábula del viento del norte y el sol, contada de nuevo para aquí.
ex-reading-passage-passage = El viento del norte y el sol discutían sobre cuál de los dos era el más fuerte. Al final acordaron medir sus fuerzas con un caminante que pasaba por allí: ganaría quien antes le quitara la capa. Primero lo intentó el viento. Reunió todas sus fuerzas y se lanzó con furia sobre el hombre, como si quisiera arrancarle la capa de un tirón. Pero cuanto más soplaba, más se envolvía el hombre en ella. Entonces le llegó el turno al sol. Al principio brilló con suavidad, y el caminante se desabrochó la capa y la dejó caer suelta sobre los hombros. Luego brilló con toda su fuerza, y a los pocos pasos el hombre se quitó la capa y continuó su camino más ligero y más contento.
