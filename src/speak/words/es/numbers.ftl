# Cómo se dicen los números. Del 0 al 29, y las centenas, cada uno tiene su palabra.

count = { SPOKEN($n) }
number-plus = más
number-0 = cero
number-1 = uno
number-2 = dos
number-3 = tres
number-4 = cuatro
number-5 = cinco
number-6 = seis
number-7 = siete
number-8 = ocho
number-9 = nueve
number-10 = diez
number-11 = once
number-12 = doce
number-13 = trece
number-14 = catorce
number-15 = quince
number-16 = dieciséis
number-17 = diecisiete
number-18 = dieciocho
number-19 = diecinueve
number-20 = veinte
number-21 = veintiuno
number-22 = veintidós
number-23 = veintitrés
number-24 = veinticuatro
number-25 = veinticinco
number-26 = veintiséis
number-27 = veintisiete
number-28 = veintiocho
number-29 = veintinueve
number-30 = treinta
number-40 = cuarenta
number-50 = cincuenta
number-60 = sesenta
number-70 = setenta
number-80 = ochenta
number-90 = noventa
number-100 = cien
number-200 = doscientos
number-300 = trescientos
number-400 = cuatrocientos
number-500 = quinientos
number-600 = seiscientos
number-700 = setecientos
number-800 = ochocientos
number-900 = novecientos
number-tens = { $tens } y { $ones }
number-hundreds = { $hundreds }cientos
number-hundreds-rest = { $hundreds-count ->
    [1] ciento
   *[other] { $whole }
} { $rest }
number-point = { $whole } coma { $digit }
number-minus = menos { $number }
spoken-seconds = { $count ->
    [1] un segundo
    [21] veintiún segundos
    [31] treinta y un segundos
    [41] cuarenta y un segundos
    [51] cincuenta y un segundos
   *[other] { $number } segundos
}
spoken-minutes = { $count ->
    [1] un minuto
    [21] veintiún minutos
    [31] treinta y un minutos
    [41] cuarenta y un minutos
    [51] cincuenta y un minutos
   *[other] { $number } minutos
}
spoken-and = { $first } y { $second }
