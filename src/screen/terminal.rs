//! The terminal: dialogue above, a block with the large figure at the foot; or plain lines where nobody looks.

use super::layout::{Look, Row, Size, Who, block, dialogue, fitted};
use super::show::Screen;
use super::shown::ShownView;
use std::io::{IsTerminal, Write};
use std::sync::Once;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};
use unicode_width::UnicodeWidthStr;

/// Redraws are at least this far apart: ten a second are smooth enough for a figure that counts seconds.
const REDRAW: Duration = Duration::from_millis(100);

/// True while the cursor is hidden; the panic hook looks at it.
static HIDDEN: AtomicBool = AtomicBool::new(false);
const HIDE: &str = "\x1b[?25l";
const SHOW: &str = "\x1b[?25h";

/// Shows a session on a terminal, or as plain lines in a pipe or file.
pub struct TerminalScreen {
    out: Box<dyn Write + Send>,
    live: Option<Live>,
}

/// What a real terminal needs besides.
struct Live {
    size: Box<dyn Fn() -> Size + Send>,
    now: Box<dyn Fn() -> Duration + Send>,
    styled: bool,
    ink: char,
    shown: ShownView,
    /// What the keys mean, where that is shown.
    keys: String,
    /// Rows on the terminal now, each with its width in cells.
    drawn: Vec<usize>,
    drawn_at: Option<Duration>,
    pending: bool,
}

impl std::fmt::Debug for TerminalScreen {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("TerminalScreen").field("terminal", &self.live.is_some()).finish_non_exhaustive()
    }
}

impl TerminalScreen {
    /// Standard output: redrawn if it is a terminal that can be, else plain lines without any escape codes.
    /// Honours `NO_COLOR` (no bold or faint either) and `TERM=dumb`.
    #[must_use]
    pub fn stdout() -> Self {
        let set = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
        let dumb = std::env::var_os("TERM").is_none_or(|term| term == "dumb");
        if !std::io::stdout().is_terminal() || dumb {
            return Self::plain(Box::new(std::io::stdout()));
        }
        // The first of these that is set decides the character set (POSIX, "Environment Variables").
        let locale = ["LC_ALL", "LC_CTYPE", "LANG"].into_iter().find(|name| set(name)).and_then(std::env::var_os);
        let utf8 = locale.is_some_and(|value| {
            let name = value.to_string_lossy().to_ascii_lowercase();
            name.contains("utf-8") || name.contains("utf8")
        });
        let started = Instant::now();
        let screen = Self::terminal(
            Box::new(std::io::stdout()),
            Box::new(|| {
                terminal_size::terminal_size().map_or(Size { columns: 80, rows: 24 }, |(columns, rows)| Size {
                    columns: usize::from(columns.0),
                    rows: usize::from(rows.0),
                })
            }),
            Box::new(move || started.elapsed()),
            !set("NO_COLOR"),
            if utf8 { '█' } else { '#' },
        );
        restore_cursor_on_panic();
        screen
    }

    /// Tells below everything else what the keys mean.
    #[must_use]
    pub fn with_keys(mut self, keys: String) -> Self {
        if let Some(live) = &mut self.live {
            live.keys = keys;
        }
        self
    }

    /// Plain lines, one for each thing said, heard or noted.
    #[must_use]
    pub fn plain(out: Box<dyn Write + Send>) -> Self {
        Self { out, live: None }
    }

    fn terminal(
        out: Box<dyn Write + Send>,
        size: Box<dyn Fn() -> Size + Send>,
        now: Box<dyn Fn() -> Duration + Send>,
        styled: bool,
        ink: char,
    ) -> Self {
        let live = Live {
            size,
            now,
            styled,
            ink,
            shown: ShownView::default(),
            keys: String::new(),
            drawn: Vec::new(),
            drawn_at: None,
            pending: false,
        };
        let mut this = Self { out, live: Some(live) };
        HIDDEN.store(true, Ordering::SeqCst);
        this.write(HIDE);
        this
    }

    /// A terminal that went away is no reason to stop a practice.
    fn write(&mut self, text: &str) {
        let _ = self.out.write_all(text.as_bytes()).and_then(|()| self.out.flush());
    }

