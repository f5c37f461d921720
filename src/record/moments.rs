//! Where the moments that a client told can be heard: in the kept sound of the practice, as long as that is kept.

use super::error::RecordError;
use super::sound::StoredSound;
use super::store::Store;
use super::time;
use model::SessionId;
use progress::Moment;

impl Store {
    /// The kept sound that holds a moment whole; none where no sound was allowed, or it is deleted.
    ///
    /// # Errors
    /// The database refuses.
    pub fn sound_of_moment(&self, client: &str, moment: &Moment) -> Result<Option<StoredSound>, RecordError> {
        Ok(self.stored_sounds(client)?.into_iter().find(|sound| holds(sound, moment)))
    }

    pub(super) fn find_sound_of(&self, client: &str, moments: &mut [Moment]) -> Result<(), RecordError> {
        if moments.is_empty() {
            return Ok(());
        }
        let sounds = self.stored_sounds(client)?;
        for moment in moments {
            let sound = sounds.iter().find(|sound| holds(sound, moment));
            moment.heard_until = sound.and_then(|sound| time::read(&sound.expires_at)).map(|end| end.date());
        }
        Ok(())
    }
}

fn holds(sound: &StoredSound, moment: &Moment) -> bool {
    let whole = sound.from_s <= moment.from_s && moment.until_s <= sound.to_s();
    sound.session == SessionId(moment.session) && sound.part == moment.part && whole
}
