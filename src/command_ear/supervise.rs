//! Keeps a child process alive: starts it, writes to it, and starts it again with its grammars when it dies.

use super::child::{LOG_VARIABLE, PARENT_VARIABLE};
use super::embedding::FOLDER_VARIABLE;
use super::wire::{self, kind};
use super::{CommandEarError, Models, SecondEarFiles};
use std::collections::VecDeque;
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::PathBuf;
use std::process::{Child, ChildStdin, Command, Stdio};
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

/// So many deaths within [`DEATHS_WITHIN`] and the child is not started again.
const DEATHS: usize = 5;
const DEATHS_WITHIN: Duration = Duration::from_secs(10);
/// Lines of the child's standard error kept for the error text.
const LAST_WORDS: usize = 3;

/// To the supervisor.
#[derive(Debug)]
pub(crate) enum Order {
    /// A frame for the child; sound and finish carry their number.
    Frame { kind: u8, body: Vec<u8>, number: Option<u64> },
    /// A grammar: written, and written again after each restart.
    Grammar { fast: bool, body: Vec<u8> },
    /// The client's own voice: as a grammar.
    EnrolledVoice { body: Vec<u8> },
    /// The output of the child with this serial number ended.
    Ended { serial: u64 },
    /// End the child and the supervisor.
    Quit,
}

/// From the supervisor.
#[derive(Debug)]
pub(crate) enum Report {
    /// A frame of the child.
    Frame { kind: u8, body: Vec<u8> },
    /// A new child runs; frames up to `number` went to the old one.
    Restarted { number: u64, pid: u32 },
    /// It keeps dying; nothing more comes.
    Failed { message: String },
}

/// How to start a child.
#[derive(Debug, Clone)]
pub(crate) struct Recipe {
    pub program: PathBuf,
    pub model: Models,
}

/// The child process, in reach of both threads: the keeper may be stuck writing to a child that reads no more, and then
/// only the other one can end it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Leash(Arc<LeashInner>);

#[derive(Debug, Default)]
struct LeashInner {
    process: Mutex<Option<Child>>,
    let_go: AtomicBool,
}

impl Leash {
    /// Ends the child, so that the keeper starts another.
    pub fn kill(&self) {
        if let Some(process) = self.0.process.lock().unwrap_or_else(PoisonError::into_inner).as_mut() {
            // Fails only where it is gone already.
            let _ = process.kill();
        }
    }

    /// Ends the child for good.
    pub fn let_go(&self) {
        self.0.let_go.store(true, Ordering::SeqCst);
        self.kill();
    }

    /// Ends the child, takes its exit status and holds the next one.
    fn replace(&self, next: Option<Child>) {
        let old = std::mem::replace(&mut *self.0.process.lock().unwrap_or_else(PoisonError::into_inner), next);
        if let Some(mut old) = old {
            reap(&mut old);
        }
        if self.0.let_go.load(Ordering::SeqCst) {
            self.kill();
        }
    }
}

struct Running {
    pid: u32,
    input: BufWriter<ChildStdin>,
    serial: u64,
    last_words: Arc<Mutex<VecDeque<String>>>,
}

/// The state of the supervisor's thread.
struct Supervisor {
    leash: Leash,
    recipe: Recipe,
    orders: Sender<Order>,
    reports: Sender<Report>,
    main_grammar: Option<Vec<u8>>,
    fast_grammar: Option<Vec<u8>>,
    own_voice: Option<Vec<u8>>,
    written: u64,
    serial: u64,
    deaths: VecDeque<Instant>,
}

