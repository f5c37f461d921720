voice-system-no-beat = Con la voz del sistema, la cuenta puede llegar tarde, fuera de compás.
voice-system-no-interrupting = Mientras habla la voz del sistema, no puedo oírle. Aguarde a que calle, o pulse Control y C.
voice-system-no-speaker-choice = La voz del sistema sale por el altavoz del sistema, elija aquí el que elija, y no queda en ninguna grabación.
