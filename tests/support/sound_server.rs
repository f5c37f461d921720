//! A private sound server with a virtual microphone and a virtual loudspeaker; no sound card, no D-Bus, no system state.
//!
//! Sinks: `speaker` (default; what the program plays) and `room` (what the client says is played here).
//! Sources: `mic` (default; hears `room`) and `speaker.monitor` (records what the program played).
//! With an echo, `room` also receives what `speaker` plays, later and softer.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::Duration;

/// Null sinks hold 2 s of sound unless rewinding is off; then they hold 50 ms.
const SCRIPT: &str = "\
.fail
load-module module-native-protocol-unix auth-anonymous=1 socket=@/run/native
load-module module-null-sink sink_name=speaker norewinds=1 rate=48000 channels=1 channel_map=mono format=s16le sink_properties=device.description=speaker
load-module module-null-sink sink_name=room norewinds=1 rate=48000 channels=1 channel_map=mono format=s16le sink_properties=device.description=room
load-module module-remap-source source_name=mic master=room.monitor channels=1 channel_map=mono master_channel_map=mono remix=no source_properties=device.description=mic
set-default-sink speaker
set-default-source mic
";

/// One format everywhere and no volume arithmetic: what goes in comes out bit by bit.
const DAEMON: &str = "\
default-sample-format = s16le
default-sample-rate = 48000
alternate-sample-rate = 48000
default-sample-channels = 1
default-channel-map = mono
flat-volumes = no
high-priority = no
realtime-scheduling = no
exit-idle-time = -1
default-fragments = 4
default-fragment-size-msec = 10
enable-deferred-volume = no
";

/// The running server. Dropping it stops it and removes its folder.
pub struct SoundServer {
    server: Child,
    folder: tempfile::TempDir,
}

/// How the loudspeaker is heard by the microphone.
#[derive(Debug, Clone, Copy)]
pub struct Echo {
    pub level_db: f64,
    pub delay_ms: u32,
}

impl SoundServer {
    /// Starts a server. `None`, with a line on standard output, where Debian's `pulseaudio` or `pulseaudio-utils` is
    /// not installed.
    ///
    /// # Panics
    /// The server is installed but does not start.
    pub fn start(echo: Option<Echo>) -> Option<Self> {
        for program in ["pulseaudio", "pactl", "paplay", "parec"] {
            if Command::new(program).arg("--version").stdout(Stdio::null()).stderr(Stdio::null()).status().is_err() {
                skipping::skip(skipping::Missing::Installed, &format!("{program} is not installed (Debian: pulseaudio pulseaudio-utils)"));
                return None;
            }
        }
        let folder = tempfile::tempdir().expect("a temporary folder");
        let at = |name: &str| folder.path().join(name);
        for name in ["run", "state", "home"] {
            fs::create_dir(at(name)).expect("a folder");
        }
        let root = folder.path().to_str().expect("a plain path");
        let mut script = SCRIPT.replace('@', root);
        if let Some(echo) = echo {
            script += &format!(
                "load-module module-loopback source=speaker.monitor sink=room latency_msec={} adjust_time=0 \
                 source_dont_move=true sink_dont_move=true sink_input_properties=media.name=echo\n",
                echo.delay_ms
            );
        }
        fs::write(at("server.pa"), script).expect("the script");
        fs::write(at("daemon.conf"), DAEMON).expect("the settings");
        let mut this = Self { server: spawn(&folder), folder };
        this.wait_until_ready();
        if let Some(echo) = echo {
            this.set_echo_level(echo.level_db);
        }
        Some(this)
    }

    /// Stops the server, as if all devices were unplugged.
    pub fn stop(&mut self) {
        stop(&mut self.server);
        let _ = fs::remove_file(self.path("run/native"));
    }

    /// Starts it again after [`SoundServer::stop`]; an echo is at its full level then.
    pub fn start_again(&mut self) {
        self.server = spawn(&self.folder);
        self.wait_until_ready();
    }

    /// Variables that lead a child process to this server.
    pub fn env(&self) -> Vec<(String, String)> {
        env(self.folder.path())
    }

    /// Variables that lead a child process to this server through ALSA alone, as on a computer whose programs know no
    /// sound server. `None`, with a line on standard output, where ALSA's way to it is not installed.
    pub fn alsa_env(&self) -> Option<Vec<(String, String)>> {
        let socket = self.path("run/native");
        let settings = format!(
            "</usr/share/alsa/alsa.conf>\n\
             pcm.!default {{ type pulse server \"unix:{0}\" fallback \"null\" }}\n\
             ctl.!default {{ type pulse server \"unix:{0}\" }}\n",
            socket.display()
        );
        fs::write(self.path("alsa.conf"), settings).expect("the settings");
        let empty = self.path("empty").display().to_string();
        let mut env = env(self.folder.path());
        env.retain(|(name, _)| name == "PULSE_COOKIE" || name == "PULSE_STATE_PATH");
        env.push(("XDG_RUNTIME_DIR".to_owned(), empty.clone()));
        env.push(("PULSE_RUNTIME_PATH".to_owned(), empty));
        env.push(("ALSA_CONFIG_PATH".to_owned(), self.path("alsa.conf").display().to_string()));
        let plugin = ["/usr/lib/x86_64-linux-gnu", "/usr/lib/aarch64-linux-gnu", "/usr/lib64", "/usr/lib"]
            .iter()
            .any(|lib| Path::new(lib).join("alsa-lib/libasound_module_pcm_pulse.so").exists());
        if !plugin {
            skipping::skip(skipping::Missing::Installed, "ALSA's PulseAudio plugin is not installed (Debian: libasound2-plugins)");
        }
        plugin.then_some(env)
    }