/// Starts a child and the thread that keeps it; gives the child's process id and the means to end it.
///
/// # Errors
/// The program cannot be started.
pub(crate) fn start(
    recipe: Recipe,
    orders: Sender<Order>,
    inbox: Receiver<Order>,
    reports: Sender<Report>,
) -> Result<(u32, Leash, JoinHandle<()>), CommandEarError> {
    let leash = Leash::default();
    let mut supervisor = Supervisor {
        leash: leash.clone(),
        recipe,
        orders,
        reports,
        main_grammar: None,
        fast_grammar: None,
        own_voice: None,
        written: 0,
        serial: 0,
        deaths: VecDeque::new(),
    };
    // The child ends with the thread that starts it, so the keeper does, which lives as long as the child is wanted.
    let (tell, told) = channel();
    let handle = thread("recogniser-keeper", move || {
        let spawned = supervisor.spawn();
        // Fails only where nobody waits for it any more; the orders are over then, too.
        let _ = tell.send(spawned.as_ref().map(|running| running.pid).map_err(|error| CommandEarError(error.0.clone())));
        if let Ok(running) = spawned {
            supervisor.keep(running, &inbox);
        }
    })?;
    let gone = |_| Err(CommandEarError("the recogniser's keeper ended; restart the program".to_owned()));
    let pid = told.recv().unwrap_or_else(gone)?;
    Ok((pid, leash, handle))
}

fn thread(name: &str, work: impl FnOnce() + Send + 'static) -> Result<JoinHandle<()>, CommandEarError> {
    std::thread::Builder::new()
        .name(name.to_owned())
        .spawn(work)
        .map_err(|e| CommandEarError(format!("the recogniser's thread cannot be started: {e}; close other programs and try again")))
}

impl Supervisor {
    fn keep(mut self, mut running: Running, inbox: &Receiver<Order>) {
        loop {
            // Written out when no more orders wait, so that much sound at once needs few system calls.
            let order = match inbox.try_recv() {
                Ok(order) => order,
                Err(_) => {
                    let _ = running.input.flush();
                    match inbox.recv() {
                        Ok(order) => order,
                        Err(_) => break,
                    }
                }
            };
            let alive = match order {
                Order::Frame { kind, body, number } => {
                    self.written = number.unwrap_or(self.written);
                    wire::write_frame(&mut running.input, kind, &body).is_ok()
                }
                Order::Grammar { fast, body } => {
                    let written = wire::write_frame(&mut running.input, kind::GRAMMAR, &body).is_ok();
                    *if fast { &mut self.fast_grammar } else { &mut self.main_grammar } = Some(body);
                    written
                }
                Order::EnrolledVoice { body } => {
                    let written = wire::write_frame(&mut running.input, kind::OWN_VOICE, &body).is_ok();
                    self.own_voice = Some(body);
                    written
                }
                Order::Ended { serial } => serial != running.serial,
                Order::Quit => break,
            };
            if alive {
                continue;
            }
            if self.leash.0.let_go.load(Ordering::SeqCst) {
                break;
            }
            match self.restart(&running) {
                Ok(new) => running = new,
                Err(message) => {
                    // The receiver is gone only when the whole ear is.
                    let _ = self.reports.send(Report::Failed { message });
                    return;
                }
            }
        }
        self.leash.replace(None);
    }

    /// Buries the old child and starts another; the error text where that is hopeless.
    fn restart(&mut self, old: &Running) -> Result<Running, String> {
        self.leash.replace(None);
        let last_words = old.last_words.lock().unwrap_or_else(PoisonError::into_inner).iter().cloned().collect::<Vec<_>>();
        let now = Instant::now();
        self.deaths.push_back(now);
        while self.deaths.front().is_some_and(|&t| now.duration_since(t) > DEATHS_WITHIN) {
            self.deaths.pop_front();
        }
        if self.deaths.len() >= DEATHS {
            let said = if last_words.is_empty() { String::new() } else { format!(" Its last words: {}.", last_words.join(" / ")) };
            return Err(format!(
                "the recogniser died {DEATHS} times within {} s with the model {} and is not started again.{said} \
                 Restart the program; if it happens again, run it with {LOG_VARIABLE}=1 or unpack the model anew",
                DEATHS_WITHIN.as_secs(),
                self.recipe.model.shown()
            ));
        }
        let mut new = self.spawn().map_err(|e| e.0)?;
        for grammar in [&self.main_grammar, &self.fast_grammar].into_iter().flatten() {
            // A failure here shows as the end of the new child's output.
            let _ = wire::write_frame(&mut new.input, kind::GRAMMAR, grammar);
        }
        if let Some(own) = &self.own_voice {
            let _ = wire::write_frame(&mut new.input, kind::OWN_VOICE, own);
        }
        let _ = self.reports.send(Report::Restarted { number: self.written, pid: new.pid });
        Ok(new)
    }

