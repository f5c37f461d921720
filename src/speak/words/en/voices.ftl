# What the system's own voice cannot do; said honestly when it is chosen.

voice-system-no-beat = With the system's voice, counts may come late, off the beat.
voice-system-no-interrupting = While the system's voice is talking, I can't hear you. Wait until it's quiet, or press Control and C.
voice-system-no-speaker-choice = The system's voice plays on the system's own loudspeaker, whichever one you choose here, and it isn't in any recording.