    /// A path in the server's folder, for recordings.
    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Plays a WAV file into the room, to be heard by the microphone.
    pub fn play(&self, wav: &Path) -> Child {
        self.client("paplay").args(["-d", "room", "--latency-msec=500"]).arg(wav).spawn().expect("paplay")
    }

    /// Records what the loudspeaker plays, mono, 48 kHz, until [`stop`].
    pub fn record_speaker(&self, wav: &Path) -> Child {
        self.record("speaker.monitor", wav)
    }

    /// Records what the microphone hears, mono, 48 kHz, until [`stop`].
    pub fn record_mic(&self, wav: &Path) -> Child {
        self.record("mic", wav)
    }

    fn record(&self, source: &str, wav: &Path) -> Child {
        self.client("parec")
            .args(["-d", source, "--file-format=wav", "--format=s16le", "--rate=48000", "--channels=1"])
            .arg(wav)
            .spawn()
            .expect("parec")
    }

    /// What the loudspeaker plays, as it comes: raw samples on the child's standard output, mono, 48 kHz, s16le.
    pub fn listen_to_speaker(&self) -> Child {
        self.client("parec")
            .args(["-d", "speaker.monitor", "--raw", "--format=s16le", "--rate=48000", "--channels=1", "--latency-msec=40"])
            .stdout(Stdio::piped())
            .spawn()
            .expect("parec")
    }

    /// Asks the server for something, and gives its answer.
    ///
    /// # Panics
    /// The server refuses.
    pub fn pactl(&self, args: &[&str]) -> String {
        let done = self.client("pactl").args(args).output().expect("pactl");
        assert!(done.status.success(), "pactl {args:?}");
        String::from_utf8_lossy(&done.stdout).into_owned()
    }

    /// Sends the server a signal: `STOP` makes it stand still, `CONT` go on.
    pub fn signal(&self, name: &str) {
        let sent = Command::new("kill").arg(format!("-{name}")).arg(self.server.id().to_string()).status();
        assert!(sent.is_ok_and(|status| status.success()), "{name}");
    }

    fn client(&self, program: &str) -> Command {
        let mut command = Command::new(program);
        command.envs(self.env()).env("HOME", self.path("home")).stdin(Stdio::null()).stderr(Stdio::null());
        command
    }

    fn wait_until_ready(&mut self) {
        for _ in 0..200 {
            let sources = self.client("pactl").args(["list", "short", "sources"]).output().expect("pactl");
            if String::from_utf8_lossy(&sources.stdout).contains("\tmic\t") {
                return;
            }
            if let Ok(Some(status)) = self.server.try_wait() {
                let log = fs::read_to_string(self.path("log")).unwrap_or_default();
                panic!("the sound server ended with {status}:\n{log}");
            }
            std::thread::sleep(Duration::from_millis(50));
        }
        panic!("the sound server did not become ready:\n{}", fs::read_to_string(self.path("log")).unwrap_or_default());
    }

    fn set_echo_level(&self, level_db: f64) {
        let inputs = self.client("pactl").args(["list", "sink-inputs"]).output().expect("pactl");
        let text = String::from_utf8_lossy(&inputs.stdout).into_owned();
        let mut index = None;
        for line in text.lines() {
            if let Some(number) = line.strip_prefix("Sink Input #") {
                index = Some(number.trim().to_owned());
            }
            if line.contains("media.name = \"echo\"") {
                break;
            }
        }
        let index = index.expect("the echo's stream");
        let set = self.client("pactl").args(["set-sink-input-volume", &index, &format!("{level_db}dB")]).status();
        assert!(set.is_ok_and(|s| s.success()), "the echo's level cannot be set");
    }
}

fn spawn(folder: &tempfile::TempDir) -> Child {
    let root = folder.path().display();
    Command::new("pulseaudio")
        .args(["-n", "-F", &format!("{root}/server.pa"), "--daemonize=no", "--use-pid-file=no", "--disallow-exit"])
        .args(["--disable-shm=no", &format!("--log-target=file:{root}/log"), "--log-level=notice"])
        .envs(env(folder.path()))
        .env("HOME", folder.path().join("home"))
        .env("PULSE_CONFIG", folder.path().join("daemon.conf"))
        .env_remove("DBUS_SESSION_BUS_ADDRESS")
        .env_remove("DISPLAY")
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("pulseaudio starts")
}

impl Drop for SoundServer {
    fn drop(&mut self) {
        stop(&mut self.server);
    }
}

/// Asks a child to end and waits for it, so that it can close its file.
pub fn stop(child: &mut Child) {
    let _ = Command::new("kill").arg(child.id().to_string()).status();
    for _ in 0..100 {
        if let Ok(Some(_)) = child.try_wait() {
            return;
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    let _ = child.kill();
    let _ = child.wait();
}

fn env(folder: &Path) -> Vec<(String, String)> {
    let at = |name: &str| folder.join(name).display().to_string();
    vec![
        ("XDG_RUNTIME_DIR".to_owned(), at("run")),
        ("PULSE_RUNTIME_PATH".to_owned(), at("run")),
        ("PULSE_STATE_PATH".to_owned(), at("state")),
        ("PULSE_COOKIE".to_owned(), at("state/cookie")),
        ("PULSE_SERVER".to_owned(), format!("unix:{}", at("run/native"))),
    ]
}
