//! A person at a terminal: keys go in, and what is asserted on is the screen they see.

#![allow(dead_code)] // each test file uses its part of these

use portable_pty::{Child, CommandBuilder, MasterPty, PtySize, native_pty_system};
use std::io::{Read, Write};
use std::num::NonZeroU16;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard};
use std::time::{Duration, Instant};

/// Longer than any answer takes on a loaded machine.
const PATIENCE: Duration = Duration::from_secs(20);

struct Screen {
    parser: vt100::Parser,
    raw: Vec<u8>,
}

/// A terminal with the console in it.
pub struct Terminal {
    screen: Arc<Mutex<Screen>>,
    keys: Arc<Mutex<Box<dyn Write + Send>>>,
    child: Box<dyn Child + Send + Sync>,
    master: Box<dyn MasterPty + Send>,
    /// A home to clear away at the end.
    own: Option<PathBuf>,
}

fn held<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().expect("no holder panics")
}

fn size(columns: u16) -> PtySize {
    PtySize { rows: 30, cols: columns, pixel_width: 0, pixel_height: 0 }
}

fn some(n: u16) -> NonZeroU16 {
    NonZeroU16::new(n).expect("a screen has rows and columns")
}

/// A folder of this test's own.
pub fn fresh_home(name: &str) -> PathBuf {
    let home = std::env::temp_dir().join(format!("railhand-{}-{name}", std::process::id()));
    std::fs::create_dir_all(&home).expect("the temporary folder is writable");
    home
}

impl Terminal {
    /// Opens the console on a screen so wide, with a home of its own.
    pub fn open(name: &str, columns: u16, env: &[(&str, &str)]) -> Terminal {
        let home = fresh_home(name);
        let mut term = Terminal::open_in(&home, columns, env);
        term.own = Some(home);
        term
    }

    /// Opens the console with a home that may have been used before.
    pub fn open_in(home: &Path, columns: u16, env: &[(&str, &str)]) -> Terminal {
        Terminal::open_with(home, columns, env, &[])
    }

    /// As [`open_in`](Terminal::open_in), with arguments.
    pub fn open_with(home: &Path, columns: u16, env: &[(&str, &str)], args: &[&str]) -> Terminal {
        Terminal::opened(home, columns, env, args, true)
    }

    /// A terminal that never says where its cursor is.
    pub fn open_deaf(name: &str, columns: u16) -> Terminal {
        let home = fresh_home(name);
        let mut term = Terminal::opened(&home, columns, &[], &[], false);
        term.own = Some(home);
        term
    }

    fn opened(home: &Path, columns: u16, env: &[(&str, &str)], args: &[&str], answers: bool) -> Terminal {
        let pty = native_pty_system().openpty(size(columns)).expect("a pseudo-terminal opens");
        let mut command = CommandBuilder::new(env!("CARGO_BIN_EXE_railhand"));
        command.args(args);
        command.env("TERM", "xterm-256color");
        command.env("XDG_DATA_HOME", home);
        command.env_remove("NO_COLOR");
        command.env_remove("RAILHAND_LOG");
        env.iter().for_each(|(name, value)| command.env(name, value));
        let child = pty.slave.spawn_command(command).expect("the program starts");
        let keys = Arc::new(Mutex::new(pty.master.take_writer().expect("the terminal takes keys")));
        let parser = vt100::Parser::new(some(30), some(columns), 500);
        let screen = Arc::new(Mutex::new(Screen { parser, raw: Vec::new() }));
        let from = pty.master.try_clone_reader().expect("the terminal shows");
        watch(from, Arc::clone(&screen), answers.then(|| Arc::clone(&keys)));
        Terminal { screen, keys, child, master: pty.master, own: None }
    }

    /// Presses keys.
    pub fn press(&mut self, keys: &str) {
        self.press_bytes(keys.as_bytes());
    }

    /// Sends bytes as keys.
    pub fn press_bytes(&mut self, bytes: &[u8]) {
        let mut keys = held(&self.keys);
        keys.write_all(bytes).and_then(|()| keys.flush()).expect("the terminal takes keys");
    }

    /// Types a line, sees it stand behind the prompt, enters it and waits for the next prompt.
    pub fn enter(&mut self, line: &str) {
        self.press(line);
        let shown = format!("> {}", line.chars().take(20).collect::<String>());
        self.wait("typed line", |rows| rows.iter().any(|row| row.starts_with(shown.trim_end())));
        self.press("\r");
        self.wait_for_prompt();
    }