    fn line(&mut self, at_s: f64, who: Who, text: &str) {
        match &mut self.live {
            None => {
                let lines = dialogue(at_s, who, text, None).join("\n");
                self.write(&format!("{lines}\n"));
            }
            Some(live) => {
                let size = (live.size)();
                let lines = dialogue(at_s, who, text, Some(size.columns.saturating_sub(1)));
                let text = live.redraw(&lines);
                self.write(&text);
            }
        }
    }

    fn draw_if_due(&mut self) {
        if let Some(live) = &mut self.live
            && live.pending
            && live.is_due()
        {
            let text = live.redraw(&[]);
            self.write(&text);
        }
    }
}

impl Live {
    fn is_due(&self) -> bool {
        self.drawn_at.is_none_or(|at| (self.now)().saturating_sub(at) >= REDRAW)
    }

    /// Everything for one write: up to where the block begins, the new lines of dialogue, the block again. Rows are
    /// overwritten and their rest erased, never blanked first, so nothing flickers.
    fn redraw(&mut self, lines: &[String]) -> String {
        let size = (self.size)();
        let rows = block(&self.shown, &self.keys, size, self.ink);
        let mut text = self.to_start(size);
        for line in lines {
            text.push_str(line);
            text.push_str("\x1b[K\n");
        }
        for (index, row) in rows.iter().enumerate() {
            if index > 0 {
                text.push('\n');
            }
            text.push_str(&self.styled(row));
            text.push_str("\x1b[K");
        }
        text.push_str("\x1b[J");
        self.drawn = rows.iter().map(|row| row.text.width()).collect();
        self.drawn_at = Some((self.now)());
        self.pending = false;
        text
    }

    /// Moves to the first cell of the block. After a resize a terminal may have broken the old rows anew; each then takes
    /// as many rows as its width needs. What scrolled out at the top cannot be reached and is left.
    fn to_start(&self, size: Size) -> String {
        let columns = size.columns.max(1);
        let rows: usize = self.drawn.iter().map(|width| width.div_ceil(columns).max(1)).sum();
        match rows.min(size.rows.max(1)) {
            0 | 1 => "\r".to_owned(),
            rows => format!("\r\x1b[{}A", rows - 1),
        }
    }

    fn styled(&self, row: &Row) -> String {
        match row.look {
            _ if !self.styled => row.text.clone(),
            Look::Plain => row.text.clone(),
            Look::Bold => format!("\x1b[1m{}\x1b[0m", row.text),
            Look::Faint => format!("\x1b[2m{}\x1b[0m", row.text),
        }
    }
}

impl Screen for TerminalScreen {
    fn show(&mut self, _at_s: f64, view: &ShownView) {
        let Some(live) = &mut self.live else { return };
        if *view != live.shown {
            live.shown = view.clone();
            live.pending = true;
        }
        self.draw_if_due();
    }

    fn said(&mut self, at_s: f64, text: &str) {
        self.line(at_s, Who::Tool, text);
    }

    fn heard(&mut self, at_s: f64, text: &str) {
        self.line(at_s, Who::Client, text);
    }

    fn note(&mut self, at_s: f64, text: &str) {
        self.line(at_s, Who::Note, text);
    }

    fn tick(&mut self) {
        self.draw_if_due();
    }

    fn finish(&mut self) {
        if let Some(live) = self.live.take() {
            let text = format!("{}\x1b[J{SHOW}", live.to_start((live.size)()));
            self.write(&text);
            HIDDEN.store(false, Ordering::SeqCst);
        }
    }
}

impl Drop for TerminalScreen {
    fn drop(&mut self) {
        self.finish();
    }
}

/// Printed lines as they fit standard output: a terminal of few columns would part words at its edge. Elsewhere they stay as they are.
#[must_use]
pub fn fitted_to_terminal(text: &str) -> String {
    match terminal_size::terminal_size() {
        Some((columns, _)) if std::io::stdout().is_terminal() => fitted(text, usize::from(columns.0)),
        _ => text.to_owned(),
    }
}

/// Shows the cursor again before a panic is reported, whichever thread panics.
fn restore_cursor_on_panic() {
    static ONCE: Once = Once::new();
    ONCE.call_once(|| {
        let before = std::panic::take_hook();
        std::panic::set_hook(Box::new(move |info| {
            if HIDDEN.swap(false, Ordering::SeqCst) {
                let mut out = std::io::stdout();
                let _ = out.write_all(format!("\n{SHOW}").as_bytes()).and_then(|()| out.flush());
            }
            before(info);
        }));
    });
}
