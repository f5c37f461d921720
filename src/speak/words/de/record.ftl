ask-sound = Auf der Einrichtungsseite hat jemand darum gebeten, Aufnahmen Ihrer Übungen aufzubewahren: { $days ->
    [one] einen Tag
   *[other] { SPOKEN($days) } Tage
} lang, nur auf diesem Rechner. Ist Ihnen das recht? Ja oder nein?
ask-sound-shown = Aufnahmen Ihrer Übungen { $days ->
    [one] einen Tag
   *[other] { $days } Tage
} aufbewahren?
ask-sound-again = Aufnahmen Ihrer Übungen werden { $days ->
    [one] einen Tag
   *[other] { SPOKEN($days) } Tage
} aufbewahrt. Ist Ihnen das weiterhin recht? Ja oder nein?
ask-sound-again-shown = Weiterhin Aufnahmen aufbewahren?
sound-agreed = Danke. Die Aufnahmen werden aufbewahrt und nach { $days ->
    [one] einem Tag
   *[other] { SPOKEN($days) } Tagen
} gelöscht.
sound-not-agreed = Gut. Es wird nichts aufgenommen.
sound-unanswered = Gut. Ich frage ein andermal.
sound-kept-shown = Die Aufnahme dieser Übung wird bis { $date } aufbewahrt.
sound-over-shown = Diese Übung wird nicht mehr aufgenommen: { $why }
sound-withdrawn-shown = die Einwilligung wurde zurückgezogen.
sound-too-slow-shown = der Speicher ist zu langsam.
