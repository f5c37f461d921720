voice-system-no-beat = Mit der Systemstimme kann das Zählen zu spät kommen, neben dem Takt.
voice-system-no-interrupting = Solange die Systemstimme spricht, höre ich Sie nicht. Warten Sie, bis sie still ist, oder drücken Sie Strg und C.
voice-system-no-speaker-choice = Die Systemstimme kommt aus dem Lautsprecher des Systems, gleich welchen Sie hier wählen, und ist auf keiner Aufnahme.
