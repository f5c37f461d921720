# What the system's own voice cannot do; said honestly when it is chosen.

voice-system-no-beat = With the system's voice, counts may come late: they are not on the beat.
voice-system-no-interrupting = While the system's voice talks, I cannot hear you. Wait until it is quiet, or press Control and C.
voice-system-no-speaker-choice = The system's voice plays where the system plays; the choice of loudspeaker does not move it, and it is not in a recording.