    /// Changes the width as a person drags the window, and waits for the line to be drawn anew.
    pub fn resize(&mut self, columns: u16) {
        let before = self.raw().len();
        held(&self.screen).parser.set_size(some(30), some(columns));
        self.master.resize(size(columns)).expect("a terminal may be resized");
        self.wait("drawing after the resize", |_| self.raw().len() > before);
        self.wait_for_prompt();
    }

    /// Clears the line with Ctrl-C where it holds anything, then presses Ctrl-D; gives the exit status.
    pub fn leave(mut self) -> u32 {
        if last(&self.rows()).is_none_or(|row| row.trim_end() != ">") {
            self.press("\u{3}");
        }
        self.wait_for_prompt();
        self.press("\u{4}");
        self.end()
    }

    /// The rows as seen.
    pub fn rows(&self) -> Vec<String> {
        let screen = held(&self.screen);
        let (_, columns) = screen.parser.screen().size();
        screen.parser.screen().rows(0, columns.get()).collect()
    }

    /// True where the terminal had to break a row at its edge.
    pub fn broke_a_row(&self) -> bool {
        let screen = held(&self.screen);
        (0..30).any(|row| screen.parser.screen().row_wrapped(row))
    }

    /// Everything the program wrote.
    pub fn raw(&self) -> Vec<u8> {
        held(&self.screen).raw.clone()
    }

    /// Waits until the rows are as wanted.
    pub fn wait(&self, what: &str, wanted: impl Fn(&[String]) -> bool) {
        let start = Instant::now();
        while !wanted(&self.rows()) {
            let rows = self.rows().join("\n");
            assert!(start.elapsed() < PATIENCE, "no {what} on the screen:\n{}", rows.trim_end());
            std::thread::sleep(Duration::from_millis(5));
        }
    }

    /// Waits for an empty prompt under everything else.
    pub fn wait_for_prompt(&self) {
        self.wait("empty prompt", |rows| last(rows).is_some_and(|row| row.trim_end() == ">"));
    }

    /// Waits until the last row starts so.
    pub fn wait_for_last(&self, text: &str) {
        self.wait(text, |rows| last(rows).is_some_and(|row| row.starts_with(text)));
    }

    /// Kills the program as nothing can be killed harder (POSIX SIGKILL), and gives all that it wrote.
    pub fn kill(mut self) -> Vec<u8> {
        let pid = self.child.process_id().expect("it has been started");
        let killed = std::process::Command::new("kill").args(["-9", &pid.to_string()]).status();
        assert!(killed.expect("kill can be run").success(), "it runs until it is killed");
        let _ = self.child.wait();
        // What it had written is read to its end: nothing more comes once nothing came for a while.
        let (mut before, mut still) = (self.raw().len(), 0);
        while still < 3 {
            std::thread::sleep(Duration::from_millis(2));
            let now = self.raw().len();
            still = if now == before { still + 1 } else { 0 };
            before = now;
        }
        self.raw()
    }

    /// Waits for the program to end and gives its exit status.
    pub fn end(mut self) -> u32 {
        let start = Instant::now();
        loop {
            if let Some(status) = self.child.try_wait().expect("the program can be asked") {
                return status.exit_code();
            }
            if start.elapsed() > PATIENCE {
                let _ = self.child.kill();
                panic!("the program does not end:\n{}", self.rows().join("\n").trim_end());
            }
            std::thread::sleep(Duration::from_millis(5));
        }
    }
}

impl Drop for Terminal {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
        if let Some(home) = &self.own {
            let _ = std::fs::remove_dir_all(home);
        }
    }
}

/// The last row that shows anything.
pub fn last(rows: &[String]) -> Option<&String> {
    rows.iter().rev().find(|row| !row.trim().is_empty())
}

/// Draws what the program writes, and answers its question where the cursor is (ESC [ 6 n,
/// "device status report" of ECMA-48) as a terminal does.
fn watch(mut from: Box<dyn Read + Send>, screen: Arc<Mutex<Screen>>, keys: Option<Arc<Mutex<Box<dyn Write + Send>>>>) {
    std::thread::spawn(move || {
        let mut bytes = [0; 4096];
        while let Ok(n @ 1..) = from.read(&mut bytes) {
            let mut screen = held(&screen);
            screen.parser.process(&bytes[..n]);
            screen.raw.extend_from_slice(&bytes[..n]);
            let asked = bytes[..n].windows(4).filter(|w| *w == b"\x1b[6n").count();
            let (row, column) = screen.parser.screen().cursor_position();
            drop(screen);
            for keys in keys.iter().cycle().take(keys.iter().len() * asked) {
                let _ = write!(held(keys), "\x1b[{};{}R", row + 1, column + 1);
            }
        }
    });
}
