# What is said in place of a line that asks for a spoken command, where commands don't reach the program: KEY-by-key for KEY. The space bar
# stands for "ready", "done" and "go on"; whoever looks at the page presses the button of that name.

ask-ready-first-by-key = Sit upright with both feet on the floor. Press the space bar or ready when you'd like to begin.
ask-ready-by-key = Sit upright with both feet on the floor, then press the space bar or ready.
ask-position-by-key = Press the space bar or ready when you're in position.
ask-rest-over-by-key = Rest for as long as you like. Press the space bar or ready to go on.
ask-ready-again-by-key = Take your time. Press the space bar or ready when you are.
ask-ready-once-more-by-key = No hurry. Press the space bar or ready when you'd like to go on.
wait-for-ready-by-key = I'm here. Press the space bar or ready whenever you like.
knock-will-do-by-key = When you've swallowed, press the space bar or done, or knock twice on the table.
skipped-by-key = Leaving out { $name }. Press V or go back if you'd like to do it after all.
done-again-by-key = Take your time. Press the space bar or done when you've done it.
done-once-more-by-key = No hurry. Press the space bar or done when you are.
wait-for-done-by-key = I'm here. Press the space bar or done whenever you like.
ask-sip-by-key = Take one small sip, if your clinician allows it. Swallow it all, then press the space bar or done.
ask-sip-again-by-key = Press the space bar or done when it's all gone down.
stopped-by-key = I'll be quiet. Press the space bar to go on, S to skip, or Q to finish.
paused-by-key = Take your time. Press the space bar when you'd like to go on.
resting-by-key = Have a rest. Press the space bar or ready when you'd like to go on.
dry-sip-by-key = Take one small sip if you like, and swallow it all. Press the space bar or ready when you'd like to go on.
dry-lips-by-key = Moisten your lips, and take your time. Press the space bar or ready when you'd like to go on.
halted-reminder-by-key = I'm still here. Press the space bar to go on, or Q to finish.
finishing-by-key = Finishing here. Press the space bar to keep practising.
finishing-shown-by-key = Finishing. Space bar or "go on" to keep practising.
help-go-on-by-key = Press the space bar when you'd like to go on, S for the next exercise, or Q to finish.
all-right-by-key = Good. Press the space bar when you'd like to go on, or Q to finish.
emergency-or-fine-by-key = If it has passed, press Q or I'm fine.
unwell-go-on-by-key = Press the space bar for the next exercise, or Q to finish.
questions-first-by-key = { $n ->
    [one] One short question before you go.
   *[other] { SPOKEN($n) } short questions before you go.
} Press S for any you'd rather not answer, or Q to finish.
questions-unwell-by-key = The practice is over. Press Q or I'm fine when you are.
ready-not-understood-by-key = I heard someone, but spoken commands don't reach me here. Press the space bar or ready.
done-not-understood-by-key = I heard someone, but spoken commands don't reach me here. When you've done it, press the space bar or done.
ask-moment-again-by-key = Take your time. Tell me about a moment like that, or press S.
ask-rating-again-by-key = Take your time. Choose a number on the page, or press S to leave it.
ex-word-questions-instruction-by-key = I'll describe a word. Take your time. When you have it, speak it aloud and press the space bar or done. Then I'll tell you mine.
ex-word-questions-short-by-key = I'll describe a word. Speak it aloud, then press the space bar or done.
ex-category-naming-instruction-by-key = I'll give you a category. Name as many things in it as you can think of, one after another, in a clear voice. I'll keep time.

# What is said in place of a line that counts on an answer being understood, where commands are heard and no other word is: KEY-by-command for KEY.

ex-word-questions-instruction-by-command = I'll describe a word. Take your time. When you have it, speak it aloud, and then say done. Then I'll tell you mine.
ex-word-questions-short-by-command = I'll describe a word. Speak it aloud, then say done.
ex-category-naming-instruction-by-command = I'll give you a category. Name as many things in it as you can think of, one after another, in a clear voice. I'll keep time.
stop-by-hand-by-command = While I'm speaking I may not hear you. Press Escape then, and I'll fall silent. On the page, it's the red button.

# Where what starts a practice isn't heard, the page starts it.
attend-waiting-shown-by-key = Waiting. Start on the page.
attend-invite-by-key = It's { $time }, time for { $the }. Start on the page when you like.
attend-invite-for-by-key = It's { $time }. { $name }, it's time for { $the }. Start on the page when you like.
attend-invite-again-by-key = I'm still here for { $the }. Start on the page when you like.
attend-invite-again-for-by-key = { $name }, I'm still here for { $the }. Start on the page when you like.
