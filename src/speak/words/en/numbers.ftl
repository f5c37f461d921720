# How numbers are said. Other files use them through the functions SPOKEN($n), SECONDS($s) and
# DURATION($s); SPOKEN($n) and so on where a sentence begins.

# A count on the beat.
count = { SPOKEN($n) }

# Before the country in a telephone number.
number-plus = plus
number-0 = zero
number-1 = one
number-2 = two
number-3 = three
number-4 = four
number-5 = five
number-6 = six
number-7 = seven
number-8 = eight
number-9 = nine
number-10 = ten
number-11 = eleven
number-12 = twelve
number-13 = thirteen
number-14 = fourteen
number-15 = fifteen
number-16 = sixteen
number-17 = seventeen
number-18 = eighteen
number-19 = nineteen
number-20 = twenty
number-30 = thirty
number-40 = forty
number-50 = fifty
number-60 = sixty
number-70 = seventy
number-80 = eighty
number-90 = ninety
number-tens = { $tens }-{ $ones }
number-hundreds = { $hundreds } hundred
number-hundreds-rest = { $hundreds } hundred and { $rest }
number-point = { $whole } point { $digit }
number-minus = minus { $number }

# $count chooses the form, $number is the number in words.
spoken-seconds = { $count ->
    [one] { $number } second
   *[other] { $number } seconds
}
spoken-minutes = { $count ->
    [one] { $number } minute
   *[other] { $number } minutes
}
spoken-and = { $first } and { $second }
