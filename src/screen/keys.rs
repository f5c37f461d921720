//! Keys and page-turners: every command also by a key, for whoever has a hand free.

use std::io::IsTerminal;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::time::Duration;

use crossterm::event::{Event, KeyCode, KeyEvent, KeyEventKind, KeyModifiers, poll, read};

use session::Command;

/// How often the thread looks whether it is still wanted.
const LOOK_EVERY: Duration = Duration::from_millis(200);

/// What a key stands for. The keys of a page-turner (page down, page up, a black screen's full stop or b, escape) are among
/// them; common practice of presenters, no source.
fn meaning(key: &KeyEvent) -> Option<Command> {
    if key.kind == KeyEventKind::Release || key.modifiers.contains(KeyModifiers::CONTROL) {
        return None;
    }
    Some(match key.code {
        KeyCode::Char(' ') | KeyCode::Enter | KeyCode::PageDown | KeyCode::Right | KeyCode::Down => Command::Done,
        KeyCode::PageUp | KeyCode::Left | KeyCode::Up | KeyCode::Backspace => Command::Again,
        KeyCode::Char('.' | 'b' | 'p') => Command::Pause,
        KeyCode::Esc | KeyCode::F(5) | KeyCode::Char('0') => Command::Stop,
        KeyCode::Char('s') => Command::Skip,
        KeyCode::Char('v') => Command::GoBack,
        KeyCode::Char('r') => Command::Rest,
        KeyCode::Char('y') => Command::Yes,
        KeyCode::Char('n') => Command::No,
        KeyCode::Char('+' | '=') => Command::Louder,
        KeyCode::Char('-') => Command::Softer,
        KeyCode::Char('<') => Command::Slower,
        KeyCode::Char('>') => Command::Faster,
        KeyCode::Char('h' | '?') => Command::Help,
        KeyCode::Char('w') => Command::Why,
        KeyCode::Char('q') => Command::Finish,
        _ => return None,
    })
}

/// Keys of the terminal that the program was started in. Dropping it leaves the terminal as it was found.
pub struct Keys {
    commands: Receiver<Command>,
    wanted: Arc<AtomicBool>,
}

impl Keys {
    /// None where the program has no terminal to read keys from.
    #[must_use]
    pub fn open() -> Option<Self> {
        if !std::io::stdin().is_terminal() || !terminal::take_keys() {
            return None;
        }
        let (give, commands) = channel();
        let wanted = Arc::new(AtomicBool::new(true));
        let flag = wanted.clone();
        let thread = std::thread::Builder::new().name("keys".into()).spawn(move || listen(&give, &flag));
        if thread.is_err() {
            terminal::restore();
            return None;
        }
        Some(Self { commands, wanted })
    }

    /// The next key pressed, never waiting.
    pub fn take(&mut self) -> Option<Command> {
        self.commands.try_recv().ok()
    }
}

impl Drop for Keys {
    fn drop(&mut self) {
        if self.wanted.swap(false, Ordering::Relaxed) {
            terminal::restore();
        }
    }
}

fn listen(give: &Sender<Command>, wanted: &AtomicBool) {
    while wanted.load(Ordering::Relaxed) {
        match poll(LOOK_EVERY) {
            Ok(false) => {}
            Ok(true) => {
                if let Ok(Event::Key(key)) = read()
                    && let Some(command) = meaning(&key)
                    && give.send(command).is_err()
                {
                    return;
                }
            }
            Err(_) => return,
        }
    }
}

/// The terminal's line buffering and echo. Signals stay on, so that Ctrl-C means what it always does.
mod terminal {
    use super::{Mutex, PoisonError};
    use rustix::termios::{LocalModes, OptionalActions, Termios, tcgetattr, tcsetattr};

    static FOUND: Mutex<Option<Termios>> = Mutex::new(None);

    pub fn take_keys() -> bool {
        let stdin = rustix::stdio::stdin();
        let Ok(found) = tcgetattr(stdin) else { return false };
        let mut taken = found.clone();
        taken.local_modes.remove(LocalModes::ICANON | LocalModes::ECHO);
        if tcsetattr(stdin, OptionalActions::Now, &taken).is_err() {
            return false;
        }
        *FOUND.lock().unwrap_or_else(PoisonError::into_inner) = Some(found);
        true
    }

    pub fn restore() {
        if let Some(found) = FOUND.lock().unwrap_or_else(PoisonError::into_inner).take() {
            let _ = tcsetattr(rustix::stdio::stdin(), OptionalActions::Now, &found);
        }
    }
}

/// Leaves the terminal as it was found, also where the program ends at once.
pub fn restore_terminal() {
    terminal::restore();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_turner_moves_on_repeats_and_pauses() {
        let key = |code| meaning(&KeyEvent::new(code, KeyModifiers::NONE));
        assert_eq!(key(KeyCode::PageDown), Some(Command::Done));
        assert_eq!(key(KeyCode::PageUp), Some(Command::Again));
        assert_eq!(key(KeyCode::Char('.')), Some(Command::Pause));
        assert_eq!(key(KeyCode::Esc), Some(Command::Stop));
        assert_eq!(key(KeyCode::Char('z')), None);
        assert_eq!(meaning(&KeyEvent::new(KeyCode::Char('b'), KeyModifiers::CONTROL)), None);
    }
}