    fn spawn(&mut self) -> Result<Running, CommandEarError> {
        let Recipe { program, model } = &self.recipe;
        let cannot = |e: &dyn std::fmt::Display| {
            CommandEarError(format!("{}: the recogniser cannot be started: {e}; reinstall the program", program.display()))
        };
        let talkative = std::env::var_os(LOG_VARIABLE).is_some();
        let mut command = Command::new(program);
        command.arg("__recogniser");
        if let Some(folder) = &model.vosk {
            command.arg("--model").arg(folder);
        }
        match &model.second_ear {
            SecondEarFiles::Usual => {}
            SecondEarFiles::Folder(folder) => {
                command.arg("--second-ear").arg(folder);
            }
            SecondEarFiles::None => {
                command.env(FOLDER_VARIABLE, "none");
            }
        }
        command.stdin(Stdio::piped()).stdout(Stdio::piped());
        // The network is small: more threads only wait for each other, and take the processor from the sound thread.
        command.env("OPENBLAS_NUM_THREADS", "1");
        command.env(PARENT_VARIABLE, std::process::id().to_string());
        command.stderr(if talkative { Stdio::inherit() } else { Stdio::piped() });
        // A group of its own: Ctrl-C goes to the program alone, which still wants its recogniser while it closes down.
        #[cfg(unix)]
        std::os::unix::process::CommandExt::process_group(&mut command, 0);
        let mut process = command.spawn().map_err(|e| cannot(&e))?;
        self.serial += 1;
        let serial = self.serial;
        let (Some(input), Some(output)) = (process.stdin.take(), process.stdout.take()) else {
            reap(&mut process);
            return Err(cannot(&"it has no pipes"));
        };
        let last_words = Arc::new(Mutex::new(VecDeque::new()));
        if let Some(errors) = process.stderr.take() {
            let kept = Arc::clone(&last_words);
            thread("recogniser-stderr", move || {
                for line in BufReader::new(errors).lines().map_while(Result::ok) {
                    let mut kept = kept.lock().unwrap_or_else(PoisonError::into_inner);
                    kept.push_back(line);
                    if kept.len() > LAST_WORDS {
                        kept.pop_front();
                    }
                }
            })?;
        }
        let (orders, reports) = (self.orders.clone(), self.reports.clone());
        let kept = Arc::clone(&last_words);
        thread("recogniser-reader", move || {
            let mut output = BufReader::new(output);
            while let Ok(Some((what, body))) = wire::read_frame(&mut output) {
                if what == kind::ERROR {
                    kept.lock().unwrap_or_else(PoisonError::into_inner).push_back(String::from_utf8_lossy(&body).into_owned());
                }
                if reports.send(Report::Frame { kind: what, body }).is_err() {
                    return;
                }
            }
            let _ = orders.send(Order::Ended { serial });
        })?;
        let pid = process.id();
        self.leash.replace(Some(process));
        Ok(Running { pid, input: BufWriter::with_capacity(1 << 15, input), serial, last_words })
    }
}

/// Ends a child, which keeps nothing of value, and takes its exit status.
fn reap(process: &mut Child) {
    // Both fail only where it is gone already.
    let _ = process.kill();
    let _ = process.wait();
}
