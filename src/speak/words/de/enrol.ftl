enrol-welcome = Ich möchte lernen, wie Sie die Wörter sagen, auf die ich höre. Ich sage ein Wort, und Sie sprechen es mir nach, dreimal. Es eilt nicht, und Sie brauchen nichts anzufassen.
enrol-what-is-kept = Den Klang Ihrer Stimme bewahre ich nicht auf, nur Zahlen zu jedem Wort: wie stark die tiefen und die hohen Töne von Augenblick zu Augenblick sind. Sie bleiben auf diesem Rechner, und Sie können sie löschen lassen.
enrol-ask-consent = Ist Ihnen das recht? Bitte antworten Sie mit Ja oder Nein.
enrol-ask-consent-shown = Darf ich Zahlen darüber aufbewahren, wie Sie die Befehle sprechen? Der Klang selbst wird nicht aufbewahrt.
enrol-ask-consent-again = Lassen Sie sich Zeit. Darf ich diese Zahlen aufbewahren? Ja oder nein?
enrol-was-that-yes = Ich bin nicht sicher, ob ich Sie verstanden habe. Wenn Sie einverstanden sind, sagen Sie bitte noch einmal Ja.
enrol-agreed = Danke. Sprechen Sie wie immer, nach dem Ton.
enrol-not-agreed = Das ist völlig in Ordnung. Es wurde nichts aufbewahrt.
enrol-no-answer = Ich habe nichts von Ihnen gehört, deshalb höre ich hier auf. Es wurde nichts aufbewahrt.
enrol-say = Bitte sagen Sie: { $word }.
enrol-say-next = Danke. Das nächste ist: { $word }.
enrol-once-more = Und noch einmal: { $word }.
    .v1 = Und wieder: { $word }.
enrol-last-time = Ein letztes Mal: { $word }.
enrol-say-again = Lassen Sie sich Zeit. Bitte sagen Sie: { $word }.
enrol-wait = Ich bin hier. Sagen Sie { $word }, wann immer Sie möchten.
enrol-shown = Bitte sagen Sie: { $word }
enrol-heading = Ihre eigene Stimme · Wort { $number } von { $words }
enrol-heading-consent = Ihre eigene Stimme
enrol-too-soft = Das war für mich etwas leise. Ein wenig kräftiger oder näher am Mikrofon, bitte: { $word }.
enrol-too-noisy = Um Sie herum ist es nicht ganz still. Wenn Sie können, sorgen Sie für Ruhe, und sagen Sie dann: { $word }.
enrol-clipped = Das war sehr nah. Ein wenig weiter weg oder ein wenig sanfter, bitte: { $word }.
enrol-too-long = Das war länger, als ich erwartet habe. Nur dies, bitte: { $word }.
enrol-too-short = Ich habe nur einen Teil davon mitbekommen. Bitte sagen Sie es noch einmal: { $word }.
enrol-in-two = Ich habe zwei Dinge gehört. Nur dies, bitte: { $word }.
enrol-too-early = Das war ein wenig zu früh. Nach dem Ton, bitte: { $word }.
enrol-sounded-like = Für mich klang das wie { $other }. Bitte sagen Sie: { $word }.
enrol-leave-out = Für mich klang das wie { $other }. Wenn Sie dieses Wort weglassen möchten, sagen Sie das noch einmal. Sonst sagen Sie: { $word }.
enrol-unlike = Das war ziemlich anders als die vorigen Male. Bitte sagen Sie es so, wie Sie es sonst sagen: { $word }.
enrol-near = Das klang ähnlich wie { $other }. Noch einmal, bitte: { $word }.
enrol-left-out = Das lassen wir weg.
enrol-leave-for-now = Das lassen wir fürs Erste.
enrol-doubtful-again = Bei diesem bin ich mir noch nicht ganz sicher. Noch einmal, bitte: { $word }.
enrol-halted = Das genügt fürs Erste, und es ist gespeichert. Sagen Sie „weiter“, wenn Sie weitermachen möchten. Sonst enden wir hier.
enrol-halted-shown = Sagen Sie „weiter“, oder bleiben Sie einfach still
enrol-going-on = Machen wir weiter.
enrol-learnt = { $surer ->
    [0] Ich habe noch kein Wort gelernt.
    [one] Eines Ihrer Wörter kenne ich jetzt besser.
   *[other] { SPOKEN($surer) } Ihrer Wörter kenne ich jetzt besser.
}
enrol-doubtful = { $doubtful ->
    [one] Bei einem bin ich mir noch nicht sicher: { $names }. Sie können es mir an einem anderen Tag vorsprechen.
   *[other] Bei { SPOKEN($doubtful) } bin ich mir noch nicht sicher: { $names }. Sie können sie mir an einem anderen Tag vorsprechen.
}
enrol-thanks = Danke. Ab der nächsten Übung verwende ich sie.
enrol-summary-head = Die Wörter von { $client }
enrol-summary-surer = jetzt besser bekannt
enrol-summary-doubtful = noch nicht sicher
enrol-none-kept = Über die Stimme von { $client } ist nichts gespeichert.
enrol-forgotten = Gelöscht: { $words ->
    [one] ein Wort
   *[other] { $words } Wörter
} von { $client }.
