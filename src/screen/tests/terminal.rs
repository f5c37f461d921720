use super::*;
use crate::Offer;
use std::sync::{Arc, Mutex};

/// Collects what is written.
#[derive(Clone, Default)]
struct Sink(Arc<Mutex<Vec<u8>>>);

impl Write for Sink {
    fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
        self.0.lock().expect("not poisoned").extend_from_slice(bytes);
        Ok(bytes.len())
    }
    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

impl Sink {
    fn take(&self) -> String {
        String::from_utf8(std::mem::take(&mut *self.0.lock().expect("not poisoned"))).expect("text")
    }
}

/// A terminal whose size and clock the test sets.
struct Rig {
    sink: Sink,
    size: Arc<Mutex<Size>>,
    now: Arc<Mutex<Duration>>,
    screen: TerminalScreen,
}

fn rig(styled: bool) -> Rig {
    let sink = Sink::default();
    let size = Arc::new(Mutex::new(Size { columns: 40, rows: 20 }));
    let now = Arc::new(Mutex::new(Duration::ZERO));
    let (asked_size, asked_now) = (Arc::clone(&size), Arc::clone(&now));
    let screen = TerminalScreen::terminal(
        Box::new(sink.clone()),
        Box::new(move || *asked_size.lock().expect("not poisoned")),
        Box::new(move || *asked_now.lock().expect("not poisoned")),
        styled,
        '█',
    );
    Rig { sink, size, now, screen }
}

fn view(figure: &str) -> ShownView {
    ShownView {
        heading: "Long ah, 1 of 3".into(),
        prompt: "Goal 14 seconds".into(),
        figure: figure.into(),
        can_say: ["stop", "how long"].map(|label| Offer { name: String::new(), label: label.into() }).into(),
        ..ShownView::default()
    }
}

/// What a terminal of `columns` × `rows` shows after these bytes: the few codes that are used, and scrolling.
fn emulate(text: &str, columns: usize, rows: usize) -> Vec<String> {
    let mut grid = vec![vec![' '; columns]; rows];
    let (mut row, mut column) = (0_usize, 0_usize);
    let mut characters = text.chars();
    while let Some(character) = characters.next() {
        match character {
            '\r' => column = 0,
            '\n' => {
                column = 0;
                row += 1;
                if row == rows {
                    grid.remove(0);
                    grid.push(vec![' '; columns]);
                    row -= 1;
                }
            }
            '\x1b' => {
                let mut code = String::new();
                for next in characters.by_ref() {
                    code.push(next);
                    if next.is_ascii_alphabetic() {
                        break;
                    }
                }
                match code.as_str() {
                    "[K" => grid[row][column..].fill(' '),
                    "[J" => {
                        grid[row][column..].fill(' ');
                        grid[row + 1..].iter_mut().for_each(|line| line.fill(' '));
                    }
                    "[1m" | "[2m" | "[0m" | "[?25l" | "[?25h" => {}
                    up => {
                        row = row.saturating_sub(up.trim_start_matches('[').trim_end_matches('A').parse::<usize>().expect("a known code"))
                    }
                }
            }
            other => {
                assert!(column < columns, "a row is wider than the terminal");
                grid[row][column] = other;
                column += 1;
            }
        }
    }
    grid.into_iter().map(|line| line.into_iter().collect::<String>().trim_end().to_owned()).collect()
}

#[test]
fn dialogue_stays_above_and_the_block_is_drawn_over_itself() {
    let mut rig = rig(true);
    rig.screen.show(0.0, &view(""));
    rig.screen.said(0.4, "Breathe in… and ah.");
    for tenth in 1..=30 {
        *rig.now.lock().expect("not poisoned") = Duration::from_millis(tenth * 100);
        rig.screen.show(1.0, &view(&format!("{}", tenth / 10)));
    }
    rig.screen.heard(9.0, "how long");
    insta::assert_snapshot!(emulate(&rig.sink.take(), 40, 20).join("\n"));
}

#[test]
fn it_is_drawn_at_most_ten_times_a_second_and_the_last_view_still_appears() {
    let mut rig = rig(false);
    rig.sink.take();
    let mut draws = 0;
    for step in 0..100_u64 {
        *rig.now.lock().expect("not poisoned") = Duration::from_millis(step * 10);
        rig.screen.show(0.0, &view(&step.to_string()));
        draws += usize::from(!rig.sink.take().is_empty());
    }
    assert_eq!(draws, 10);
    rig.screen.tick();
    assert_eq!(rig.sink.take(), "", "too soon");
    *rig.now.lock().expect("not poisoned") = Duration::from_millis(1010);
    rig.screen.tick();
    assert!(!rig.sink.take().is_empty());
    rig.screen.tick();
    assert_eq!(rig.sink.take(), "", "nothing new");
}

#[test]
fn without_colour_there_are_no_styles() {
    let mut rig = rig(false);
    rig.screen.show(0.0, &view("7"));
    rig.screen.said(1.0, "Rest.");
    let text = rig.sink.take();
    for style in ["\x1b[0m", "\x1b[1m", "\x1b[2m"] {
        assert!(!text.contains(style), "{text:?}");
    }
}

#[test]
fn a_narrower_terminal_is_drawn_to_its_width() {
    let mut rig = rig(true);
    rig.screen.show(0.0, &view("12"));
    rig.sink.take();
    *rig.size.lock().expect("not poisoned") = Size { columns: 20, rows: 20 };
    rig.screen.said(1.0, "Second one. Breathe in… and ah.");
    // Of the 11 rows that were drawn the rule of 39 cells now takes two, so the first of 12 is 11 up.
    let text = rig.sink.take();
    assert!(text.starts_with("\r\x1b[11A"), "{text:?}");
    emulate(&text, 20, 20);
}

#[test]
fn the_cursor_comes_back_and_the_block_goes_at_the_end() {
    let mut rig = rig(true);
    assert_eq!(rig.sink.take(), HIDE);
    rig.screen.show(0.0, &view("12"));
    rig.screen.said(1.0, "Good work.");
    let mut text = rig.sink.take();
    drop(rig.screen);
    let last = rig.sink.take();
    assert!(last.ends_with(SHOW));
    text.push_str(&last);
    let left: Vec<_> = emulate(&text, 40, 20).into_iter().filter(|line| !line.is_empty()).collect();
    assert_eq!(left, ["    1.0  T  Good work."]);
}

#[test]
fn a_pipe_gets_one_plain_line_for_each_thing() {
    let sink = Sink::default();
    let mut screen = TerminalScreen::plain(Box::new(sink.clone()));
    screen.show(0.0, &view("12"));
    screen.said(0.4, "Good evening.");
    screen.heard(2.0, "ready");
    screen.note(40.3, "held 12.4 s, 182 Hz");
    screen.finish();
    assert_eq!(sink.take(), "    0.4  T  Good evening.\n    2.0  C  ready\n   40.3  -  held 12.4 s, 182 Hz\n");
}
